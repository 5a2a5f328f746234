//! Which quantity has this figure? For figures that stand in a test, and so lie in their range.

use chem::treatment::Dose;
use chem::*;

/// Cubic metres of water.
pub fn m3(x: f64) -> Volume {
    Volume::from_cubic_metres(x).unwrap()
}

/// Kilograms.
pub fn kg(x: f64) -> Mass {
    Mass::from_kilograms(x).unwrap()
}

/// Milligrams of salt in a litre.
pub fn ppm(x: f64) -> Salinity {
    Salinity::from_mg_per_l(x).unwrap()
}

/// Milligrams of free chlorine in a litre.
pub fn chlorine(x: f64) -> Chlorine {
    Chlorine::from_mg_per_l(x).unwrap()
}

/// Degrees Celsius.
pub fn celsius(x: f64) -> Temperature {
    Temperature::from_celsius(x).unwrap()
}

/// A pH.
pub fn ph(x: f64) -> Ph {
    Ph::from_units(x).unwrap()
}

/// Millimoles to a litre.
pub fn mmol(x: f64) -> Dose {
    Dose::from_mmol_per_l(x).unwrap()
}
