//! What is to be done now, and what is to be bought?

use crate::policy;
use crate::policy::uncertainty::Since;
use crate::salt::buy::{Buy, buy};
use crate::salt::code::Code;
use crate::salt::course::{Course, MOST_VISITS};
use crate::salt::dilute::{Dilution, dilution};
use crate::salt::dosing::{self, Dosing, Sums};
use crate::salt::ekf::{Evidence, Step};
use crate::salt::estimate::Estimate;
use crate::salt::job::{Fault, Faults, Job};
use crate::salt::mixture::About;
use crate::salt::outliers::{Fate, Judged, Judgement, Side};
use crate::salt::stage::{Bound, Stage, stage};

/// A reading to come, mg/L.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// Its mean.
    pub mean: f64,
    /// Where it lies 9 times in 10.
    pub range: [f64; 2],
}

/// What is known at the last reading, if it is believed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Known {
    /// All of it.
    pub estimate: Estimate,
    /// Volume, m³.
    pub volume: About,
    /// Salt, mg/L.
    pub salt: About,
    /// Bags to the target on the average; below zero where it is above.
    pub need: f64,
}

/// What follows from a job and its course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decision {
    /// What is to be done.
    pub code: Code,
    /// Bags for the whole job by the volume as stated and the first reading.
    pub plain: f64,
    /// Every reading and what became of it.
    pub visits: [Option<Judged>; MOST_VISITS],
    /// The volume before any reading, m³.
    pub stated: About,
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
/// Errors: [`Faults`], all that is wrong; then nothing is worked out.
///
/// ```
/// use chem::*;
/// use plan::log::*;
/// use plan::salt::course::*;
/// use plan::salt::decide::decide;
/// use plan::salt::job::*;
/// use plan::Levels;
/// use plan::*;
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
///     handled: Handled::Bags([kg(0.05)?, kg(0.5)?]),
///     levels: Levels::default(),
/// };
/// let read = |x| -> Result<_, OutOfRange> {
///     Ok(Reading { salt: salt(x)?, again: None, instrument: Instrument::Meter })
/// };
/// let baseline = Some(Baseline { when: None, reading: read(400.0)? });
/// let mut log: Log = [None; MOST_ENTRIES];
/// let first = decide(&job, &course(baseline, &log)).unwrap();
/// assert_eq!((first.code, first.stage.unwrap().bags), (Code::AddAndRetest, 6.0));
/// assert_eq!(first.buy.unwrap().bags, 9);
/// log[0] = Some(Entry { when: 0, what: What::Dose(kg(120.0)?) });
/// log[1] = Some(Entry { when: 1_440, what: What::Reading(read(2_320.0)?) });
/// let second = decide(&job, &course(baseline, &log)).unwrap();
/// assert_eq!((second.code, second.stage.unwrap().bags), (Code::AddAndFinish, 2.5));
/// # Ok(())
/// # }
/// ```
pub fn decide(job: &Job, course: &Course) -> Result<Decision, Faults> {
    let mut judged = judge(job, course)?;
    let latest = judged.latest();
    let refused = latest.map_or(Some(Code::NeedBaseline), |(_, judged)| refusal(judged.fate));
    let begun = judged.first().copied();
    let first = match (begun, latest, refused) {
        (None, Some((at, differs)), Some(Code::RepeatDiffers)) => {
            judged.believe(at); // Good enough to buy by.
            Some(differs)
        }
        _ => begun,
    };
    let mut decision = Decision {
        code: refused.unwrap_or(Code::VolumeImplausible),
        plain: job.plain(first.map_or(job.unread().0, |first| dosing::mean(&first.visit.reading).0)),
        visits: judged.visits,
        stated: job.prior().about(),
        known: None,
        guess: None,
        stage: None,
        expect: None,
        buy: None,
        dosing: dosing::dosing(job, &judged.visits),
        sums: None,
        dilution: None,
    };
    match (latest, refused) {
        (Some((at, _)), None) => decision.by_reading(at, job, course, &judged),
        _ if begun.is_none() => {
            let estimate = Estimate::new(&job.prior(), &judged.evidence);
            decision.guess = Some(known(job, estimate));
            decision.buy = Some(buy(job, &estimate, None));
        }
        _ => {}
    }
    Ok(decision)
}

impl Decision {
    /// Is it of the first stage, before any reading after salt that counts?
    pub fn is_first(&self) -> bool {
        self.visits.iter().flatten().filter(|judged| judged.fate == Fate::Counts).nth(1).is_none()
    }

