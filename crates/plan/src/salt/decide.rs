//! What is to be done now, in the face of doubt?
//!
//! The method, its symbols and the decision table: `METHOD.md`, shown at [`crate::salt`].

use crate::policy;
use crate::policy::uncertainty::{BEFORE_READING, Moments, Since};
use crate::salt::buy::{Buy, buy};
use crate::salt::code::Code;
use crate::salt::course::{Course, MOST_VISITS};
use crate::salt::dilute::{Dilution, dilution};
use crate::salt::dosing::{self, Dosing};
use crate::salt::ekf::Event;
use crate::salt::estimate::Estimate;
use crate::salt::job::{Job, JobError, JobErrors};
use crate::salt::outliers::{ReadingStatus, Screened, Screening, Side};
use crate::salt::stage::{Bound, Stage, stage};
use crate::salt::sums::{Sums, sums};

/// A reading to come, mg/L.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Expected {
    /// Its mean.
    pub mean: f64,
    /// Where it lies 9 times in 10.
    pub range: [f64; 2],
}

/// What is known at the last reading that is believed, or guessed before there is one.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Known {
    /// All of it.
    pub estimate: Estimate,
    /// Volume, m³.
    pub volume: Moments,
    /// Salt, mg/L.
    pub salt: Moments,
    /// Bags to the target on the average; below zero where it is above.
    pub need: f64,
}

/// What follows from a job and its course.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Decision {
    /// What is to be done.
    pub code: Code,
    /// Bags for the whole job by the volume as stated and the first reading that counts; before that by one whose two
    /// readings differ, else by the mean of the guess.
    pub plain: f64,
    /// Every reading and what became of it.
    pub visits: [Option<Screened>; MOST_VISITS],
    /// The volume before any reading, m³: as stated, less what people over-estimate by.
    pub prior_volume: Moments,
    /// What is known; nothing while no reading counts, or the last one is not believed.
    pub known: Option<Known>,
    /// What is guessed while no reading counts; to buy by, and for nothing else.
    pub guess: Option<Known>,
    /// What to put in; nothing while it can't be decided.
    pub stage: Option<Stage>,
    /// What the same instrument will read a day after the stage; nothing where nothing goes in.
    pub expect: Option<Expected>,
    /// What to buy; nothing while a retest is not believed.
    pub buy: Option<Buy>,
    /// The volume from the first dose alone.
    pub dosing: Option<Dosing>,
    /// The simple sums beside a decision after a retest.
    pub sums: Option<Sums>,
    /// Water to replace; asked where it is too salty, and nothing without the fill water's reading or
    /// where that is no help.
    pub dilution: Option<Dilution>,
}

