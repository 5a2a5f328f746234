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
//! | What if there is too much salt? | [`replace`] |
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
pub use replace::Replace;
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
    /// Water to replace; asked only when there is too much salt by something better than the
    /// generator's display.
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
    let standing = case.band.zip(case.read()).map(|(band, reading)| band.standing(reading));
    let dose = staging::dose(case, standing);
    let due = match (standing, dose.rise) {
        (None, _) => Due::Unknown,
        (Some(Standing::Short), Some(rise)) => Due::Rise(rise),
        (Some(_), _) => Due::Nothing,
    };
    let balance = balance::balance(case, due);
    let replace = match (standing, case.band) {
        (Some(Standing::Over), Some(band)) if case.instrument != Some(Instrument::Display) => {
            replace::replace(case, &band)
        }
        _ => Err(Unknown::NotAsked),
    };
    let treatment = treat::treat(case, if let Due::Rise(rise) = due { rise } else { Salinity::NONE });
    let gates = rules::gates(case, &balance);
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
    Plan { standing, dose, balance, replace, treatment, gates, go, needs }
}
