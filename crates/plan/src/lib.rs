//! Judgement: from one case to what to buy, what to add, what to leave alone.
//!
//! Everything is a pure function of the [`Case`]: no clock, no files, no chance, and no text for
//! people. What is missing is named ([`Needs`]), not guessed, and never counts as passed.
//!
//! | Question | Room |
//! |---|---|
//! | What is known about the pool? | [`case`] |
//! | Which answers can be chosen? | [`choice`] |
//! | Which size of the pool counts, and how was it found? | [`measure`] |
//! | Which numbers are choices, and whose? | [`policy`] |
//! | Between which limits is the salt to stand? | [`band`] |
//! | What does the plain sum say, and what is decided on it? | [`staging`] |
//! | The same under doubt: what is asked of a job? What was put in and read, in order? | [`job`], [`course`] |
//! | How far may each figure be off? | [`spread`] |
//! | How much water and salt, and how sure is that? | [`estimate`], of [`mixture`]s that `filter` finds |
//! | Which readings can be believed? | [`odd`] |
//! | What is to be done now, and what is to be bought? | [`decide`] |
//! | How many bags now? How much water to replace? | [`stage`], [`dilute`] |
//! | What do the doses themselves say of the volume? | [`dosing`] |
//! | Which measurement would pay most to repeat? | [`pays`] |
//! | What will the salt do to the saturation index? | [`balance`] |
//! | What has to go in before the salt? | [`treat`] |
//! | What if there is too much of what only other water takes out? | [`replace`] |
//! | Which gates are there? | [`gates`] |
//! | May it go in? May the generator be switched on? | [`rules`] |
//! | Is the pool ready? | [`ready`] |
//! | How is the output to be set? What does a season take? | [`running`] |
//! | What is to be done when? | [`schedule`] |
#![no_std]

pub mod balance;
pub mod band;
pub mod case;
pub mod choice;
pub mod course;
pub mod decide;
pub mod dilute;
pub mod dosing;
pub mod estimate;
mod filter;
pub mod gates;
pub mod job;
pub mod limits;
pub mod measure;
pub mod mixture;
pub mod odd;
pub mod pays;
pub mod policy;
pub mod ready;
pub mod replace;
pub mod rules;
pub mod running;
pub mod schedule;
pub mod spread;
pub mod stage;
pub mod staging;
pub mod treat;

pub use balance::Balance;
use balance::Due;
pub use band::{Band, BandFault};
pub use case::*;
use chem::{Mass, Salinity, Volume};
pub use choice::*;
use course::{Reading, Visit};
pub use decide::{Code, Decision};
pub use gates::Gate;
pub use job::Job;
pub use ready::Ready;
pub use replace::{Excess, Replace};
pub use rules::{Gates, Go, Verdict};
pub use schedule::Schedule;
pub use staging::{Dose, Standing};
pub use treat::Treatment;

/// Why a result is not there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unknown {
    /// These answers are missing.
    Needs(Needs),
    /// The question does not arise.
    NotAsked,
    /// The chemistry has no answer, and says why.
    Chemistry(chem::WaterError),
}

