//! Which chemicals, and how much of each, lead from this water to that water?

use crate::bounds::{self, Bounds};
use crate::constants::atomic_weights;
use crate::error::{RecipeError, WaterError};
use crate::quantity::{derived::*, measured::*};
use crate::treatment::chemical::Chemical;
use crate::treatment::dose::Dose;
use crate::water::conserved::Water;
use crate::water::solve::{self, Constraint, Ions};

/// Where the water is to go. What is not named here stays as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Goal {
    /// pH.
    pub ph: Ph,
    /// Total alkalinity.
    pub alkalinity: Alkalinity,
    /// Calcium hardness.
    pub hardness: Hardness,
    /// Cyanuric acid.
    pub cyanuric_acid: CyanuricAcid,
}

/// What to add, per litre, and how much carbon dioxide to drive out. Nothing, unless said.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Recipe {
    /// Sodium bicarbonate.
    pub bicarbonate: Dose,
    /// Sodium carbonate.
    pub carbonate: Dose,
    /// Hydrochloric acid.
    pub acid: Dose,
    /// Calcium chloride.
    pub calcium: Dose,
    /// Cyanuric acid.
    pub cyanuric: Dose,
    /// Carbon dioxide to strip by aeration.
    pub stripped: Dose,
}

/// Rounds in which the recipe takes its own sodium and chloride into account. Two or three do in ordinary
/// water; at the edge of the domain, pH 8.6 with much calcium, it takes a dozen.
const ROUNDS: usize = 40;
/// How near the goal's pH a recipe or a dose must lead.
const NEAR: f64 = 1e-6;
/// A dose below it is none, mmol per litre: an inorganic carbon that was found from a pH is known no nearer.
const NOTHING: f64 = 1e-8;

/// The one recipe without acid and soda ash together, and never with caustic soda. (Bicarbonate and acid do
/// stand together where alkalinity has to rise and pH must not.)
///
/// With x the alkalinity and y the inorganic carbon still missing, bicarbonate is (1, 1), carbonate
/// (2, 1), acid (-1, 0) and aeration (0, -1); each region of the plane is spanned by two of them.
/// Calcium and cyanuric acid each have one chemical. Domain: goals within the `MODEL_*` rows.
/// Errors: [`RecipeError`]. Source: mass balance; the goal's carbon by [`crate::Sample::state`]'s model.
///
/// ```
/// use saltwright_chem::treatment::recipe::{Goal, recipe};
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let (hardness, cyanuric_acid) = (Hardness::from_mg_per_l(250.0)?, CyanuricAcid::from_mg_per_l(40.0)?);
/// let water = Sample {
///     temperature: Temperature::from_celsius(26.0)?,
///     ph: Ph::from_units(7.2)?,
///     alkalinity: Alkalinity::from_mg_per_l(70.0)?,
///     hardness,
///     cyanuric_acid,
///     salt: Salinity::from_mg_per_l(3_200.0)?,
///     boron: Boron::NONE,
///     magnesium: Magnesium::NONE,
///     sulfate: Sulfate::NONE,
/// }
/// .water()
/// .unwrap();
/// let goal = Goal { ph: Ph::from_units(7.6)?, alkalinity: Alkalinity::from_mg_per_l(100.0)?, hardness, cyanuric_acid };
/// let recipe = recipe(&water, &goal).unwrap();
/// let there = recipe.applied(water).state().unwrap();
/// assert!((there.ph.units() - 7.6).abs() < 1e-6);
/// assert!(recipe.acid.mmol_per_l() == 0.0);
/// # Ok(())
/// # }
/// ```
pub fn recipe(water: &Water, goal: &Goal) -> Result<Recipe, RecipeError> {
    goal.within_model()?;
    let litre = water.content.kg_per_l();
    let mut found = minerals(water, goal.hardness, goal.cyanuric_acid)?;
    let alkalinity = goal.alkalinity.mg_per_l() / atomic_weights::CALCIUM_CARBONATE / litre / 500.0;
    let x = alkalinity - water.ions.alkalinity;
    let dose =
        |molal: f64| Dose::from_mmol_per_l(molal * litre * 1000.0).map_err(|_| RecipeError::OutOfReach);
    for _ in 0..ROUNDS {
        // The goal's carbon, in the sodium and chloride that the recipe leaves.
        let there = found.applied(*water);
        let ions = Ions { alkalinity, ..there.ions };
        let state = solve::solve(&ions, water.temperature, water.content, Constraint::Ph(goal.ph.units()))?;
        let y = state.carbon.molal() - water.carbon;
        // What rounding leaves of nothing is nothing.
        let [bicarbonate, carbonate, acid, stripped] =
            split(x, y).map(|molal| if molal * litre * 1000.0 < NOTHING { 0.0 } else { molal });
        if stripped > 0.0 && state.carbon_dioxide < CarbonDioxide::OPEN_AIR {
            return Err(RecipeError::BelowAir);
        }
        let before = found;
        found = Recipe {
            bicarbonate: dose(bicarbonate)?,
            carbonate: dose(carbonate)?,
            acid: dose(acid)?,
            stripped: dose(stripped)?,
            ..found
        };
        let moved = |a: Dose, b: Dose| (a.mmol_per_l() - b.mmol_per_l()).abs();
        if moved(before.bicarbonate, found.bicarbonate)
            + moved(before.carbonate, found.carbonate)
            + moved(before.stripped, found.stripped)
            < 1e-9
        {
            break;
        }
    }
    let there = found.applied(*water).state()?;
    if (there.ph.units() - goal.ph.units()).abs() < NEAR { Ok(found) } else { Err(RecipeError::OutOfReach) }
}

