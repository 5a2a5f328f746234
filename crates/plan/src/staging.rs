//! What does the plain sum say, and what is decided on it?
//!
//! The plain sum believes every figure. The decision beside it, of [`crate::decide`], asks how far each may
//! be off; it says how many bags to buy, how many now and how many later.

use crate::case::{Bag, Case, Needs, Optional};
use crate::choice::{History, Instrument};
use crate::choice::{Input, Method};
use crate::course::{Baseline, Course, Log, MOST_ENTRIES, Reading, Visit, course};
use crate::decide::{Code, Decision, decide};
use crate::dosing::mean;
use crate::job::{Faults, Handled, Job};
use chem::{Mass, Purity, Salinity, Volume, salt};

/// Salt to the target, as far as it can be known.
#[derive(Clone, Debug, Default)]
pub struct Dose {
    /// What the rise is counted from: the first reading, of two at one visit their mean.
    pub from: Option<Salinity>,
    /// Rise from the first reading to the target; `None` at or above it.
    pub rise: Option<Salinity>,
    /// Sodium chloride for the rise.
    pub pure: Option<Mass>,
    /// Salt of the stated purity for the rise.
    pub mass: Option<Mass>,
    /// The same in bags.
    pub bags: Option<f64>,
    /// What was put in and read; `None` while a line of the log can't be used.
    pub course: Option<Course>,
    /// What is asked of the estimate.
    pub job: Option<Job>,
    /// What follows from both.
    pub decision: Option<Decision>,
    /// What is wrong with the job as a whole.
    pub faults: Faults,
    /// What is missing.
    pub needs: Needs,
}

/// Where the salt stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Salt is due.
    Short,
    /// It is enough.
    Within,
    /// There is too much.
    Over,
    /// The readings don't allow to say: read again, in the way that the code says.
    Held,
}

impl Code {
    /// Where the salt stands by it; `None` without any reading.
    pub const fn standing(self) -> Option<Standing> {
        Some(match self {
            Self::NeedBaseline => return None,
            Self::AddAndRetest | Self::AddAndFinish | Self::BagTooCoarse => Standing::Short,
            Self::StopInBand | Self::StopNearHigh => Standing::Within,
            Self::TooSalty => Standing::Over,
            Self::RepeatDiffers
            | Self::WaitLonger
            | Self::ReadsTooLow
            | Self::ReadsTooHigh
            | Self::VolumeImplausible
            | Self::NoMore => Standing::Held,
        })
    }
}

impl Dose {
    /// Where the salt stands.
    pub fn standing(&self) -> Option<Standing> {
        self.decision.as_ref()?.code.standing()
    }

    /// The last reading, whatever became of it.
    pub fn latest(&self) -> Option<&Visit> {
        self.course.as_ref()?.visits.iter().flatten().last()
    }

    /// Salt that is due at this stage: all of it, and what of it is not in yet.
    pub fn due(&self) -> Option<[Mass; 2]> {
        let (stage, job, course) =
            (self.decision.as_ref()?.stage?, self.job.as_ref()?, self.course.as_ref()?);
        let bags = stage.part.unwrap_or(stage.bags);
        let all = job.bag.checked_mul(bags).ok()?;
        Some([all, all.saturating_sub(course.after)])
    }

    /// Whole bags that it takes from here on, what went in since the last reading taken off.
    pub fn bags_left(&self) -> Option<f64> {
        let (buy, job, course) = (self.decision.as_ref()?.buy?, self.job.as_ref()?, self.course.as_ref()?);
        Some((f64::from(buy.bags) - job.in_bags(course.after)).max(0.0))
    }

    /// The reading that the simple sum expects after the first stage.
    pub fn plain_after(&self) -> Option<Salinity> {
        let ([all, _], job) = (self.due()?, self.job.as_ref()?);
        let from = self.decision.as_ref().filter(|decision| decision.is_first())?;
        let from = mean(&from.visits.iter().flatten().last()?.visit.reading).0;
        let from = Salinity::from_mg_per_l(from).ok()?;
        from.checked_add(salt::rise_from(all, job.purity, job.volume).ok()?).ok()
    }

    /// How likely it stands above the high limit if more went in than this stage told; nothing otherwise.
    pub fn overdone(&self) -> Option<f64> {
        let ([all, _], job, course) = (self.due()?, self.job.as_ref()?, self.course.as_ref()?);
        let known = self.decision.as_ref()?.known?;
        let more = course.after.kilograms() > (1.0 + TINY) * all.kilograms();
        more.then(|| known.estimate.salt(job.in_bags(course.after)).above(job.band.high.mg_per_l()))
    }

    /// Is all of this stage in?
    pub fn is_in(&self) -> bool {
        self.course.is_some_and(|course| course.after > Mass::NONE)
            && self.due().is_some_and(|[all, left]| left.kilograms() <= TINY * all.kilograms())
    }
}

/// What rounding may hide: a millionth.
const TINY: f64 = 1e-6;

