//! Which chemicals lead to the goals, each goal or none?

use crate::input::case::Goals;
use crate::policy;
use chem::treatment::recipe::{self, Goal, Recipe, dose_to_ph};
use chem::treatment::{Chemical, Dose};
use chem::{Chlorine, Ph, RecipeError, Water};

/// Liquid chlorine from `now` up to `goal`; none down.
pub(crate) fn bleach(now: Chlorine, goal: Chlorine) -> Dose {
    let missing = goal.mg_per_l() - now.mg_per_l();
    let wanted = Chlorine::from_mg_per_l(if missing < policy::NEAR_CHLORINE { 0.0 } else { missing });
    wanted.ok().and_then(|x| Dose::of_chlorine(Chemical::LiquidChlorine, x)).unwrap_or_default()
}

/// The recipe for what is asked; what is not asked for is left as it comes, and so is what is there
/// already as near as a kit can tell.
pub(crate) fn solve(water: &Water, goals: &Goals) -> Result<Recipe, RecipeError> {
    let (ch, cya) = (water.hardness()?, water.cyanuric_acid()?);
    let up = |goal: f64, now: f64, near: f64| goal - now > near;
    let hardness = goals.hardness.filter(|x| up(x.mg_per_l(), ch.mg_per_l(), policy::NEAR_HARDNESS));
    let cyanuric_acid =
        goals.cyanuric_acid.filter(|x| up(x.mg_per_l(), cya.mg_per_l(), policy::NEAR_CYANURIC_ACID));
    let (hardness, cyanuric_acid) = (hardness.unwrap_or(ch), cyanuric_acid.unwrap_or(cya));
    // Calcium and cyanuric acid, each of which has one chemical, and the pH that they leave.
    let plain = recipe::minerals(water, hardness, cyanuric_acid)?;
    let bare = plain.applied(*water);
    let state = bare.state().map_err(RecipeError::Chemistry)?;
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
            let ph = water.state().map_err(RecipeError::Chemistry)?.ph;
            recipe::recipe(water, &Goal { ph, alkalinity, hardness, cyanuric_acid })
        }
        (Some(ph), _) => recipe::recipe(water, &Goal { ph, alkalinity, hardness, cyanuric_acid }),
    }
}

/// Acid down or soda ash up to a pH, alkalinity left to follow.
fn trim(water: &Water, ph: Ph, plain: Recipe) -> Result<Recipe, RecipeError> {
    let here = water.state().map_err(RecipeError::Chemistry)?.ph;
    if here > ph {
        Ok(Recipe { acid: dose_to_ph(water, Chemical::HydrochloricAcid, ph)?, ..plain })
    } else {
        Ok(Recipe { carbonate: dose_to_ph(water, Chemical::SodiumCarbonate, ph)?, ..plain })
    }
}
