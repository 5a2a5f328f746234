//! Can the chemistry's solver panic? Where it could, this program does not link.
//!
//! Each function below holds a value whose end, when the stack unwinds, calls what exists nowhere. The
//! compiler removes that call only where it has proved that nothing unwinds.

use chem::treatment::recipe::{Goal, Recipe, recipe};
use chem::treatment::{Chemical, Dose};
use chem::*;
use no_panic::no_panic;
use std::hint::black_box;

#[no_panic]
fn index(sample: &Sample) -> Result<State, WaterError> {
    sample.state()
}

#[no_panic]
fn water(sample: &Sample) -> Result<Water, WaterError> {
    sample.water()
}

#[no_panic]
fn free(water: &Water) -> Result<State, WaterError> {
    water.state()
}

#[no_panic]
fn in_air(water: &Water, air: CarbonDioxide) -> Result<State, WaterError> {
    water.in_air(air)
}

#[no_panic]
fn treated(water: Water, chemical: Chemical, dose: Dose) -> Result<State, WaterError> {
    water.treated(chemical, dose).state()
}

#[no_panic]
fn mixed(water: Water, other: Water, share: Fraction) -> Result<State, WaterError> {
    water.replaced(other, share).state()
}

#[no_panic]
fn way(water: &Water, goal: &Goal) -> Result<Recipe, RecipeError> {
    recipe(water, goal)
}

/// Deliberately at fault, to see the proof fail.
#[cfg(feature = "broken")]
#[no_panic]
fn broken(sample: &Sample) -> f64 {
    [0.0, 1.0][sample.ph.units() as usize]
}

fn main() {
    let number = |x: f64| black_box(x);
    let sample = Sample { temperature: Temperature::from_celsius(number(26.0)).unwrap(), ph: Ph::from_units(number(7.5)).unwrap(), alkalinity: Alkalinity::from_mg_per_l(number(80.0)).unwrap(), hardness: Hardness::from_mg_per_l(number(250.0)).unwrap(), cyanuric_acid: CyanuricAcid::from_mg_per_l(number(30.0)).unwrap(), salt: Salinity::from_mg_per_l(number(3_200.0)).unwrap(), boron: Boron::NONE, magnesium: Magnesium::NONE, sulfate: Sulfate::NONE };
    let goal = Goal {
        ph: sample.ph,
        alkalinity: sample.alkalinity,
        hardness: sample.hardness,
        cyanuric_acid: sample.cyanuric_acid,
    };
    let start = water(&sample).unwrap();
    let dose = Dose::from_mmol_per_l(number(0.1)).unwrap();
    let half = Fraction::from_ratio(number(0.5)).unwrap();
    let states = [
        index(&sample),
        free(&start),
        in_air(&start, CarbonDioxide::OPEN_AIR),
        treated(start, black_box(Chemical::HydrochloricAcid), dose),
        mixed(start, start.salted(sample.salt), half),
    ];
    #[cfg(feature = "broken")]
    println!("{}", broken(&sample));
    let _ = black_box((states, way(&start, &goal)));
    println!("neither an index nor what follows a treatment, a mixing or a recipe can panic");
}