/// Decides at the last reading of a course.
///
/// Errors: [`JobErrors`], all that is wrong; then nothing is worked out.
///
/// ```
/// use chem::*;
/// use saltwright_plan::log::*;
/// use saltwright_plan::salt::course::*;
/// use saltwright_plan::salt::decide::decide;
/// use saltwright_plan::salt::job::*;
/// use saltwright_plan::RiskLevels;
/// use saltwright_plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let salt = |x| Salinity::from_mg_per_l(x);
/// let kg = |x| Mass::from_kilograms(x);
/// let job = Job {
///     volume: Volume::from_cubic_metres(62.82)?,
///     method: Method::Taped,
///     doubt: None,
///     bag: kg(20.0)?,
///     purity: Purity::from_ratio(0.994)?,
///     in_hand: 0,
///     band: Band::of(None, salt(3_200.0).ok(), None).unwrap(),
///     history: History::Fresh,
///     fill: None,
///     handled: Handled::Bags(Bag::default().weighed_in),
///     levels: RiskLevels::default(),
/// };
/// let read = |x| -> Result<_, OutOfRange> {
///     Ok(Reading { salt: salt(x)?, again: None, instrument: Instrument::Meter })
/// };
/// let baseline = Some(Baseline { when: None, reading: read(400.0)? });
/// let mut log: Log = [None; MOST_ENTRIES];
/// let first = decide(&job, &course(baseline, &log)).unwrap();
/// assert_eq!((first.code, first.stage.unwrap().bags), (Code::AddAndRetest, 6.0));
/// assert_eq!(first.buy.unwrap().bags, 9);
/// log[0] = Some(Entry { when: 0, what: LogEvent::Dose(kg(120.0)?) });
/// log[1] = Some(Entry { when: 1_440, what: LogEvent::Reading(read(2_320.0)?) });
/// let second = decide(&job, &course(baseline, &log)).unwrap();
/// assert_eq!((second.code, second.stage.unwrap().bags), (Code::AddAndFinish, 2.5));
/// # Ok(())
/// # }
/// ```
pub fn decide(job: &Job, course: &Course) -> Result<Decision, JobErrors> {
    let screening = screen(job, course)?;
    let plain = |first: Option<&Screened>| {
        job.plain(first.map_or(job.unread().mean, |first| dosing::mean(&first.visit.reading).0))
    };
    let undecided = |code, plain| Decision {
        code,
        plain,
        visits: screening.visits,
        prior_volume: job.prior().moments(),
        known: None,
        guess: None,
        stage: None,
        expect: None,
        buy: None,
        dosing: dosing::dosing(job, &screening.visits),
        sums: None,
        dilution: None,
    };
    Ok(match Situation::of(job, &screening) {
        Situation::Unread { code, read, estimate } => Decision {
            guess: Some(Known::of(job, estimate)),
            buy: Some(buy(job, &estimate, None)),
            ..undecided(code, plain(read.as_ref()))
        },
        Situation::Refused { code, first } => undecided(code, plain(Some(&first))),
        Situation::Implausible { first } => undecided(Code::VolumeImplausible, plain(Some(&first))),
        Situation::Read { at, first, estimate } => {
            let known = Known::of(job, estimate);
            let plain = plain(Some(&first));
            let (opening, room) = room(job, course, &screening, at, plain, known.need);
            let stage = whole_or_weighed(job, &estimate, plain, opening, room);
            let code = by_stage(job, &stage, screening.pair);
            let next = libm::fmax(stage.part.unwrap_or(stage.bags), job.in_bags(course.after));
            Decision {
                known: Some(known),
                stage: Some(stage),
                expect: expect(&screening, &estimate, at, next),
                buy: Some(buy(job, &estimate, Some((code, stage.bags)))),
                sums: sums(job, &screening.visits),
                dilution: water_to_replace(job, code, known.salt),
                ..undecided(code, plain)
            }
        }
    })
}

/// What the last reading allows.
#[allow(clippy::large_enum_variant)] // One of them, for as long as the decision takes.
enum Situation {
    /// No reading counts yet: what is usual is good enough to buy by, and so is `read`, the only one, of which
    /// the two readings differ.
    Unread { code: Code, read: Option<Screened>, estimate: Estimate },
    /// The last reading is refused; an earlier one counts.
    Refused { code: Code, first: Screened },
    /// The last reading and another outlier agree on a volume that can't be believed.
    Implausible { first: Screened },
    /// The last reading, which is the one at that place, counts.
    Read { at: usize, first: Screened, estimate: Estimate },
}

impl Situation {
    fn of(job: &Job, screening: &Screening) -> Self {
        let prior = job.prior();
        let latest = screening.latest();
        let refused = latest.map_or(Some(Code::NeedBaseline), |(_, latest)| refusal(latest.status));
        match (screening.first().copied(), latest, refused) {
            (None, Some((at, read)), Some(code @ Code::RepeatDiffers)) => {
                let estimate = Estimate::new(&prior, BEFORE_READING, &screening.believing(at));
                Self::Unread { code, read: Some(read), estimate }
            }
            (Some(first), _, Some(code)) => Self::Refused { code, first },
            (Some(first), Some((at, _)), None) => {
                let estimate = Estimate::new(&prior, screening.salt_prior(), &screening.evidence);
                if screening.pair && estimate.beyond(&prior, policy::FAR_OFF) > policy::EVEN_ODDS {
                    Self::Implausible { first }
                } else {
                    Self::Read { at, first, estimate }
                }
            }
            (_, _, code) => Self::Unread {
                code: code.unwrap_or(Code::NeedBaseline),
                read: None,
                estimate: Estimate::new(&prior, screening.salt_prior(), &screening.evidence),
            },
        }
    }
}

impl Decision {
    /// Is it of the first stage, before any reading after salt that counts?
    #[must_use]
    pub fn is_first(&self) -> bool {
        self.visits.iter().flatten().filter(|read| read.status == ReadingStatus::Counts).nth(1).is_none()
    }
}

