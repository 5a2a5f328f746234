//! Judgement: from one case to what to buy, what to add, what to leave alone.
//!
//! Everything is a pure function of the [`Case`]: no clock, no files, no chance, and no text for
//! people. What is missing is named ([`Needs`]), not guessed, and never counts as passed.
//!
//! | Question | Room |
//! |---|---|
//! | What is known about the pool? | [`case`] |
//! | Which numbers are choices, and whose? | [`policy`] |
//! | Where does the reading stand against the band? | [`band`] |
//! | How many bags to buy, how many now, how many later? | [`staging`] |
//! | What will the salt do to the saturation index? | [`balance`] |
//! | What has to go in before the salt? | [`treat`] |
//! | What if there is too much of what only other water takes out? | [`replace`] |
//! | May it go in? | [`rules`] |
#![no_std]

pub mod balance;
pub mod band;
pub mod case;
pub mod policy;
pub mod replace;
pub mod rules;
pub mod staging;
pub mod treat;

pub use balance::Balance;
use balance::Due;
pub use band::{Band, BandFault, Standing};
pub use case::*;
use chem::Salinity;
pub use replace::{Excess, Replace};
pub use rules::{Gate, Gates, Go, Verdict};
pub use staging::Dose;
pub use treat::Treatment;

/// Why a result is not there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unknown {
    /// These answers are missing.
    Needs(Needs),
    /// The question does not arise.
    NotAsked,
    /// The chemistry has no answer, and says why.
    Chemistry(chem::Fault),
}

/// Everything that follows from a [`Case`].
#[derive(Clone, Debug)]
pub struct Plan {
    /// The reading against the band; `None` while either is unknown.
    pub standing: Option<Standing>,
    /// Salt to buy and to add.
    pub dose: Dose,
    /// The saturation index, today and after the salt.
    pub balance: Result<Balance, Unknown>,
    /// The reading expected once water is replaced for the sake of another test: the salt is counted from
    /// there.
    pub counted_from: Option<Salinity>,
    /// Water to replace; asked only when there is too much salt by something better than the
    /// generator's display, or more hardness or cyanuric acid than the goal.
    pub replace: Result<Replace, Unknown>,
    /// What has to go in before the salt; asked only when there is a goal.
    pub treatment: Result<Treatment, Unknown>,
    /// One verdict a gate.
    pub gates: Gates,
    /// May the salt go in?
    pub go: Go,
    /// Every answer missing from any of these.
    pub needs: Needs,
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
/// assert!(plan.dose.staging.is_none());
/// # Ok(())
/// # }
/// ```
pub fn plan(case: &Case) -> Plan {
    let today = case.band.zip(case.read()).map(|(band, reading)| band.standing(reading));
    let over = today == Some(Standing::Over);
    let replace = match Excess::of(case, over && case.instrument != Some(Instrument::Display)) {
        Some(excess) => replace::replace(case, excess),
        None => Err(Unknown::NotAsked),
    };
    let water_first = !over && !matches!(replace, Err(Unknown::NotAsked));
    // The salt is counted for the water that it goes into.
    let salted = if water_first { after(case, &replace) } else { Some(*case) };
    let reading = salted.and_then(|case| case.read());
    let standing = case.band.zip(reading).map(|(band, reading)| band.standing(reading));
    let dose = salted.map_or(Dose::default(), |case| staging::dose(&case, standing));
    let due = match (standing, dose.rise) {
        (None, _) => Due::Unknown,
        (Some(Standing::Short), Some(rise)) => Due::Rise(rise),
        (Some(_), _) => Due::Nothing,
    };
    let rise = if let Due::Rise(rise) = due { rise } else { Salinity::NONE };
    let treatment = treat::treat(case, rise, &replace);
    let balance = balance::balance(case, if water_first { Due::Nothing } else { due });
    let gates = rules::gates(case, &balance, &treatment);
    let mut needs = dose.needs;
    for unknown in [balance.err(), replace.err(), treatment.err()] {
        if let Some(Unknown::Needs(more)) = unknown {
            needs = needs.and(more);
        }
    }
    if let Ok(known) = &replace {
        needs = needs.and(known.needs);
    }
    let go = rules::go(standing, dose.staging.is_some(), &gates);
    let counted_from = reading.filter(|_| water_first);
    Plan { standing, counted_from, dose, balance, replace, treatment, gates, go, needs }
}

/// The case once its water is replaced; `None` while that can't be told.
fn after(case: &Case, replace: &Result<Replace, Unknown>) -> Option<Case> {
    let replace = replace.as_ref().ok().filter(|r| r.at_once.is_ok())?;
    Some(Case { reading: Optional::Given(replace.salt?), ..*case })
}
