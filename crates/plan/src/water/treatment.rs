//! What has to go into the water before the salt, in which order, and how much of it today?

use crate::input::answers::Needs;
use crate::input::answers::Unknown;
use crate::input::case::{Case, Goals, Products, TestedWater, Tests};
use crate::input::choices::{Input, Surface};
use crate::policy::{self, StepLimits};
use crate::water::balance::shown;
use crate::water::product::ProductAmount;
use crate::water::recipe::{bleach, solve};
use crate::water::replacement::{Replace, ReplacementInput, replaced_water};
use chem::treatment::recipe::{Recipe, dose_to_ph};
use chem::treatment::{Chemical, Dose};
use chem::{
    Alkalinity, CyanuricAcid, Hardness, OutOfRange, Ph, Salinity, SaturationIndex, State, Volume, Water,
    WaterError,
};

/// What goes in at a step, in the order in which they are done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Additive {
    /// Liquid chlorine.
    Chlorine,
    /// Sodium bicarbonate, for alkalinity.
    Bicarbonate,
    /// Acid against too much alkalinity, a dose a day, with aeration between.
    AcidAndAir,
    /// Cyanuric acid, which brings the pH down too, so it goes in before the trim.
    CyanuricAcid,
    /// Calcium chloride.
    Calcium,
    /// Acid, for pH.
    Acid,
    /// Soda ash, for pH.
    Carbonate,
}

/// All steps in their order.
pub const STEPS: [Additive; 7] = [
    Additive::Chlorine,
    Additive::Bicarbonate,
    Additive::AcidAndAir,
    Additive::CyanuricAcid,
    Additive::Calcium,
    Additive::Acid,
    Additive::Carbonate,
];

impl Additive {
    /// What its step keeps to.
    #[must_use]
    pub const fn limits(self) -> StepLimits {
        let limits = policy::TREATMENT;
        match self {
            Self::Chlorine => limits.chlorine,
            Self::Bicarbonate => limits.bicarbonate,
            Self::AcidAndAir => limits.acid_and_air,
            Self::CyanuricAcid => limits.cyanuric_acid,
            Self::Calcium => limits.calcium,
            Self::Acid => limits.acid,
            Self::Carbonate => limits.carbonate,
        }
    }
}

/// One step.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct TreatmentStep {
    /// What goes in.
    pub additive: Additive,
    /// All of it by the model.
    pub whole: ProductAmount,
    /// What to put in at one go, the rest after a test; nothing yet where the pH is too low for acid already, so
    /// that air comes first.
    pub first: Option<ProductAmount>,
    /// How many such doses all of it is, at least.
    pub doses: Option<u32>,
    /// The water when the first dose is in, before any air.
    pub begun: State,
    /// Its alkalinity.
    pub begun_alkalinity: Alkalinity,
    /// The water when all of it is in.
    pub then: State,
    /// Its alkalinity.
    pub alkalinity: Alkalinity,
    /// Its hardness.
    pub hardness: Hardness,
    /// Its cyanuric acid.
    pub cyanuric_acid: CyanuricAcid,
    /// Its index with the salt that is due in it, pH left free.
    pub salted: Option<SaturationIndex>,
    /// Hours to wait before the test, at least.
    pub wait: u32,
}

/// What the steps are worked out from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TreatmentInput {
    /// The pool's tests, and the reading that goes with them.
    pub water: TestedWater,
    /// Amount of water.
    pub volume: Option<Volume>,
    /// Where the tests are to go.
    pub goals: Goals,
    /// What stands on the shelf.
    pub products: Option<Products>,
    /// Something that the decision on the salt goes by is at fault, so nobody knows whether water goes first.
    pub invalid: bool,
}

impl TreatmentInput {
    /// Of a case as it stands.
    #[must_use]
    pub fn of(case: &Case) -> Self {
        Self {
            water: case.tested(),
            volume: case.volume,
            goals: case.goals,
            products: case.products,
            invalid: case.is_invalid(),
        }
    }
}

/// Which water the steps begin with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Start {
    /// The one tested.
    Today,
    /// The one that replacing leaves; `None` while it can't be told.
    Replaced(Option<Water>),
}

impl Start {
    /// After what was found out about replacing.
    #[must_use]
    pub fn after(input: &ReplacementInput, replace: &Result<Replace, Unknown>) -> Self {
        match replace {
            Err(Unknown::NotAsked) => Self::Today,
            Err(_) => Self::Replaced(None),
            Ok(replace) => Self::Replaced(replaced_water(input, replace).ok()),
        }
    }
}

/// On which side of its band a figure stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Position {
    /// Below it.
    Below,
    /// In it.
    Within,
    /// Above it.
    Above,
}

