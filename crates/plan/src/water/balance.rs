//! What will the salt do to the saturation index?

use crate::input::answers::Needs;
use crate::input::answers::Unknown;
use crate::input::case::TestedWater;
use crate::input::choices::Input;
use crate::policy;
use chem::salt::{SaltTest, other_ions};
use chem::{CarbonDioxide, Salinity, Sample, SaturationIndex, Solids, State};
use chem::{ChlorineSpecies, chlorine, langelier};

/// The water today, and after the salt.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Balance {
    /// What the salt test responded to.
    pub salt_test: SaltTest,
    /// Sodium chloride behind the reading.
    pub salt: Salinity,
    /// The water as tested.
    pub today: State,
    /// What the table forms say of it.
    pub forms: Forms,
    /// The same water left to the air for long.
    pub aired: Option<State>,
    /// Its free chlorine, shared out; once there is a test of it.
    pub chlorine: Option<ChlorineSpecies>,
    /// The reading is lower than its own other tests account for: they can't all be right.
    pub belied: bool,
    /// The water after the salt.
    pub after: After,
}

/// The index by the two usual table forms, for comparison.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Forms {
    /// Standard Methods 2330B.
    pub standard: Option<SaturationIndex>,
    /// The closed form of factor tables.
    pub closed: Option<SaturationIndex>,
}

impl Forms {
    /// Of a sample at the pH and carbonate alkalinity of `state`; solids from the salt reading, mg/L.
    fn of(sample: &Sample, state: &State, reading: f64) -> Self {
        let solids = Solids::from_mg_per_l(reading + policy::OTHER_SOLIDS).ok();
        let form = |f: langelier::TableForm| {
            let told = f(sample.temperature, sample.ph, sample.hardness, state.carbonate_alkalinity, solids?);
            told.ok().flatten()
        };
        Self { standard: form(langelier::standard_methods), closed: form(langelier::closed_form) }
    }
}

/// What is to happen to the salt.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Due {
    /// It is not known.
    Unknown,
    /// Nothing.
    Nothing,
    /// It is to rise.
    Rise(Salinity),
}

/// The water after what is due.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[allow(clippy::large_enum_variant)] // One a plan, and no heap to put it on.
pub enum After {
    /// It is not known what is due, so nothing can be judged.
    Unknown,
    /// As it is today.
    Today,
    /// With salt in it.
    Salted(Result<Salted, chem::WaterError>),
}

/// The same water with the salt in it, counted in both ways.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Salted {
    /// Sodium chloride then.
    pub salt: Salinity,
    /// With the pH brought back to today's.
    pub same_ph: State,
    /// With the pH left to fall by itself.
    pub free_ph: State,
    /// What the table forms say of it at the same pH.
    pub forms: Forms,
}

impl Balance {
    /// The index to be judged: after the salt the one farther from zero, else today's. `None` while
    /// either is not known, and without calcium.
    #[must_use]
    pub fn judged(&self) -> Option<SaturationIndex> {
        match self.after {
            After::Unknown | After::Salted(Err(_)) => None,
            After::Today => self.today.index,
            After::Salted(Ok(salted)) => {
                let (same, free) = (salted.same_ph.index?, salted.free_ph.index?);
                Some(if same.log10().abs() > free.log10().abs() { same } else { free })
            }
        }
    }
}

/// The balance of a water, and what becomes of it when what is `due` is done.
///
/// Errors: [`Unknown::Needs`] what is missing, [`Unknown::Chemistry`] why today's water has no answer.
///
/// ```
/// use saltwright_plan::water::balance::{Due, balance};
/// use saltwright_plan::{Input, TestedWater, Unknown};
/// let Err(Unknown::Needs(needs)) = balance(&TestedWater::default(), Due::Nothing) else { panic!() };
/// assert!(needs.contains(Input::Ph)); // never taken for granted
/// ```
pub fn balance(water: &TestedWater, due: Due) -> Result<Balance, Unknown> {
    let w = &water.tests;
    let needs = Needs::of(&[
        (Input::Reading, water.reading.is_some()),
        (Input::Instrument, water.instrument.is_some()),
        (Input::Temperature, w.temperature.is_some()),
        (Input::Ph, w.ph.is_some()),
        (Input::Alkalinity, w.alkalinity.is_some()),
        (Input::Hardness, w.hardness.is_some()),
        (Input::CyanuricAcid, w.cyanuric_acid.is_some()),
    ]);
    let (Some(sample), Some(reading), Some(instrument)) = (water.sample(), water.reading, water.instrument)
    else {
        return Err(Unknown::Needs(needs));
    };
    let salt_test = instrument.salt_test();
    let others = other_ions(salt_test, sample.alkalinity, sample.hardness);
    let belied =
        salt_test == SaltTest::Conductivity && others.mg_per_l() > reading.mg_per_l() + policy::BELIED_BY;
    let today = sample.state().map_err(Unknown::Chemistry)?;
    let after = match due {
        Due::Unknown => After::Unknown,
        Due::Nothing => After::Today,
        Due::Rise(rise) => After::Salted(salted(sample, reading, rise)),
    };
    let aired = sample.water().and_then(|water| water.in_air(CarbonDioxide::OPEN_AIR)).ok();
    let chlorine = w.chlorine.valid().and_then(|free| {
        chlorine::species(free, sample.cyanuric_acid, sample.ph, sample.temperature, today.strength).ok()
    });
    let forms = Forms::of(&sample, &today, reading.mg_per_l());
    Ok(Balance { salt_test, salt: sample.salt, today, forms, aired, chlorine, belied, after })
}

fn salted(sample: Sample, reading: Salinity, rise: Salinity) -> Result<Salted, chem::WaterError> {
    let salt = sample.salt.checked_add(rise)?;
    let same_ph = Sample { salt, ..sample }.state()?;
    let free_ph = sample.water()?.salted(rise).state()?;
    let forms = Forms::of(&sample, &same_ph, reading.mg_per_l() + rise.mg_per_l());
    Ok(Salted { salt, same_ph, free_ph, forms })
}

/// An index or a pH as it is shown, so that the digits and the verdict can't disagree.
///
/// ```
/// assert_eq!(saltwright_plan::water::balance::shown(-0.3049), -0.3);
/// ```
#[must_use]
pub fn shown(index: f64) -> f64 {
    libm::round(index * 100.0) / 100.0
}