/// Everything that follows from a [`Case`].
#[derive(Clone, Debug)]
pub struct Plan {
    /// Salt to buy and to add.
    pub dose: Dose,
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
#[derive(Clone, Copy, Debug)]
pub struct AtWork {
    /// A setting to begin with.
    pub setting: Option<running::Setting>,
    /// What brings a pH that has climbed back.
    pub climb: Option<running::Climb>,
    /// What a season takes.
    pub ahead: Option<running::Ahead>,
}

/// Works out the plan.
///
/// ```
/// use chem::*;
/// use plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let case = Case {
///     volume: Some(Volume::from_cubic_metres(62.82)?),
///     reading: Optional::Given(Salinity::from_mg_per_l(400.0)?),
///     bag: Bag { size: Some(Mass::from_kilograms(20.0)?), ..Bag::default() },
///     ..Case::default()
/// };
/// let plan = plan(&case);
/// assert!(plan.needs.contains(Input::Purity)); // missing, so named; nothing is assumed in its place
/// assert!(plan.dose.decision.is_none());
/// # Ok(())
/// # }
/// ```
pub fn plan(case: &Case) -> Plan {
    let today = staging::dose(case);
    let over = today.standing() == Some(Standing::Over);
    let by_display = today.latest().is_some_and(|visit| visit.reading.instrument == Instrument::Display);
    let here = now(case, &today);
    let excess = Excess::of(&here, over);
    let replace = match excess.filter(|_| !(over && by_display)) {
        Some(_) if case.is_garbled() || case.goals.water_unknown || is_untold(case) => {
            Err(Unknown::Needs(Needs::NONE))
        }
        Some(excess) => replace::replace(&here, excess, today.decision.as_ref().and_then(|d| d.dilution)),
        None => Err(Unknown::NotAsked),
    };
    let water_first = !over && excess.is_some();
    let read = rules::Read::of(case, &today);
    // The salt is counted for the water that it goes into.
    let salted = if case.goals.water_unknown && !over {
        None
    } else if water_first {
        after(&here, &replace)
    } else {
        Some(*case)
    };
    let dose = match salted {
        Some(salted) if water_first => staging::dose(&salted),
        Some(_) => today,
        None => Dose::default(),
    };
    let tested = tested(case, &dose);
    let treatment = treat::treat(&tested, due_rise(&tested, &dose).unwrap_or(Salinity::NONE), &replace);
    let balance = balance::balance(&tested, if water_first { Due::Nothing } else { due(&tested, &dose) });
    let gates = rules::gates(case, &read, &balance, &treatment);
    let mut needs = dose.needs;
    for unknown in [balance.err(), replace.err(), treatment.err()] {
        if let Some(Unknown::Needs(more)) = unknown {
            needs = needs.and(more);
        }
    }
    if let Ok(known) = &replace {
        needs = needs.and(known.needs);
    }
    let go = rules::go(case, &dose, &gates);
    let power = rules::power(case, &gates);
    let earliest = rules::earliest(case, &gates, &treatment);
    let schedule = schedule::schedule(case, &dose);
    let running = AtWork {
        setting: running::setting(&here),
        climb: case.band.and_then(|band| running::climb(&tested, band.target)),
        ahead: running::ahead(&here),
    };
    let counted_from = salted.filter(|_| water_first).and_then(|case| case.read());
    Plan {
        counted_from,
        dose,
        balance,
        excess,
        replace,
        treatment,
        gates,
        go,
        power,
        earliest,
        needs,
        schedule,
        running,
    }
}

/// The case with the salt that is in its water now: the reading, and once salt went in the estimate.
fn now(case: &Case, dose: &Dose) -> Case {
    let known = dose.decision.as_ref().and_then(|decision| decision.known);
    let told = known.filter(|_| {
        dose.standing() == Some(Standing::Over) || dose.course.is_some_and(|c| c.put_in > Mass::NONE)
    });
    let salt = told.and_then(|known| Salinity::from_mg_per_l(known.salt.mean).ok());
    // Shares of a pool are shares of the one that the doses have found.
    let found = told.filter(|_| dose.job.is_some() && dose.course.is_some_and(|c| c.put_in > Mass::NONE));
    let volume = found.and_then(|known| Volume::from_cubic_metres(known.volume.mean).ok());
    let typed = case.volume.filter(|_| !is_untold(case));
    Case { reading: salt.map_or(case.reading, Optional::Given), volume: volume.or(typed), ..*case }
}

/// Would doses tell the size of the pool and its salt, but for something at fault? Then what was typed is not what
/// counts.
fn is_untold(case: &Case) -> bool {
    case.log != Optional::LeftOut && (case.is_garbled() || case.uncounted)
}

/// The case once its water is replaced: a forecast, with one reading and none of the log; `None` while that
/// can't be told.
fn after(case: &Case, replace: &Result<Replace, Unknown>) -> Option<Case> {
    let replace = replace.as_ref().ok().filter(|r| r.at_once.is_ok())?;
    let reading = Optional::Given(replace.salt?);
    Some(Case { reading, again: Optional::LeftOut, log: Optional::LeftOut, ..*case })
}

/// The case with the reading that its other tests go with: where only the log has readings, the first of them.
fn tested(case: &Case, dose: &Dose) -> Case {
    let first = dose.course.as_ref().and_then(|course| course.visits[0]);
    match first.filter(|_| case.reading == Optional::LeftOut) {
        Some(Visit { reading: Reading { salt, instrument, .. }, .. }) => {
            Case { reading: Optional::Given(salt), instrument: Some(instrument), ..*case }
        }
        None => *case,
    }
}

/// What is to happen to the salt, from the reading that the other tests go with.
fn due(case: &Case, dose: &Dose) -> Due {
    let known = case.read().is_some() && dose.course.is_some() && !case.is_garbled();
    let put_in = dose.course.is_some_and(|course| course.put_in > Mass::NONE);
    match (dose.standing(), due_rise(case, dose)) {
        (None, _) if !known => Due::Unknown,
        (None, Some(rise)) => Due::Rise(rise),
        (Some(Standing::Short), Some(rise)) => Due::Rise(rise),
        (Some(Standing::Short), None) => Due::Unknown,
        (Some(_), Some(rise)) if put_in => Due::Rise(rise),
        _ => Due::Nothing,
    }
}

/// The rise to the target; where the reading stands above that, what this stage brings.
fn due_rise(case: &Case, dose: &Dose) -> Option<Salinity> {
    let to_target = case.band.zip(case.read()).and_then(|(band, reading)| band.target.excess_over(reading));
    let by_stage = || {
        let ([stage, _], job) = (dose.due()?, dose.job.as_ref()?);
        chem::salt::rise_from(stage, job.purity, job.volume).ok()
    };
    to_target.or_else(by_stage)
}