/// The water that the steps lead to, judged as today's is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ends {
    /// Its pH.
    pub ph: Position,
    /// Its index with the salt in, as far as there is one.
    pub balance: Option<Position>,
    /// That index, as shown.
    pub index: Option<f64>,
}

/// The steps, and what can't be done by them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Treatment {
    /// One place a step, empty where none is needed.
    pub steps: [Option<TreatmentStep>; STEPS.len()],
    /// Water has to be replaced before any of them.
    pub water_first: bool,
    /// Free chlorine stands above its goal: time brings it down, and nothing is put in.
    pub chlorine_over: bool,
    /// No step leads to the goals for pH and alkalinity: they ask for less carbon dioxide than air keeps up.
    pub below_air: bool,
}

impl Treatment {
    /// The last step: the water that all of them lead to.
    #[must_use]
    pub fn end(&self) -> Option<&TreatmentStep> {
        self.steps.iter().flatten().last()
    }

    /// How the water that the steps lead to would be judged.
    #[must_use]
    pub fn ends(&self, surface: Option<Surface>) -> Option<Ends> {
        let end = self.end()?;
        let [low, high] = policy::PH.pass;
        let ph = match shown(end.then.ph.units()) {
            ph if ph < low => Position::Below,
            ph if ph > high => Position::Above,
            _ => Position::Within,
        };
        let index = end.salted.or(end.then.index).map(|index| shown(index.log10()));
        let balance = index.map(|index| match index {
            index if index < -policy::INDEX_PASS && !surface.is_some_and(Surface::is_shell) => {
                Position::Below
            }
            index if index > policy::INDEX_PASS => Position::Above,
            _ => Position::Within,
        });
        Some(Ends { ph, balance, index })
    }

    /// Has anything to be done before the salt?
    #[must_use]
    pub fn is_due(&self) -> bool {
        self.water_first || self.below_air || self.chlorine_over || self.steps.iter().any(Option::is_some)
    }
}

/// The treatment of a water whose salt is to rise by `rise`, beginning with `start`.
///
/// With a goal for alkalinity and one for pH the two are solved together, so that both are met; with one
/// of them the other is left free. Where water has to be replaced first and the fill water is not fully
/// known, no step is told: it would be for another water. Errors: [`Unknown::Needs`] what is missing,
/// [`Unknown::NotAsked`] without a goal, [`Unknown::Chemistry`].
///
/// ```
/// use saltwright_plan::Unknown;
/// use saltwright_plan::water::treatment::{Start, TreatmentInput, treat};
/// let nothing = treat(&TreatmentInput::default(), chem::Salinity::NONE, Start::Today);
/// assert!(matches!(nothing, Err(Unknown::NotAsked)));
/// ```
pub fn treat(input: &TreatmentInput, rise: Salinity, start: Start) -> Result<Treatment, Unknown> {
    let TreatmentInput { water, goals, .. } = *input;
    if !goals.are_any() && !goals.invalid {
        return Err(Unknown::NotAsked);
    }
    if goals.invalid || input.invalid {
        return Err(Unknown::Needs(Needs::NONE));
    }
    let Tests { temperature, ph, alkalinity, hardness, cyanuric_acid, chlorine } = water.tests;
    let chlorine = chlorine.valid();
    let needs = Needs::of(&[
        (Input::Volume, input.volume.is_some()),
        (Input::Reading, water.reading.is_some()),
        (Input::Instrument, water.instrument.is_some()),
        (Input::Temperature, temperature.is_some()),
        (Input::Ph, ph.is_some()),
        (Input::Alkalinity, alkalinity.is_some()),
        (Input::Hardness, hardness.is_some()),
        (Input::CyanuricAcid, cyanuric_acid.is_some()),
        (Input::Chlorine, chlorine.is_some() || goals.chlorine.is_none()),
        (Input::Products, input.products.is_some()),
    ]);
    let (true, Some(volume), Some(sample), Some(products)) =
        (needs.is_none(), input.volume, water.sample(), input.products)
    else {
        return Err(Unknown::Needs(needs));
    };
    let today = sample.water().map_err(Unknown::Chemistry)?;
    let water_first = start != Start::Today;
    let chlorine_over = chlorine
        .zip(goals.chlorine)
        .is_some_and(|(now, goal)| now.mg_per_l() - goal.mg_per_l() > policy::CHLORINE_FAR_OVER);
    let mut treatment =
        Treatment { steps: [None; STEPS.len()], water_first, chlorine_over, below_air: false };
    let water = match start {
        Start::Today => today,
        Start::Replaced(Some(water)) => water,
        Start::Replaced(None) => return Ok(treatment),
    };
    let bleach = chlorine.zip(goals.chlorine).map_or(Dose::default(), |(now, goal)| bleach(now, goal));
    // By the time the others go in the chlorine is used up, and has left its salt behind.
    let settled = water.treated(Chemical::LiquidChlorine, bleach).spent();
    let recipe = match solve(&settled, &goals) {
        Ok(recipe) => recipe,
        Err(chem::RecipeError::BelowAir) => return Ok(Treatment { below_air: true, ..treatment }),
        Err(chem::RecipeError::Chemistry(fault)) => return Err(Unknown::Chemistry(fault)),
        // What only other water brings down is not asked for here, and within the goals' bounds a dose leads
        // to every pH.
        Err(_) => return Err(Unknown::Chemistry(WaterError::NoSolution)),
    };
    let mut here = water;
    for (place, additive) in treatment.steps.iter_mut().zip(STEPS) {
        *place = step(additive, &recipe, bleach, &mut here, volume, &products, rise)
            .map_err(Unknown::Chemistry)?;
    }
    Ok(treatment)
}