impl Known {
    fn of(job: &Job, estimate: Estimate) -> Self {
        let (volume, salt) = (estimate.volume(), estimate.salt(0.0).moments());
        Self { estimate, volume, salt, need: estimate.mean_need(job.band.target.mg_per_l()) }
    }
}

/// Screens all readings, once nothing is wrong with the job.
pub(crate) fn screen(job: &Job, course: &Course) -> Result<Screening, JobErrors> {
    let faults = job.faults(course);
    if !faults.is_none() {
        return Err(faults);
    }
    let strict = job.prior().strict(policy::OUTLIER_DOUBT);
    Screening::of(course, |mass| job.in_bags(mass), job.unread(), &|salt, evidence, event| {
        Estimate::new(&strict, salt, evidence).predict(salt, evidence, event).moments()
    })
    .map_err(|_| faults.and(JobError::Instruments))
}

/// Why nothing is decided from a reading.
pub(crate) fn refusal(status: ReadingStatus) -> Option<Code> {
    match status {
        ReadingStatus::Counts => None,
        ReadingStatus::Early => Some(Code::WaitLonger),
        ReadingStatus::Differs => Some(Code::RepeatDiffers),
        ReadingStatus::Aside(Side::Low) | ReadingStatus::Out(Side::Low) => Some(Code::ReadsTooLow),
        ReadingStatus::Aside(Side::High) | ReadingStatus::Out(Side::High) => Some(Code::ReadsTooHigh),
    }
}

/// Is this the first stage, and how many bags does the cap leave; nothing where it does not hold.
fn room(
    job: &Job,
    course: &Course,
    screening: &Screening,
    at: usize,
    plain: f64,
    need: f64,
) -> (bool, Option<f64>) {
    let opening = screening.visits[..at].iter().flatten().all(|read| read.status != ReadingStatus::Counts);
    let before = job.in_bags(course.put_in) - job.in_bags(course.after);
    let cap = job.levels.cap;
    let room = if cap == 1.0 {
        None
    } else if screening.pair {
        Some(cap * need) // It starts again.
    } else if opening || before < policy::CAP_STILL_HOLDS * cap * plain {
        Some(cap * plain - before)
    } else {
        None
    };
    (opening, room)
}

/// By weight where the job takes few bags, unless in bags it is enough already: nobody is sent to the
/// scales for the last grams of a pool that stands in its band.
fn whole_or_weighed(job: &Job, estimate: &Estimate, plain: f64, opening: bool, room: Option<f64>) -> Stage {
    let in_bags = stage(job, estimate, job.part(opening), false, room);
    match job.weighed(plain) {
        Some(unit) if by_stage(job, &in_bags, false) != Code::StopInBand => {
            stage(job, estimate, unit, true, room)
        }
        _ => in_bags,
    }
}

/// The decision table, from too salty to too coarse.
fn by_stage(job: &Job, stage: &Stage, pair: bool) -> Code {
    let enough = stage.low <= job.levels.low;
    let some = stage.bags > 0.0;
    if stage.over_now > policy::EVEN_ODDS {
        Code::TooSalty
    } else if some && enough && stage.bound != Bound::Cap && !pair {
        Code::AddAndFinish
    } else if some {
        Code::AddAndRetest
    } else if enough && stage.over_now <= job.levels.over {
        Code::StopInBand
    } else if enough {
        Code::StopNearHigh
    } else if stage.part.is_some() {
        Code::BagTooCoarse
    } else {
        Code::NoMore
    }
}

fn water_to_replace(job: &Job, code: Code, salt: Moments) -> Option<Dilution> {
    (code == Code::TooSalty).then(|| dilution(&job.band, job.fill, &job.levels, salt))?
}

/// What will be read a day after these bags, by the instrument of the visit at `at`.
fn expect(screening: &Screening, estimate: &Estimate, at: usize, bags: f64) -> Option<Expected> {
    let mut evidence = screening.evidence;
    let event = Event {
        put_in: bags,
        latest: bags,
        undissolved: Since::Day.undissolved(),
        between_visits: true,
        instrument: evidence.events[at]?.instrument,
        taken: 1,
        ..Event::default()
    };
    evidence.events[at + 1] = Some(event);
    let reading = estimate.predict(screening.salt_prior(), &evidence, &event);
    (bags > 0.0).then(|| Expected { mean: reading.moments().mean, range: reading.range() })
}
