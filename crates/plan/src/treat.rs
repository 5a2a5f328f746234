//! What has to go into the water before the salt, in which order, and how much of it today?

use crate::Unknown;
use crate::balance::shown;
use crate::case::{Acid, Case, Goals, Needs, Products, Tests};
use crate::choice::{Input, Surface};
use crate::policy;
use crate::replace::Replace;
use chem::treatment::recipe::{self, Goal, Recipe, dose_to_ph};
use chem::treatment::{Chemical, Dose};
use chem::{
    Alkalinity, Chlorine, CyanuricAcid, Hardness, Mass, Ph, Salinity, SaturationIndex, State, Volume, Water,
    WaterError,
};

/// A step, in the order in which they are done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Liquid chlorine.
    Chlorine,
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
pub const STEPS: [What; 7] = [
    What::Chlorine,
    What::Bicarbonate,
    What::AcidAndAir,
    What::Cyanuric,
    What::Calcium,
    What::Acid,
    What::Carbonate,
];

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
    /// What to put in at one go, the rest after a test; nothing yet where the pH is too low for acid already, so
    /// that air comes first.
    pub first: Option<Amount>,
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

/// On which side of its band a figure stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
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
    pub ph: Side,
    /// Its index with the salt in, as far as there is one.
    pub balance: Option<Side>,
    /// That index, as shown.
    pub index: Option<f64>,
}

/// The steps, and what can't be done by them.
#[derive(Clone, Copy, Debug)]
pub struct Treatment {
    /// One place a step, empty where none is needed.
    pub steps: [Option<Step>; STEPS.len()],
    /// Water has to be replaced before any of them.
    pub water_first: bool,
    /// Free chlorine stands above its goal: time brings it down, and nothing is put in.
    pub chlorine_over: bool,
    /// No step leads to the goals for pH and alkalinity: they ask for less carbon dioxide than air keeps up.
    pub below_air: bool,
}

impl Treatment {
    /// The last step: the water that all of them lead to.
    pub fn end(&self) -> Option<&Step> {
        self.steps.iter().flatten().last()
    }

    /// How the water that the steps lead to would be judged.
    pub fn ends(&self, surface: Option<Surface>) -> Option<Ends> {
        let end = self.end()?;
        let [low, high] = policy::PH_PASS;
        let ph = match shown(end.then.ph.units()) {
            ph if ph < low => Side::Below,
            ph if ph > high => Side::Above,
            _ => Side::Within,
        };
        let index = end.salted.or(end.then.index).map(|index| shown(index.log10()));
        let balance = index.map(|index| match index {
            index if index < -policy::INDEX_PASS && !surface.is_some_and(Surface::is_shell) => Side::Below,
            index if index > policy::INDEX_PASS => Side::Above,
            _ => Side::Within,
        });
        Some(Ends { ph, balance, index })
    }

    /// Has anything to be done before the salt?
    pub fn is_due(&self) -> bool {
        self.water_first || self.below_air || self.chlorine_over || self.steps.iter().any(Option::is_some)
    }
}

