//! What will the salt do to the saturation index?

use crate::Unknown;
use crate::case::{Case, Input, Instrument, Needs};
use chem::salt::{Responds, sodium_chloride_behind};
use chem::{Salinity, SaturationIndex, State};

/// The water today, and after the salt.
#[derive(Clone, Copy, Debug)]
pub struct Balance {
    /// What the salt test responded to.
    pub responds: Responds,
    /// Sodium chloride behind the reading.
    pub salt: Salinity,
    /// The water as tested.
    pub today: State,
    /// The water after the salt; `None` when none is due.
    pub salted: Option<Salted>,
}

/// The same water with the salt in it, counted in both ways.
#[derive(Clone, Copy, Debug)]
pub struct Salted {
    /// Sodium chloride then.
    pub salt: Salinity,
    /// With the pH brought back to today's.
    pub same_ph: State,
    /// With the pH left to fall by itself.
    pub free_ph: State,
}

impl Balance {
    /// The index to be judged: after the salt the one farther from zero, else today's. `None`
    /// without calcium.
    pub fn judged(&self) -> Option<SaturationIndex> {
        let Some(salted) = self.salted else {
            return self.today.index;
        };
        let (same, free) = (salted.same_ph.index?, salted.free_ph.index?);
        Some(if same.log10().abs() > free.log10().abs() { same } else { free })
    }
}

/// The balance of a case whose salt is to rise by `rise`.
pub fn balance(case: &Case, rise: Option<Salinity>) -> Result<Balance, Unknown> {
    let w = &case.water;
    let needs = Needs::of(&[
        (Input::Reading, case.reading.is_some()),
        (Input::Instrument, case.instrument.is_some()),
        (Input::Heat, w.heat.is_some()),
        (Input::Ph, w.ph.is_some()),
        (Input::Alkalinity, w.alkalinity.is_some()),
        (Input::Hardness, w.hardness.is_some()),
        (Input::Cyanurate, w.cyanurate.is_some()),
    ]);
    let responds = case.instrument.map(Instrument::responds);
    let (Some(reading), Some(responds), Some(ta), Some(ch)) =
        (case.reading, responds, w.alkalinity, w.hardness)
    else {
        return Err(Unknown::Needs(needs));
    };
    let salt = sodium_chloride_behind(reading, responds, ta, ch);
    let Some(sample) = w.sample(salt) else {
        return Err(Unknown::Needs(needs));
    };
    let today = sample.state().map_err(Unknown::Chemistry)?;
    let salted = match rise {
        None => None,
        Some(rise) => {
            let salt = salt.raised_by(rise);
            let same = chem::Sample { salt, ..sample }.state();
            let free = sample.water().and_then(|water| water.salted(rise).state());
            Some(Salted {
                salt,
                same_ph: same.map_err(Unknown::Chemistry)?,
                free_ph: free.map_err(Unknown::Chemistry)?,
            })
        }
    };
    Ok(Balance { responds, salt, today, salted })
}
