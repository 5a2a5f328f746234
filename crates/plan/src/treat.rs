//! What has to go into the water before the salt, in which order, and how much of it today?

use crate::Unknown;
use crate::case::{Case, Goals, Input, Needs, Products, Tests};
use crate::policy;
use chem::recipe::{self, Goal, Recipe, dose_to_ph};
use chem::treatment::{Chemical, Dose};
use chem::{Alkalinity, Mass, Ph, Salinity, Sample, SaturationIndex, State, Volume, Water};

/// A step, in the order in which they are done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Sodium bicarbonate, for alkalinity.
    Bicarbonate,
    /// Acid against too much alkalinity, a dose a day, with aeration between.
    AcidAndAir,
    /// Cyanuric acid, which brings the pH down too, so it goes in before the trim.
    Cyanuric,
    /// Calcium chloride.
    Calcium,
    /// Acid, for pH.
    Acid,
    /// Soda ash, for pH.
    Carbonate,
}

/// All steps in their order.
pub const STEPS: [What; 6] =
    [What::Bicarbonate, What::AcidAndAir, What::Cyanuric, What::Calcium, What::Acid, What::Carbonate];

/// How much of a product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// Weighed.
    Powder(Mass),
    /// Poured.
    Liquid(Volume),
}

/// One step.
#[derive(Clone, Copy, Debug)]
pub struct Step {
    /// What goes in.
    pub what: What,
    /// All of it by the model.
    pub whole: Amount,
    /// What to put in at one go; the rest after a test.
    pub first: Amount,
    /// The water when all of it is in.
    pub then: State,
    /// Its alkalinity.
    pub alkalinity: Alkalinity,
    /// Its index with the salt that is due in it, pH left free.
    pub salted: Option<SaturationIndex>,
    /// Hours to wait before the test: at least, at most.
    pub wait: [u32; 2],
}

/// The steps, and what can't be done by them.
#[derive(Clone, Copy, Debug)]
pub struct Treatment {
    /// One place a step, empty where none is needed.
    pub steps: [Option<Step>; STEPS.len()],
    /// Hardness is above its goal: only other water brings it down.
    pub hardness_over: bool,
    /// Cyanuric acid is above its goal: only other water brings it down.
    pub cyanurate_over: bool,
    /// The goal's pH asks for less carbon dioxide than air keeps up.
    pub below_air: bool,
}

/// The treatment of a case whose salt is to rise by `rise`.
///
/// With a goal for alkalinity and one for pH the two are solved together, so that both are met; with one
/// of them the other is left free. Errors: [`Unknown::Needs`] what is missing, [`Unknown::NotAsked`]
/// without a goal, [`Unknown::Chemistry`].
///
/// ```
/// use plan::treat::treat;
/// use plan::{Case, Goals, Unknown};
/// let case = Case { goals: Some(Goals::default()), ..Case::default() };
/// let nothing = treat(&case, chem::Salinity::NONE);
/// assert!(matches!(nothing, Err(Unknown::NotAsked)));
/// ```
pub fn treat(case: &Case, rise: Salinity) -> Result<Treatment, Unknown> {
    let Some(goals) = case.goals else { return Err(Unknown::NotAsked) };
    if goals.ph.is_none()
        && goals.alkalinity.is_none()
        && goals.hardness.is_none()
        && goals.cyanurate.is_none()
    {
        return Err(Unknown::NotAsked);
    }
    let Tests { heat, ph, alkalinity, hardness, cyanurate } = case.water;
    let needs = Needs::of(&[
        (Input::Volume, case.volume.is_some()),
        (Input::Reading, case.read().is_some()),
        (Input::Instrument, case.instrument.is_some()),
        (Input::Heat, heat.is_some()),
        (Input::Ph, ph.is_some()),
        (Input::Alkalinity, alkalinity.is_some()),
        (Input::Hardness, hardness.is_some()),
        (Input::Cyanurate, cyanurate.is_some()),
        (Input::Products, case.products.is_some()),
    ]);
    let (Some(volume), Some(sample), Some(products)) = (case.volume, case.sample(), case.products) else {
        return Err(Unknown::Needs(needs));
    };
    let water = sample.water().map_err(Unknown::Chemistry)?;
    let over = |wanted: Option<f64>, here: f64| wanted.is_some_and(|wanted| wanted < here);
    let hardness_over = over(goals.hardness.map(|x| x.mg_per_l()), sample.hardness.mg_per_l());
    let cyanurate_over = over(goals.cyanurate.map(|x| x.mg_per_l()), sample.cyanurate.mg_per_l());
    let goal = Goals {
        hardness: goals.hardness.filter(|_| !hardness_over),
        cyanurate: goals.cyanurate.filter(|_| !cyanurate_over),
        ..goals
    };
    let (recipe, below_air) = match solve(&water, &sample, &goal) {
        Ok(recipe) => (recipe, false),
        Err(recipe::Fault::BelowAir) => (Recipe::default(), true),
        Err(recipe::Fault::Chemistry(fault)) => return Err(Unknown::Chemistry(fault)),
        Err(_) => (Recipe::default(), false),
    };
    let mut here = water;
    let mut steps = [None; STEPS.len()];
    for (place, what) in steps.iter_mut().zip(STEPS) {
        *place = step(what, &recipe, &mut here, volume, &products, rise);
    }
    Ok(Treatment { steps, hardness_over, cyanurate_over, below_air })
}