/// The treatment of a case whose salt is to rise by `rise`, once the water of `replace` is replaced.
///
/// With a goal for alkalinity and one for pH the two are solved together, so that both are met; with one
/// of them the other is left free. Where water has to be replaced first and the fill water is not fully
/// known, no step is told: it would be for another water. Errors: [`Unknown::Needs`] what is missing,
/// [`Unknown::NotAsked`] without a goal, [`Unknown::Chemistry`].
///
/// ```
/// use plan::treat::treat;
/// use plan::{Case, Unknown};
/// let nothing = treat(&Case::default(), chem::Salinity::NONE, &Err(Unknown::NotAsked));
/// assert!(matches!(nothing, Err(Unknown::NotAsked)));
/// ```
pub fn treat(case: &Case, rise: Salinity, replace: &Result<Replace, Unknown>) -> Result<Treatment, Unknown> {
    let goals = case.goals;
    if !goals.are_any() && !goals.garbled {
        return Err(Unknown::NotAsked);
    }
    if goals.garbled || case.is_garbled() {
        return Err(Unknown::Needs(Needs::NONE));
    }
    let Tests { heat, ph, alkalinity, hardness, cyanuric_acid, chlorine } = case.water;
    let chlorine = chlorine.given();
    let needs = Needs::of(&[
        (Input::Volume, case.volume.is_some()),
        (Input::Reading, case.read().is_some()),
        (Input::Instrument, case.instrument.is_some()),
        (Input::Heat, heat.is_some()),
        (Input::Ph, ph.is_some()),
        (Input::Alkalinity, alkalinity.is_some()),
        (Input::Hardness, hardness.is_some()),
        (Input::CyanuricAcid, cyanuric_acid.is_some()),
        (Input::Chlorine, chlorine.is_some() || goals.chlorine.is_none()),
        (Input::Products, case.products.is_some()),
    ]);
    let (true, Some(volume), Some(sample), Some(products)) =
        (needs.is_none(), case.volume, case.sample(), case.products)
    else {
        return Err(Unknown::Needs(needs));
    };
    let today = sample.water().map_err(Unknown::Chemistry)?;
    let water_first = !matches!(replace, Err(Unknown::NotAsked));
    let chlorine_over = chlorine
        .zip(goals.chlorine)
        .is_some_and(|(now, goal)| now.mg_per_l() - goal.mg_per_l() > policy::CHLORINE_FAR_OVER);
    let mut treatment =
        Treatment { steps: [None; STEPS.len()], water_first, chlorine_over, below_air: false };
    let water = match replace {
        Err(Unknown::NotAsked) => today,
        Ok(Replace { mixed: Ok(mixed), .. }) => *mixed,
        _ => return Ok(treatment),
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
    for (place, what) in treatment.steps.iter_mut().zip(STEPS) {
        *place =
            step(what, &recipe, bleach, &mut here, volume, &products, rise).map_err(Unknown::Chemistry)?;
    }
    Ok(treatment)
}

/// Liquid chlorine from `now` up to `goal`; none down.
fn bleach(now: Chlorine, goal: Chlorine) -> Dose {
    let missing = goal.mg_per_l() - now.mg_per_l();
    let wanted = Chlorine::from_mg_per_l(if missing < policy::NEAR_CHLORINE { 0.0 } else { missing });
    wanted.ok().and_then(|x| Dose::of_chlorine(Chemical::LiquidChlorine, x)).unwrap_or_default()
}

/// The recipe for what is asked; what is not asked for is left as it comes, and so is what is there
/// already as near as a kit can tell.
fn solve(water: &Water, goals: &Goals) -> Result<Recipe, chem::RecipeError> {
    let (ch, cya) = (water.hardness()?, water.cyanuric_acid()?);
    let up = |goal: f64, now: f64, near: f64| goal - now > near;
    let hardness = goals.hardness.filter(|x| up(x.mg_per_l(), ch.mg_per_l(), policy::NEAR_HARDNESS));
    let cyanuric_acid =
        goals.cyanuric_acid.filter(|x| up(x.mg_per_l(), cya.mg_per_l(), policy::NEAR_CYANURATE));
    let (hardness, cyanuric_acid) = (hardness.unwrap_or(ch), cyanuric_acid.unwrap_or(cya));
    // Calcium and cyanuric acid, each of which has one chemical, and the pH that they leave.
    let plain = recipe::minerals(water, hardness, cyanuric_acid)?;
    let bare = plain.applied(*water);
    let state = bare.state().map_err(chem::RecipeError::Chemistry)?;
    let ph_met = goals.ph.is_none_or(|ph| (ph.units() - state.ph.units()).abs() <= policy::NEAR_PH);
    let bare_alkalinity = bare.alkalinity()?;
    let missing = goals.alkalinity.map_or(0.0, |ta| ta.mg_per_l() - bare_alkalinity.mg_per_l());
    if missing.abs() <= policy::NEAR_ALKALINITY {
        return match goals.ph.filter(|_| !ph_met) {
            None => Ok(plain),
            Some(ph) => trim(&bare, ph, plain),
        };
    }
    let alkalinity = goals.alkalinity.unwrap_or(bare_alkalinity);
    match (goals.ph, recipe::alkalinity_by_bicarbonate(missing)) {
        (None, Some(bicarbonate)) => Ok(Recipe { bicarbonate, ..plain }),
        // Down: acid, with the pH brought back to where it was by aeration.
        (None, None) => {
            let ph = water.state().map_err(chem::RecipeError::Chemistry)?.ph;
            recipe::recipe(water, &Goal { ph, alkalinity, hardness, cyanuric_acid })
        }
        (Some(ph), _) => recipe::recipe(water, &Goal { ph, alkalinity, hardness, cyanuric_acid }),
    }
}

/// Acid down or soda ash up to a pH, alkalinity left to follow.
fn trim(water: &Water, ph: Ph, plain: Recipe) -> Result<Recipe, chem::RecipeError> {
    let here = water.state().map_err(chem::RecipeError::Chemistry)?.ph;
    if here > ph {
        Ok(Recipe { acid: dose_to_ph(water, Chemical::HydrochloricAcid, ph)?, ..plain })
    } else {
        Ok(Recipe { carbonate: dose_to_ph(water, Chemical::SodiumCarbonate, ph)?, ..plain })
    }
}

fn step(
    what: What,
    recipe: &Recipe,
    bleach: Dose,
    here: &mut Water,
    volume: Volume,
    products: &Products,
    rise: Salinity,
) -> Result<Option<Step>, WaterError> {
    let aerated = recipe.stripped.mmol_per_l() > 0.0;
    let acid = match products.acid {
        Acid::Hydrochloric(_) => Chemical::HydrochloricAcid,
        Acid::Bisulfate(_) => Chemical::SodiumBisulfate,
    };
    let (chemical, dose) = match what {
        What::Chlorine => (Chemical::LiquidChlorine, bleach),
        What::Bicarbonate => (Chemical::SodiumBicarbonate, recipe.bicarbonate),
        What::AcidAndAir if aerated => (acid, recipe.acid),
        What::Cyanuric => (Chemical::CyanuricAcid, recipe.cyanuric),
        What::Calcium => (Chemical::CalciumChloride, recipe.calcium),
        What::Acid if !aerated => (acid, recipe.acid),
        What::Carbonate => (Chemical::SodiumCarbonate, recipe.carbonate),
        What::AcidAndAir | What::Acid => return Ok(None),
    };
    if dose.mmol_per_l() < policy::LEAST_DOSE {
        return Ok(None);
    }
    let first = first_dose(what, here, chemical, dose);
    let begun = here.treated(chemical, first.unwrap_or_default());
    let mut then = here.treated(chemical, dose);
    if what == What::AcidAndAir {
        then = then.stripped(recipe.stripped);
    }
    *here = then.spent();
    let powder = |dose: Dose, purity| Amount::Powder(dose.of_powder(chemical, volume, purity));
    let amount = |dose: Dose| {
        Ok::<_, chem::OutOfRange>(match (what, products.acid) {
            (What::Chlorine, _) => Amount::Liquid(dose.of_bleach(volume, products.bleach)?),
            (What::AcidAndAir | What::Acid, Acid::Hydrochloric(strength)) => {
                Amount::Liquid(dose.of_acid(volume, strength)?)
            }
            (What::AcidAndAir | What::Acid, Acid::Bisulfate(purity)) => powder(dose, purity),
            (What::Calcium, _) => powder(dose, products.calcium),
            _ => powder(dose, products.powder),
        })
    };
    Ok(Some(Step {
        what,
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
        wait: policy::WAIT[what as usize],
    }))
}

/// What goes in at one go: never more than the step's largest single dose; of what moves the pH, three
/// quarters of the model, and never past pH 7.2 by the model: no acid at all where it stands there already.
fn first_dose(what: What, here: &Water, chemical: Chemical, whole: Dose) -> Option<Dose> {
    let largest = policy::LARGEST_DOSE[what as usize];
    let all = whole.mmol_per_l();
    let first = match what {
        What::Acid | What::AcidAndAir => {
            let to_floor = dose_to_ph(here, chemical, Ph::from_units(policy::PH_FLOOR).ok()?).ok()?;
            (policy::OF_THE_MODEL * all).min(to_floor.mmol_per_l())
        }
        What::Carbonate => policy::OF_THE_MODEL * all,
        What::Chlorine | What::Bicarbonate | What::Cyanuric | What::Calcium => all,
    };
    Dose::from_mmol_per_l(first.min(largest)).ok().filter(|first| first.mmol_per_l() >= policy::LEAST_DOSE)
}
