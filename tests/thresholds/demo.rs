//! Which case has every figure there and nothing against it?

use chem::*;
use evidence::quantities::{chlorine, ppm};
use plan::{
    Acid, Bag, Band, Case, Instrument, Location, Method, Products, Ready, Surface, Tests, Typed, YesNo,
};

/// The demo in metres, with every figure there and nothing against it.
pub fn demo() -> Case {
    Case {
        volume: Volume::from_cubic_metres(62.82).ok(),
        method: Some(Method::Taped),
        surface: Some(Surface::Cement),
        reading: Typed::Valid(ppm(400.0)),
        instrument: Some(Instrument::Meter),
        band: Band::of(Some(ppm(2_800.0)), Some(ppm(3_200.0)), Some(ppm(3_600.0))).ok(),
        bag: Bag {
            size: Mass::from_kilograms(20.0).ok(),
            purity: Purity::from_ratio(0.994).ok(),
            ..Bag::default()
        },
        water: tests(24.0, 7.5, 110.0, 250.0, 40.0),
        products: Some(Products {
            acid: Acid::Hydrochloric(treatment::AcidStrength::from_mass_percent(31.45).unwrap()),
            bleach: treatment::BleachStrength::from_trade_percent(10.0).unwrap(),
            calcium: Purity::from_ratio(0.77).unwrap(),
            powder: Purity::WHOLE,
        }),
        today: Some(20_000),
        ready: Ready { moved: Some(YesNo::No), place: Some(Location::Outdoor), ..Ready::default() },
        ..Case::default()
    }
}

pub fn tests(heat: f64, ph: f64, ta: f64, ch: f64, cya: f64) -> Tests {
    Tests {
        temperature: Temperature::from_celsius(heat).ok(),
        ph: Ph::from_units(ph).ok(),
        alkalinity: Alkalinity::from_mg_per_l(ta).ok(),
        hardness: Hardness::from_mg_per_l(ch).ok(),
        cyanuric_acid: CyanuricAcid::from_mg_per_l(cya).ok(),
        chlorine: Typed::Valid(chlorine(2.5)),
    }
}
