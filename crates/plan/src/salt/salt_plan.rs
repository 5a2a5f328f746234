//! What does the plain sum say, and what is decided on it?
//!
//! The plain sum believes every figure. The decision beside it, of [`crate::salt::decide`], asks how far each may
//! be off; it says how many bags to buy, how many now and how many later.

use crate::input::answers::Needs;
use crate::input::choices::Input;
use crate::policy::uncertainty::Moments;
use crate::salt::code::{Code, Standing};
use crate::salt::course::{Course, Visit};
use crate::salt::decide::{Decision, decide};
use crate::salt::dilute::Dilution;
use crate::salt::dosing::mean;
use crate::salt::enough::{Enough, enough};
use crate::salt::job::{Job, JobErrors, salt_faults};
use crate::salt::salt_input::SaltInput;
use chem::{Mass, Purity, Salinity, salt};

/// Salt to the target, as far as it can be known.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct SaltPlan {
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
    /// That no salt is due, where that is known without a job.
    pub enough: Option<Enough>,
    /// What is wrong with the job as a whole.
    pub faults: JobErrors,
    /// What is missing.
    pub needs: Needs,
}

/// Salt that is due at a stage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StageMass {
    /// All of it.
    pub all: Mass,
    /// What of it is not in yet.
    pub left: Mass,
}

impl SaltPlan {
    /// What is to be done.
    #[must_use]
    pub fn code(&self) -> Option<Code> {
        self.decision
            .as_ref()
            .map(|decision| decision.code)
            .or(self.enough.as_ref().map(|enough| enough.code))
    }

    /// Where the salt stands.
    #[must_use]
    pub fn standing(&self) -> Option<Standing> {
        self.code()?.standing()
    }

    /// The estimate of the salt, mg/L.
    #[must_use]
    pub fn salt(&self) -> Option<Moments> {
        let known = self.decision.as_ref().and_then(|decision| decision.known);
        known.map(|known| known.salt).or(self.enough.as_ref().map(|enough| enough.salt))
    }

    /// Water to replace for the salt's sake.
    #[must_use]
    pub fn dilution(&self) -> Option<Dilution> {
        let enough = || self.enough.as_ref().and_then(|enough| enough.dilution);
        self.decision.as_ref().and_then(|decision| decision.dilution).or_else(enough)
    }

    /// Did any salt go in?
    #[must_use]
    pub fn is_begun(&self) -> bool {
        self.course.is_some_and(|course| course.put_in > Mass::NONE)
    }

    /// The last reading, whatever became of it.
    #[must_use]
    pub fn latest(&self) -> Option<&Visit> {
        self.course.as_ref()?.visits.iter().flatten().last()
    }

    /// Salt that is due at this stage.
    #[must_use]
    pub fn due(&self) -> Option<StageMass> {
        let (stage, job, course) =
            (self.decision.as_ref()?.stage?, self.job.as_ref()?, self.course.as_ref()?);
        let bags = stage.part.unwrap_or(stage.bags);
        let all = job.bag.checked_mul(bags).ok()?;
        Some(StageMass { all, left: all.saturating_sub(course.after) })
    }

    /// Whole bags that it takes from here on, what went in since the last reading taken off.
    #[must_use]
    pub fn bags_left(&self) -> Option<f64> {
        let (buy, job, course) = (self.decision.as_ref()?.buy?, self.job.as_ref()?, self.course.as_ref()?);
        Some((f64::from(buy.bags) - job.in_bags(course.after)).max(0.0))
    }

    /// The reading that the simple sum expects after the first stage.
    #[must_use]
    pub fn plain_after(&self) -> Option<Salinity> {
        let (StageMass { all, .. }, job) = (self.due()?, self.job.as_ref()?);
        let from = self.decision.as_ref().filter(|decision| decision.is_first())?;
        let from = mean(&from.visits.iter().flatten().last()?.visit.reading).0;
        let from = Salinity::from_mg_per_l(from).ok()?;
        from.checked_add(salt::rise_from(all, job.purity, job.volume).ok()?).ok()
    }