fn step(
    additive: Additive,
    recipe: &Recipe,
    bleach: Dose,
    here: &mut Water,
    volume: Volume,
    products: &Products,
    rise: Salinity,
) -> Result<Option<TreatmentStep>, WaterError> {
    let aerated = recipe.stripped.mmol_per_l() > 0.0;
    let acid = products.acid.chemical();
    let (chemical, dose) = match additive {
        Additive::Chlorine => (Chemical::LiquidChlorine, bleach),
        Additive::Bicarbonate => (Chemical::SodiumBicarbonate, recipe.bicarbonate),
        Additive::AcidAndAir if aerated => (acid, recipe.acid),
        Additive::CyanuricAcid => (Chemical::CyanuricAcid, recipe.cyanuric),
        Additive::Calcium => (Chemical::CalciumChloride, recipe.calcium),
        Additive::Acid if !aerated => (acid, recipe.acid),
        Additive::Carbonate => (Chemical::SodiumCarbonate, recipe.carbonate),
        Additive::AcidAndAir | Additive::Acid => return Ok(None),
    };
    if dose.mmol_per_l() < policy::LEAST_DOSE {
        return Ok(None);
    }
    let first = first_dose(additive, here, chemical, dose);
    let begun = here.treated(chemical, first.unwrap_or_default());
    let mut then = here.treated(chemical, dose);
    if additive == Additive::AcidAndAir {
        then = then.stripped(recipe.stripped);
    }
    *here = then.spent();
    let powder = |dose: Dose, purity| ProductAmount::Powder(dose.of_powder(chemical, volume, purity));
    let amount = |dose: Dose| {
        Ok::<_, OutOfRange>(match additive {
            Additive::Chlorine => ProductAmount::Liquid(dose.of_bleach(volume, products.bleach)?),
            Additive::AcidAndAir | Additive::Acid => products.acid.amount(dose, volume)?,
            Additive::Calcium => powder(dose, products.calcium),
            Additive::Bicarbonate | Additive::CyanuricAcid | Additive::Carbonate => {
                powder(dose, products.powder)
            }
        })
    };
    Ok(Some(TreatmentStep {
        additive,
        whole: amount(dose)?,
        first: first.map(amount).transpose()?,
        doses: first.map(|first| libm::ceil(dose.mmol_per_l() / first.mmol_per_l() - 1e-9) as u32),
        begun: begun.state()?,
        begun_alkalinity: begun.alkalinity()?,
        then: then.state()?,
        alkalinity: then.alkalinity()?,
        hardness: then.hardness()?,
        cyanuric_acid: then.cyanuric_acid()?,
        salted: then.salted(rise).state().ok().and_then(|state| state.index),
        wait: additive.limits().wait,
    }))
}

/// What goes in at one go: never more than the step's largest single dose; of what moves the pH, three
/// quarters of the model, and never past pH 7.2 by the model: no acid at all where it stands there already.
fn first_dose(additive: Additive, here: &Water, chemical: Chemical, whole: Dose) -> Option<Dose> {
    let largest = additive.limits().most_at_once;
    let all = whole.mmol_per_l();
    let first = match additive {
        Additive::Acid | Additive::AcidAndAir => {
            let to_floor = dose_to_ph(here, chemical, Ph::from_units(policy::PH_FLOOR).ok()?).ok()?;
            (policy::OF_THE_MODEL * all).min(to_floor.mmol_per_l())
        }
        Additive::Carbonate => policy::OF_THE_MODEL * all,
        Additive::Chlorine | Additive::Bicarbonate | Additive::CyanuricAcid | Additive::Calcium => all,
    };
    Dose::from_mmol_per_l(first.min(largest)).ok().filter(|first| first.mmol_per_l() >= policy::LEAST_DOSE)
}