/// The dose of a case.
///
/// A size that nobody says how it was found counts as remembered, the careful case.
///
/// ```
/// use chem::*;
/// use plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let case = Case {
///     volume: Some(Volume::from_cubic_metres(62.82)?),
///     method: Some(Method::Taped),
///     reading: Optional::Given(Salinity::from_mg_per_l(400.0)?),
///     instrument: Some(Instrument::Meter),
///     band: Band::of(None, Some(Salinity::from_mg_per_l(3_200.0)?), None).ok(),
///     bag: Bag {
///         size: Some(Mass::from_kilograms(20.0)?),
///         purity: Some(Purity::from_ratio(0.994)?),
///         ..Bag::default()
///     },
///     ..Case::default()
/// };
/// let dose = staging::dose(&case);
/// assert!((dose.bags.unwrap() - 8.85).abs() < 0.005);
/// assert_eq!(dose.decision.unwrap().stage.unwrap().bags, 6.0);
/// # Ok(())
/// # }
/// ```
pub fn dose(case: &Case) -> Dose {
    let needs = Needs::of(&[
        (Input::Volume, case.volume.is_some()),
        (Input::Reading, case.read().is_some() || case.log != Optional::LeftOut),
        (Input::Instrument, case.instrument.is_some() || case.reading == Optional::LeftOut),
        (Input::BagSize, case.bag.size.is_some()),
        (Input::Purity, case.bag.purity.is_some()),
    ]);
    let mut dose = Dose { needs, job: job(case), course: logged(case), ..Dose::default() };
    plain(case, &mut dose);
    let Some(course) = &dose.course else { return dose };
    match dose.job.as_ref().map(|job| decide(job, course)) {
        Some(Ok(decision)) => dose.decision = Some(decision),
        Some(Err(faults)) => dose.faults = faults,
        None => dose.decision = enough_by_any_bag(case, course),
    }
    if dose.job.is_none() && dose.decision.is_some() {
        dose.needs = Needs::of(&[(Input::Volume, case.volume.is_some())]); // None of the bags, then.
    }
    dose
}

/// That no salt is due is known without bags and without the size of the pool, as long as none went in: by
/// any of them the decision is the same.
fn enough_by_any_bag(case: &Case, course: &Course) -> Option<Decision> {
    let any = |kg| Mass::from_kilograms(kg).ok();
    let bag = Bag { size: any(20.0), purity: Some(Purity::WHOLE), in_hand: Optional::LeftOut, ..case.bag };
    let job = job(&Case { volume: case.volume.or(Some(Volume::ONE)), bag, ..*case })?;
    let decision = decide(&job, course).ok().filter(|_| course.put_in == Mass::NONE)?;
    let holds = match decision.code {
        Code::TooSalty | Code::StopNearHigh => true,
        Code::StopInBand => decision.known.is_some_and(|known| known.need <= 0.0),
        _ => false,
    };
    holds.then_some(Decision { buy: None, dosing: None, ..decision })
}

/// The sum that believes every figure.
fn plain(case: &Case, dose: &mut Dose) {
    let Some(reading) = case.read() else { return };
    let Some(again) = case.again.or(reading) else { return };
    let mean = Salinity::from_mg_per_l(0.5 * (reading.mg_per_l() + again.mg_per_l())).unwrap_or(reading);
    dose.from = Some(mean);
    let Some(band) = case.band else { return };
    dose.rise = band.target.excess_over(mean);
    let (Some(rise), Some(volume)) = (dose.rise, case.volume) else { return };
    dose.pure = Some(salt::mass_for(volume, rise, Purity::WHOLE));
    dose.mass = case.bag.purity.map(|purity| salt::mass_for(volume, rise, purity));
    let size = case.bag.size.filter(|size| *size > Mass::NONE);
    dose.bags = dose.mass.zip(size).map(|(mass, size)| mass.kilograms() / size.kilograms());
}

/// What is asked of the estimate, once all of it is there.
fn job(case: &Case) -> Option<Job> {
    Some(Job {
        volume: case.volume?,
        method: case.method.unwrap_or(Method::Remembered),
        doubt: match case.doubt {
            Optional::LeftOut => None,
            Optional::Garbled => return None,
            Optional::Given(doubt) => Some(doubt),
        },
        bag: case.bag.size?,
        purity: case.bag.purity?,
        in_hand: case.bag.in_hand.or(0).unwrap_or(0), // Where it is garbled, what to buy is not told.
        band: case.band?,
        history: case.history.unwrap_or(History::Unknown),
        fill: case.fill_salt,
        handled: Handled::Bags(case.bag.weighed_in),
        levels: case.levels.or(Default::default())?,
    })
}

/// The course of the case, unless a part of it can't be used: the rest would tell of another pool.
fn logged(case: &Case) -> Option<Course> {
    let log: Log = case.log.or([None; MOST_ENTRIES])?;
    // Also where the reading would not count, or there is none that they would go with: somebody meant one.
    let (again, when) = (case.again.map(Some).or(None)?, case.read_at.map(Some).or(None)?);
    let baseline = match (case.reading, case.instrument) {
        (Optional::Garbled, _) => return None,
        (Optional::LeftOut, _) | (_, Some(Instrument::Assumed)) => None,
        (Optional::Given(salt), Some(instrument)) => {
            Some(Baseline { when, reading: Reading { salt, again, instrument } })
        }
        _ => return None,
    };
    Some(course(baseline, &log))
}