    /// How likely it stands above the high limit if more went in than this stage told; nothing otherwise.
    #[must_use]
    pub fn overdone(&self) -> Option<f64> {
        let (due, job, course) = (self.due()?, self.job.as_ref()?, self.course.as_ref()?);
        let known = self.decision.as_ref()?.known?;
        let more = course.after.kilograms() > (1.0 + TINY) * due.all.kilograms();
        more.then(|| known.estimate.salt(job.in_bags(course.after)).prob_above(job.band.high.mg_per_l()))
    }

    /// Is all of this stage in?
    #[must_use]
    pub fn is_in(&self) -> bool {
        self.course.is_some_and(|course| course.after > Mass::NONE)
            && self.due().is_some_and(|due| due.left.kilograms() <= TINY * due.all.kilograms())
    }
}

/// What rounding may hide: a millionth.
const TINY: f64 = 1e-6;

/// The salt to the target.
///
/// ```
/// use chem::*;
/// use saltwright_plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let case = Case {
///     volume: Some(Volume::from_cubic_metres(62.82)?),
///     method: Some(Method::Taped),
///     reading: Typed::Valid(Salinity::from_mg_per_l(400.0)?),
///     instrument: Some(Instrument::Meter),
///     band: Band::of(None, Some(Salinity::from_mg_per_l(3_200.0)?), None).ok(),
///     bag: Bag {
///         size: Some(Mass::from_kilograms(20.0)?),
///         purity: Some(Purity::from_ratio(0.994)?),
///         ..Bag::default()
///     },
///     ..Case::default()
/// };
/// let plan = saltwright_plan::salt::salt_plan::salt_plan(&saltwright_plan::salt::salt_input::SaltInput::of(&case));
/// assert!((plan.bags.unwrap() - 8.85).abs() < 0.005);
/// assert_eq!(plan.decision.unwrap().stage.unwrap().bags, 6.0);
/// # Ok(())
/// # }
/// ```
#[must_use]
pub fn salt_plan(input: &SaltInput) -> SaltPlan {
    let mut plan =
        SaltPlan { needs: input.needs(), job: input.job(), course: input.course(), ..plain(input) };
    match (&plan.job, &plan.course) {
        (_, None) => {}
        (Some(job), Some(course)) => match decide(job, course) {
            Ok(decision) => plan.decision = Some(decision),
            Err(faults) => plan.faults = faults,
        },
        (None, Some(course)) => {
            if let (Some(band), Some(levels)) = (input.band, input.risk_levels()) {
                plan.faults = salt_faults(&band, &levels, input.fill_salt, course);
                if plan.faults.is_none() {
                    plan.enough = enough(input, &band, &levels, course);
                }
            }
        }
    }
    if plan.enough.is_some() {
        plan.needs = Needs::of(&[(Input::Volume, input.volume.is_some())]); // None of the bags, then.
    }
    plan
}

/// The sum that believes every figure.
fn plain(input: &SaltInput) -> SaltPlan {
    let mut plan = SaltPlan::default();
    let Some(reading) = input.read() else { return plan };
    let Some(again) = input.again.or(reading) else { return plan };
    let mean = Salinity::from_mg_per_l(0.5 * (reading.mg_per_l() + again.mg_per_l())).unwrap_or(reading);
    plan.from = Some(mean);
    plan.rise = input.band.and_then(|band| band.target.excess_over(mean));
    let (Some(rise), Some(volume)) = (plan.rise, input.volume) else { return plan };
    plan.pure = Some(salt::mass_for(volume, rise, Purity::WHOLE));
    plan.mass = input.bag.purity.map(|purity| salt::mass_for(volume, rise, purity));
    let size = input.bag.size.filter(|size| *size > Mass::NONE);
    plan.bags = plan.mass.zip(size).map(|(mass, size)| mass.kilograms() / size.kilograms());
    plan
}
