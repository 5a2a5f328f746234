//! Is everything in an answer a finite number, inside its own row?

use chem::treatment::{AcidStrength, BleachStrength, Dose};
use chem::*;
use std::fmt::Debug;

/// Ends the test when the answer holds what is no finite number, or a quantity outside its own row. Without
/// calcium its logarithm is minus infinity, as documented; and an error may tell of whatever it was given.
pub fn finite(asked: impl Debug, answer: impl Debug) {
    let told = format!("{answer:?}");
    for (at, _) in told.match_indices('(') {
        let name = told[..at].rsplit(|c: char| !c.is_ascii_alphanumeric()).next().unwrap();
        let Some((_, row)) = ROWS.iter().find(|(of, _)| *of == name) else { continue };
        if let Ok(x) = told[at + 1..].split(')').next().unwrap().parse() {
            assert!(row.contains(x), "{asked:?} gives {name}({x}) in {told}");
        }
    }
    if told.contains("NaN") || told.contains("inf") {
        let told = ["log_calcium: -inf", "got: NaN", "got: inf", "got: -inf"]
            .iter()
            .fold(told, |told, allowed| told.replace(allowed, ""));
        let words = told.split(|c: char| !(c.is_ascii_alphanumeric() || c == '_'));
        assert!(!words.into_iter().any(|word| ["NaN", "inf"].contains(&word)), "{asked:?} gives {told}");
    }
}

macro_rules! rows {
    ($($name:ident),* $(,)?) => {
        /// Every type of quantity by its name, and the row that it never leaves.
        const ROWS: &[(&str, &bounds::Bounds)] = &[$((stringify!($name), $name::BOUNDS)),*];
    };
}

rows! {
    Volume, Mass, Fraction, Purity, Salinity, Temperature, Ph, Alkalinity, Hardness, CyanuricAcid, Boron, Magnesium,
    Sulfate, Chlorine, Solids, Conductivity, Length, Area, CarbonateAlkalinity, SaturationIndex, IonicStrength,
    InorganicCarbon, CarbonDioxide, Density, WaterContent, TemperatureDifference, AcidStrength, BleachStrength, Dose,
}

#[test]
fn a_quantity_outside_its_row_is_noticed() {
    /// As a quantity would be told if there could be one.
    #[derive(Debug)]
    #[allow(dead_code)]
    struct Ph(f64);
    let noticed = |x: f64| std::panic::catch_unwind(|| finite("a test", Some(Ph(x)))).is_err();
    assert!(noticed(-1e-9) && noticed(14.1) && noticed(f64::NAN) && noticed(1e300));
    assert!(!noticed(7.0) && !noticed(1e-9) && !noticed(0.0));
}