impl Goal {
    fn within_model(&self) -> Result<(), RecipeError> {
        let rows: [(&'static Bounds, f64); 4] = [
            (&bounds::MODEL_PH, self.ph.units()),
            (&bounds::MODEL_ALKALINITY, self.alkalinity.mg_per_l()),
            (&bounds::MODEL_HARDNESS, self.hardness.mg_per_l()),
            (&bounds::MODEL_CYANURIC_ACID, self.cyanuric_acid.mg_per_l()),
        ];
        let outside = rows.iter().try_for_each(|(row, x)| row.check(*x).map(drop));
        Ok(outside?)
    }
}

/// The part of a recipe that needs no solving: calcium chloride and cyanuric acid, each of which is the one
/// chemical for its test. Errors: [`RecipeError::Hardness`] and [`RecipeError::CyanuricAcid`] where it would have to fall.
///
/// ```
/// use saltwright_chem::treatment::recipe::minerals;
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let water = Sample {
///     temperature: Temperature::from_celsius(24.0)?,
///     ph: Ph::from_units(7.8)?,
///     alkalinity: Alkalinity::from_mg_per_l(110.0)?,
///     hardness: Hardness::from_mg_per_l(220.0)?,
///     cyanuric_acid: CyanuricAcid::from_mg_per_l(20.0)?,
///     salt: Salinity::NONE,
///     boron: Boron::NONE,
///     magnesium: Magnesium::NONE,
///     sulfate: Sulfate::NONE,
/// }
/// .water()
/// .unwrap();
/// let recipe = minerals(&water, Hardness::from_mg_per_l(250.0)?, CyanuricAcid::from_mg_per_l(40.0)?).unwrap();
/// assert!((recipe.calcium.mmol_per_l() - 30.0 / 100.0869).abs() < 1e-9);
/// # Ok(())
/// # }
/// ```
pub fn minerals(
    water: &Water,
    hardness: Hardness,
    cyanuric_acid: CyanuricAcid,
) -> Result<Recipe, RecipeError> {
    let per_litre = |molal: f64| molal * water.content.kg_per_l() * 1000.0;
    let missing = |wanted: f64, molal: f64, none: RecipeError| match wanted - per_litre(molal) {
        x if x < -NOTHING => Err(none),
        x if x < NOTHING => Ok(Dose::default()),
        x => Dose::from_mmol_per_l(x).map_err(|_| RecipeError::OutOfReach),
    };
    let calcium = hardness.mg_per_l() / atomic_weights::CALCIUM_CARBONATE;
    let cyanuric = cyanuric_acid.mg_per_l() / atomic_weights::CYANURIC_ACID;
    Ok(Recipe {
        calcium: missing(calcium, water.ions.calcium, RecipeError::Hardness)?,
        cyanuric: missing(cyanuric, water.ions.cyanuric_acid, RecipeError::CyanuricAcid)?,
        ..Recipe::default()
    })
}

/// Bicarbonate for a rise in alkalinity of so many mg/L as CaCO3; `None` for a fall, and beyond
/// [`bounds::DOSE`].
///
/// ```
/// use saltwright_chem::treatment::recipe::alkalinity_by_bicarbonate;
/// assert!((alkalinity_by_bicarbonate(10.0).unwrap().mmol_per_l() - 0.19983).abs() < 1e-5);
/// assert_eq!(alkalinity_by_bicarbonate(-1.0), None);
/// ```
#[must_use]
pub fn alkalinity_by_bicarbonate(mg_per_l: f64) -> Option<Dose> {
    Dose::from_mmol_per_l(mg_per_l / atomic_weights::CALCIUM_CARBONATE * 2.0).ok()
}

/// Bicarbonate, carbonate, acid and stripped carbon dioxide for `x` of alkalinity and `y` of carbon.
fn split(x: f64, y: f64) -> [f64; 4] {
    if y >= 0.0 && x <= y {
        [y, 0.0, y - x, 0.0]
    } else if y >= 0.0 && x <= 2.0 * y {
        [2.0 * y - x, x - y, 0.0, 0.0]
    } else if x >= 0.0 {
        [0.0, x / 2.0, 0.0, x / 2.0 - y]
    } else {
        [0.0, 0.0, -x, -y]
    }
}

impl Recipe {
    /// The water with the whole recipe in it.
    #[must_use]
    pub fn applied(&self, water: Water) -> Water {
        water
            .treated(Chemical::CyanuricAcid, self.cyanuric)
            .treated(Chemical::CalciumChloride, self.calcium)
            .treated(Chemical::SodiumBicarbonate, self.bicarbonate)
            .treated(Chemical::SodiumCarbonate, self.carbonate)
            .treated(Chemical::HydrochloricAcid, self.acid)
            .stripped(self.stripped)
    }
}

/// The dose of one chemical that brings the pH to `ph`, with no gas lost: acid down, soda ash up.
///
/// The more of it, the farther the pH: doubled until the goal lies behind, then regula falsi (the Illinois way) between
/// the two. Domain: [`bounds::POOL_PH`]. Errors: [`RecipeError::OutOfReach`] when the chemical leads the other way or
/// not so far, [`RecipeError::Chemistry`].
///
/// ```
/// use saltwright_chem::treatment::recipe::dose_to_ph;
/// use saltwright_chem::treatment::Chemical;
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let water = Sample {
///     temperature: Temperature::from_celsius(26.0)?,
///     ph: Ph::from_units(7.8)?,
///     alkalinity: Alkalinity::from_mg_per_l(120.0)?,
///     hardness: Hardness::from_mg_per_l(300.0)?,
///     cyanuric_acid: CyanuricAcid::from_mg_per_l(40.0)?,
///     salt: Salinity::from_mg_per_l(3_200.0)?,
///     boron: Boron::NONE,
///     magnesium: Magnesium::NONE,
///     sulfate: Sulfate::NONE,
/// }
/// .water()
/// .unwrap();
/// let acid = dose_to_ph(&water, Chemical::HydrochloricAcid, Ph::from_units(7.4)?).unwrap();
/// assert!((acid.mmol_per_l() - 0.13448).abs() < 0.0005);
/// assert!(dose_to_ph(&water, Chemical::SodiumCarbonate, Ph::from_units(7.4)?).is_err());
/// # Ok(())
/// # }
/// ```
pub fn dose_to_ph(water: &Water, chemical: Chemical, ph: Ph) -> Result<Dose, RecipeError> {
    let goal = bounds::POOL_PH.check(ph.units()).map_err(WaterError::from)?;
    // How far the goal still is, on this side of it above nothing.
    let start = goal - water.state()?.ph.units();
    let (mut near, mut near_left) = (0.0, start.abs());
    // A dose with the goal behind it, and how far; a water that has no pH any more lies behind it, too.
    let mut far: Option<(f64, Option<f64>)> = None;
    // Which end moved last: where the same one moves again, the other's distance counts half.
    let mut near_moved = false;
    let mut next = if near_left < NEAR { 0.0 } else { 0.01 };
    for _ in 0..150 {
        let state = water.treated_by(chemical, next).state();
        let there = state.ok().map(|state| (goal - state.ph.units()) * start.signum());
        match there {
            Some(left) if left.abs() < NEAR => {
                return Dose::from_mmol_per_l(next).map_err(|_| RecipeError::OutOfReach);
            }
            Some(left) if left > 0.0 => {
                if far.is_none() && left >= near_left {
                    break; // The other way.
                }
                if let (true, Some((_, Some(behind)))) = (near_moved, &mut far) {
                    *behind *= 0.5;
                }
                (near, near_left, near_moved) = (next, left, far.is_some());
            }
            _ => {
                if !near_moved && far.is_some() {
                    near_left *= 0.5;
                }
                (far, near_moved) = (Some((next, there)), false);
            }
        }
        next = match far {
            None => 2.0 * next,
            Some((far, Some(behind))) => near + (far - near) * near_left / (near_left - behind),
            Some((far, None)) => 0.5 * (near + far),
        };
    }
    Err(RecipeError::OutOfReach)
}