    /// Fills in what follows from the reading at `at`, which counts.
    fn by_reading(&mut self, at: usize, job: &Job, course: &Course, judged: &Judgement) {
        let prior = job.prior();
        let estimate = Estimate::new(&prior, &judged.evidence);
        if judged.pair && estimate.beyond(&prior, policy::FAR_OFF) > 0.5 {
            return;
        }
        let known = known(job, estimate);
        let before = job.in_bags(course.put_in) - job.in_bags(course.after);
        let opening = judged.visits[..at].iter().flatten().all(|judged| judged.fate != Fate::Counts);
        let cap = job.levels.cap;
        let room = if cap == 1.0 {
            None
        } else if judged.pair {
            Some(cap * known.need) // It starts again.
        } else {
            let holds = opening || before < policy::CAP_STILL_HOLDS * cap * self.plain;
            holds.then_some(cap * self.plain - before)
        };
        let stage = whole_or_weighed(job, &estimate, self.plain, opening, room);
        self.code = code(job, &stage, judged.pair);
        self.known = Some(known);
        self.stage = Some(stage);
        self.expect = expect(
            judged.evidence,
            &estimate,
            at,
            libm::fmax(stage.part.unwrap_or(stage.bags), job.in_bags(course.after)),
        );
        self.buy = Some(buy(job, &estimate, Some((self.code, stage.bags))));
        self.sums = dosing::sums(job, &judged.visits);
        if self.code == Code::TooSalty {
            self.dilution = dilution(job, known.salt);
        }
    }
}

fn known(job: &Job, estimate: Estimate) -> Known {
    let (volume, salt) = (estimate.volume(), estimate.salt(0.0).about());
    Known { estimate, volume, salt, need: estimate.mean_need(job.band.target.mg_per_l()) }
}

/// Judges all readings, once nothing is wrong with the job.
pub(crate) fn judge(job: &Job, course: &Course) -> Result<Judgement, Faults> {
    let faults = job.faults(course);
    if !faults.is_none() {
        return Err(faults);
    }
    Judgement::of(course, &job.prior(), job.bag, job.unread()).map_err(|_| faults.and(Fault::Instruments))
}

/// Why nothing is decided from a reading.
fn refusal(fate: Fate) -> Option<Code> {
    match fate {
        Fate::Counts => None,
        Fate::Early => Some(Code::WaitLonger),
        Fate::Differs => Some(Code::RepeatDiffers),
        Fate::Aside(Side::Low) | Fate::Out(Side::Low) => Some(Code::ReadsTooLow),
        Fate::Aside(Side::High) | Fate::Out(Side::High) => Some(Code::ReadsTooHigh),
    }
}

/// By weight where the job takes few bags, unless in bags it is enough already: nobody is sent to the
/// scales for the last grams of a pool that stands in its band.
fn whole_or_weighed(job: &Job, estimate: &Estimate, plain: f64, opening: bool, room: Option<f64>) -> Stage {
    let in_bags = stage(job, estimate, job.part(opening), false, room);
    match job.weighed(plain) {
        Some(unit) if code(job, &in_bags, false) != Code::StopInBand => {
            stage(job, estimate, unit, true, room)
        }
        _ => in_bags,
    }
}

fn code(job: &Job, stage: &Stage, pair: bool) -> Code {
    let enough = stage.low <= job.levels.low;
    if stage.over_now > 0.5 {
        Code::TooSalty
    } else if stage.bags > 0.0 {
        let done = enough && stage.bound != Bound::Cap && !pair;
        if done { Code::AddAndFinish } else { Code::AddAndRetest }
    } else if enough {
        if stage.over_now <= job.levels.over { Code::StopInBand } else { Code::StopNearHigh }
    } else if stage.part.is_some() {
        Code::BagTooCoarse
    } else {
        Code::NoMore
    }
}

/// What will be read a day after these bags, by the instrument of the visit at `at`.
fn expect(mut evidence: Evidence, estimate: &Estimate, at: usize, bags: f64) -> Option<Expected> {
    let meter = evidence.steps[at]?.meter;
    let undissolved = Since::Day.undissolved();
    let step =
        Step { put_in: bags, latest: bags, undissolved, gap: true, meter, taken: 1, ..Step::default() };
    evidence.steps[at + 1] = Some(step);
    let reading = estimate.foresee(&evidence, &step);
    (bags > 0.0).then(|| Expected { mean: reading.about().mean, range: reading.range() })
}
