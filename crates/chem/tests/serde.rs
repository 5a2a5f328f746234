//! Does what is written come back as it was, and does nothing come in that no check would let through?
#![cfg(feature = "serde")]

use saltwright_chem::pool_shape::{Floor, Measures, Outline, Pool};
use saltwright_chem::salt::SaltTest;
use saltwright_chem::treatment::recipe::{Goal, recipe};
use saltwright_chem::treatment::{AcidStrength, BleachStrength, Chemical, Dose};
use saltwright_chem::*;
use serde::{Serialize, de::DeserializeOwned};
use std::fmt::Debug;

fn back<T: Serialize + DeserializeOwned>(x: &T) -> T {
    serde_json::from_str(&serde_json::to_string(x).unwrap()).unwrap()
}

fn same<T: Serialize + DeserializeOwned + PartialEq + Debug>(x: T) {
    assert_eq!(back(&x), x);
}

fn refused<T: DeserializeOwned + Debug>(text: &str) -> String {
    serde_json::from_str::<T>(text).unwrap_err().to_string()
}

fn sample() -> Sample {
    Sample {
        temperature: Temperature::from_celsius(26.0).unwrap(),
        ph: Ph::from_units(7.2).unwrap(),
        alkalinity: Alkalinity::from_mg_per_l(70.0).unwrap(),
        hardness: Hardness::from_mg_per_l(250.0).unwrap(),
        cyanuric_acid: CyanuricAcid::from_mg_per_l(40.0).unwrap(),
        salt: Salinity::from_mg_per_l(3_200.0).unwrap(),
        boron: Boron::NONE,
        magnesium: Magnesium::NONE,
        sulfate: Sulfate::NONE,
    }
}

#[test]
fn what_is_written_comes_back() {
    let water = sample().water().unwrap();
    let alkalinity = Alkalinity::from_mg_per_l(100.0).unwrap();
    let goal = Goal { ph: Ph::from_units(7.6).unwrap(), alkalinity, ..goal_as_it_is() };
    same(sample());
    same(sample().state().unwrap());
    same(water);
    same(goal);
    same(recipe(&water, &goal).unwrap());
    same(Dose::from_mmol_per_l(0.5).unwrap());
    same(AcidStrength::from_mass_percent(31.45).unwrap());
    same(BleachStrength::from_trade_percent(12.5).unwrap());
    Chemical::ALL.iter().copied().for_each(same);
    same(SaltTest::Chloride);
    same(chlorine::species(
        Chlorine::from_mg_per_l(3.0).unwrap(),
        sample().cyanuric_acid,
        sample().ph,
        sample().temperature,
        IonicStrength::from_molal(0.06).unwrap(),
    ));
}

fn goal_as_it_is() -> Goal {
    let Sample { ph, alkalinity, hardness, cyanuric_acid, .. } = sample();
    Goal { ph, alkalinity, hardness, cyanuric_acid }
}

#[test]
fn a_water_without_calcium_comes_back_too() {
    let state = Sample { hardness: Hardness::from_mg_per_l(0.0).unwrap(), ..sample() }.state().unwrap();
    assert_eq!((state.index, state.log_calcium), (None, f64::NEG_INFINITY));
    same(state);
}

#[test]
fn errors_come_back() {
    let hot = Sample { temperature: Temperature::from_celsius(45.0).unwrap(), ..sample() }.state();
    same(hot.unwrap_err());
    same(Temperature::from_celsius(50.5).unwrap_err());
    same(RecipeError::Chemistry(WaterError::NoSolution));
    same(DilutionError::NotAbove);
    same(ShapeError::NoPool);
    let no_number = Ph::from_units(f64::NAN).unwrap_err();
    assert!(back(&no_number).got.is_nan());
}

#[test]
fn a_shape_comes_back() {
    let m = |x| Length::from_metres(x).unwrap();
    let mut widths = Measures::NONE;
    assert!([3.0, 5.0, 4.0].into_iter().all(|x| widths.push(m(x))));
    let pool = Pool {
        outline: Outline::Offsets(m(2.0), widths),
        floor: Floor::Slope([m(1.0), m(1.9)]),
        wing: None,
        ledge: None,
        steps: None,
        less: Volume::NONE,
        spa: Volume::NONE,
    };
    same(pool);
    same(pool.size().unwrap());
}

#[test]
fn what_no_check_lets_through_does_not_come_in() {
    assert!(refused::<Volume>("-1").contains("volume -1 m³ is outside 0 to"));
    assert!(refused::<Ph>("14.5").contains("pH 14.5 is outside"));
    refused::<Salinity>("null");
    refused::<Dose>("-0.1");
    refused::<AcidStrength>("0");
    assert!(refused::<Measures>(&format!("{:?}", [1.0; 25])).contains("up to 24 measures"));
    refused::<Measures>("[1, -1]");
    let water = serde_json::to_string(&sample().water().unwrap()).unwrap();
    for (total, below) in [("\"sodium\":", "\"sodium\":-"), ("\"chlorine\":0.0", "\"chlorine\":-0.1")] {
        assert!(refused::<Water>(&water.replace(total, below)).contains("below none"), "{water}");
    }
    assert!(refused::<OutOfRange>(r#"{"got": 50.5, "row": "WARMTH"}"#).contains("no row"));
    assert!(refused::<OutOfRange>(r#"{"got": 7.5, "row": "PH"}"#).contains("inside"));
}