/// The recipe for what is asked; what is not asked for is left as it comes.
fn solve(water: &Water, sample: &Sample, goals: &Goals) -> Result<Recipe, recipe::Fault> {
    let hardness = goals.hardness.unwrap_or(sample.hardness);
    let cyanurate = goals.cyanurate.unwrap_or(sample.cyanurate);
    // Calcium and cyanuric acid, each of which has one chemical, and the pH that they leave.
    let plain = recipe::minerals(water, hardness, cyanurate)?;
    let bare = plain.applied(*water);
    match (goals.alkalinity, goals.ph) {
        (None, None) => Ok(plain),
        (None, Some(ph)) => trim(&bare, ph, plain),
        (Some(alkalinity), ph) => {
            let missing = alkalinity.mg_per_l() - bare.alkalinity().mg_per_l();
            let Some(ph) = ph else {
                let dose = recipe::alkalinity_by_bicarbonate(missing);
                return match dose {
                    Some(bicarbonate) => Ok(Recipe { bicarbonate, ..plain }),
                    // Down: acid, with the pH brought back to where it was by aeration.
                    None => recipe::recipe(water, &Goal { ph: sample.ph, alkalinity, hardness, cyanurate }),
                };
            };
            recipe::recipe(water, &Goal { ph, alkalinity, hardness, cyanurate })
        }
    }
}

/// Acid down or soda ash up to a pH, alkalinity left to follow.
fn trim(water: &Water, ph: Ph, plain: Recipe) -> Result<Recipe, recipe::Fault> {
    let here = water.state().map_err(recipe::Fault::Chemistry)?.ph;
    if here > ph {
        Ok(Recipe { acid: dose_to_ph(water, Chemical::HydrochloricAcid, ph)?, ..plain })
    } else {
        Ok(Recipe { carbonate: dose_to_ph(water, Chemical::SodiumCarbonate, ph)?, ..plain })
    }
}

fn step(
    what: What,
    recipe: &Recipe,
    here: &mut Water,
    volume: Volume,
    products: &Products,
    rise: Salinity,
) -> Option<Step> {
    let aerated = recipe.stripped.mmol_per_l() > 0.0;
    let (chemical, dose) = match what {
        What::Bicarbonate => (Chemical::SodiumBicarbonate, recipe.bicarbonate),
        What::AcidAndAir if aerated => (Chemical::HydrochloricAcid, recipe.acid),
        What::Cyanuric => (Chemical::CyanuricAcid, recipe.cyanuric),
        What::Calcium => (Chemical::CalciumChloride, recipe.calcium),
        What::Acid if !aerated => (Chemical::HydrochloricAcid, recipe.acid),
        What::Carbonate => (Chemical::SodiumCarbonate, recipe.carbonate),
        What::AcidAndAir | What::Acid => return None,
    };
    if dose.mmol_per_l() < policy::LEAST_DOSE {
        return None;
    }
    let first = first_dose(what, here, chemical, dose);
    let mut then = here.treated(chemical, dose);
    if what == What::AcidAndAir {
        then = then.stripped(recipe.stripped);
    }
    *here = then;
    let amount = |dose: Dose| match what {
        What::AcidAndAir | What::Acid => Amount::Liquid(dose.of_acid(volume, products.acid)),
        What::Calcium => Amount::Powder(dose.of_powder(chemical, volume, products.calcium)),
        _ => Amount::Powder(dose.of_powder(chemical, volume, products.powder)),
    };
    Some(Step {
        what,
        whole: amount(dose),
        first: amount(first),
        then: then.state().ok()?,
        alkalinity: then.alkalinity(),
        salted: then.salted(rise).state().ok().and_then(|state| state.index),
        wait: policy::WAIT[what as usize],
    })
}

/// What goes in at one go: never more than the step's largest single dose; of what moves the pH, three
/// quarters of the model, and never past pH 7.2 by the model.
fn first_dose(what: What, here: &Water, chemical: Chemical, whole: Dose) -> Dose {
    let largest = policy::LARGEST_DOSE[what as usize];
    let all = whole.mmol_per_l();
    let first = match what {
        What::Acid | What::AcidAndAir => {
            let floor = Ph::from_units(policy::PH_FLOOR).ok();
            let to_floor = floor.and_then(|ph| dose_to_ph(here, chemical, ph).ok());
            (policy::OF_THE_MODEL * all).min(to_floor.map_or(0.0, Dose::mmol_per_l))
        }
        What::Carbonate => policy::OF_THE_MODEL * all,
        What::Bicarbonate | What::Cyanuric | What::Calcium => all,
    };
    Dose::from_mmol_per_l(first.min(largest)).unwrap_or(whole)
}
