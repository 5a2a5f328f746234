//! In which order does the plan follow from the case?
//!
//! The salt as it was read; the pool now; the water to replace; the salt for the water that it then goes into;
//! the other tests of that water; the gates; the days and the generator at work. Each link is a function of
//! those before it.

use crate::input::answers::{Needs, Typed, Unknown};
use crate::input::case::{Case, TestedWater, taken};
use crate::input::choices::Instrument;
use crate::operation::{self, OutputInput, SeasonInput};
use crate::readiness::gates::Gates;
use crate::readiness::go::{self, Go};
use crate::readiness::inputs::{Inputs, LatestReading};
use crate::salt::code::Standing;
use crate::salt::salt_input::SaltInput;
use crate::salt::salt_plan::{SaltPlan, salt_plan};
use crate::schedule::{Clock, Schedule, schedule};
use crate::water::balance::{Balance, Due, balance};
use crate::water::replacement::{Excess, Replace, ReplacementInput, replace};
use crate::water::treatment::{Start, Treatment, TreatmentInput, treat};
use chem::{Salinity, Volume, bounds};

/// Everything that follows from a [`Case`].
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Plan {
    /// Salt to buy and to add.
    pub salt: SaltPlan,
    /// The saturation index, today and after the salt.
    pub balance: Result<Balance, Unknown>,
    /// The reading expected once water is replaced for the sake of another test: the salt is counted from
    /// there.
    pub counted_from: Option<Salinity>,
    /// What stands above where it is to be; only other water brings it down.
    pub excess: Option<Excess>,
    /// Water to replace; asked only when there is too much salt by something better than the
    /// generator's display, or more hardness or cyanuric acid than the goal.
    pub replace: Result<Replace, Unknown>,
    /// What has to go in before the salt; asked only when there is a goal.
    pub treatment: Result<Treatment, Unknown>,
    /// One verdict a gate.
    pub gates: Gates,
    /// May the salt go in?
    pub go: Go,
    /// May the generator be switched on?
    pub power: Go,
    /// The first day on which salt may go in, by the waits that have a date.
    pub earliest: Option<i64>,
    /// Every answer missing from any of these.
    pub needs: Needs,
    /// What lies ahead, once there is a moment to reckon from.
    pub schedule: Option<Schedule>,
    /// The generator at work.
    pub running: AtWork,
}

/// The generator at work, as far as each part is known.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct AtWork {
    /// A setting to begin with.
    pub setting: Option<operation::Setting>,
    /// What brings a pH that has climbed back.
    pub climb: Option<operation::Climb>,
    /// What a season takes.
    pub ahead: Option<operation::Ahead>,
}

/// Works out the plan.
///
/// ```
/// use chem::*;
/// use saltwright_plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let case = Case {
///     volume: Some(Volume::from_cubic_metres(62.82)?),
///     reading: Typed::Valid(Salinity::from_mg_per_l(400.0)?),
///     bag: Bag { size: Some(Mass::from_kilograms(20.0)?), ..Bag::default() },
///     ..Case::default()
/// };
/// let plan = plan(&case);
/// assert!(plan.needs.contains(Input::Purity)); // missing, so named; nothing is assumed in its place
/// assert!(plan.salt.decision.is_none());
/// # Ok(())
/// # }
/// ```
#[must_use]
pub fn plan(case: &Case) -> Plan {
    let read = SaltInput::of(case);
    let today = salt_plan(&read);
    let now = PoolNow::of(case, &today);
    let replacement = Replacement::of(case, &today, &now);
    let latest = LatestReading::of(case, &today);
    let counted = Counted::of(&read, today, &now, &replacement);
    let salt = counted.salt;
    let water = tested(case, &salt);
    let rise = due_rise(case, &water, &salt);
    let chemistry = TreatmentInput { water, ..TreatmentInput::of(case) };
    let treatment = treat(&chemistry, rise.unwrap_or(Salinity::NONE), replacement.start);
    let due = if replacement.water_first { Due::Nothing } else { due(case, &water, &salt, rise) };
    let balance = balance(&water, due);
    let gates = Gates::of(&Inputs { case, latest, balance: &balance, treatment: &treatment });
    Plan {
        counted_from: counted.from,
        go: go::go(case, &salt, &gates),
        power: go::power(case, &gates),
        earliest: go::earliest(case, &gates, &treatment),
        needs: needs(&salt, &balance, &replacement.replace, &treatment),
        schedule: schedule(&Clock::of(case), &salt),
        running: AtWork {
            setting: operation::setting(&OutputInput::of(case, now.volume)),
            climb: case.band.and_then(|band| operation::climb(&chemistry, band.target)),
            ahead: operation::ahead(&SeasonInput::of(case, now.volume)),
        },
        excess: replacement.excess,
        replace: replacement.replace,
        salt,
        balance,
        treatment,
        gates,
    }
}

/// Link: the pool as it is now. The reading as typed; once salt went in, or there is too much of it, the estimate.
struct PoolNow {
    reading: Option<Salinity>,
    volume: Option<Volume>,
}

impl PoolNow {
    fn of(case: &Case, today: &SaltPlan) -> Self {
        let begun = today.is_begun();
        let told = begun || today.standing() == Some(Standing::Over);
        let salt = today.salt().filter(|_| told).and_then(|salt| Salinity::from_mg_per_l(salt.mean).ok());
        // Shares of a pool are shares of the one that the doses have found.
        let known = today.decision.as_ref().and_then(|decision| decision.known).filter(|_| begun);
        let typical = |volume: f64| bounds::POOL.check(volume).and_then(Volume::from_cubic_metres).ok();
        let volume = known.and_then(|known| typical(known.volume.mean));
        Self {
            reading: taken(salt.map_or(case.reading, Typed::Valid), case.instrument),
            volume: volume.or(case.volume.filter(|_| !is_untold(case))),
        }
    }
}

/// Would doses tell the size of the pool and its salt, but for something at fault? Then what was typed is not what
/// counts.
fn is_untold(case: &Case) -> bool {
    case.log != Typed::Missing && (case.is_invalid() || case.uncounted)
}

/// Link: what only other water takes out, and how much of it.
struct Replacement {
    excess: Option<Excess>,
    replace: Result<Replace, Unknown>,
    /// Which water the other chemicals go into.
    start: Start,
    /// Water goes before the salt, for the sake of another test.
    water_first: bool,
    /// Nobody knows whether it does.
    unknown: bool,
}

impl Replacement {
    fn of(case: &Case, today: &SaltPlan, now: &PoolNow) -> Self {
        let over = today.standing() == Some(Standing::Over);
        let by_display = today.latest().is_some_and(|visit| visit.reading.instrument == Instrument::Display);
        let target = case.band.filter(|_| over).map(|band| band.target);
        let excess = Excess::of(&case.goals, &case.water, target);
        let input = ReplacementInput::of(case, now.reading, now.volume);
        let replace = match excess.filter(|_| !(over && by_display)) {
            Some(_) if case.is_invalid() || case.goals.water_unknown || is_untold(case) => {
                Err(Unknown::Needs(Needs::NONE))
            }
            Some(excess) => replace(&input, excess, today.dilution()),
            None => Err(Unknown::NotAsked),
        };
        let start = Start::after(&input, &replace);
        Self {
            excess,
            replace,
            start,
            water_first: !over && excess.is_some(),
            unknown: !over && case.goals.water_unknown,
        }
    }
}

/// Link: the salt, counted for the water that it goes into.
struct Counted {
    salt: SaltPlan,
    /// The reading expected once water is replaced.
    from: Option<Salinity>,
}

impl Counted {
    /// After water is replaced that is a forecast, and nothing while it can't be told.
    fn of(read: &SaltInput, today: SaltPlan, now: &PoolNow, replacement: &Replacement) -> Self {
        if replacement.unknown {
            return Self { salt: SaltPlan::default(), from: None };
        } else if !replacement.water_first {
            return Self { salt: today, from: None };
        }
        let known = replacement.replace.as_ref().ok().filter(|replace| replace.at_once.is_ok());
        match known.and_then(|replace| replace.salt).map(|salt| read.replaced(salt, now.volume)) {
            Some(replaced) => Self { salt: salt_plan(&replaced), from: replaced.read() },
            None => Self { salt: SaltPlan::default(), from: None },
        }
    }
}

/// Link: the water that the other tests were taken of, with its own reading: where only the log has readings, the
/// first of them.
fn tested(case: &Case, salt: &SaltPlan) -> TestedWater {
    let first = salt.course.as_ref().and_then(|course| course.visits[0]);
    match first.filter(|_| case.reading == Typed::Missing) {
        Some(visit) => TestedWater {
            reading: Some(visit.reading.salt),
            instrument: Some(visit.reading.instrument),
            ..case.tested()
        },
        None => case.tested(),
    }
}

/// What is to happen to the salt, from the reading that the other tests go with.
fn due(case: &Case, water: &TestedWater, salt: &SaltPlan, rise: Option<Salinity>) -> Due {
    let at_fault = case.is_invalid() || case.uncounted;
    let known = water.reading.is_some() && salt.course.is_some() && !at_fault;
    match (salt.standing(), rise) {
        (None, _) if !known => Due::Unknown,
        (None, Some(rise)) => Due::Rise(rise),
        (Some(Standing::Short), Some(rise)) => Due::Rise(rise),
        (Some(Standing::Short), None) => Due::Unknown,
        (Some(_), Some(rise)) if salt.is_begun() => Due::Rise(rise),
        _ => Due::Nothing,
    }
}

/// The rise to the target; where the reading stands above that, what this stage brings.
fn due_rise(case: &Case, water: &TestedWater, salt: &SaltPlan) -> Option<Salinity> {
    let to_target = case.band.zip(water.reading).and_then(|(band, reading)| band.target.excess_over(reading));
    let by_stage = || {
        let (stage, job) = (salt.due()?, salt.job.as_ref()?);
        chem::salt::rise_from(stage.all, job.purity, job.volume).ok()
    };
    to_target.or_else(by_stage)
}

/// Every answer missing from any of these.
fn needs(
    salt: &SaltPlan,
    balance: &Result<Balance, Unknown>,
    replace: &Result<Replace, Unknown>,
    treatment: &Result<Treatment, Unknown>,
) -> Needs {
    let why = [balance.as_ref().err(), replace.as_ref().err(), treatment.as_ref().err()];
    let missing = why.into_iter().flatten().filter_map(|why| match why {
        Unknown::Needs(missing) => Some(*missing),
        _ => None,
    });
    let forecast = replace.as_ref().map_or(Needs::NONE, |replace| replace.needs);
    missing.fold(salt.needs.and(forecast), Needs::and)
}
