//! What is one index, one treatment, one recipe, one decision, over and over? The clock is the caller's.
//!
//! Each function goes so many times round the waters of `saturation-index.csv` and returns a sum, so
//! that nothing can be left out as unused.

use chem::recipe::{Goal, recipe};
use chem::treatment::{Chemical, Dose};
use chem::*;
use plan::course::{Baseline, Course, Entry, MOST_ENTRIES, Reading, What, course};
use plan::job::{Handled, Job};
use plan::policy::Levels;
use plan::{Band, History, Instrument, Method, decide, pays};
use std::hint::black_box;
use std::sync::LazyLock;
use wasm_bindgen::prelude::wasm_bindgen;

static WATERS: LazyLock<Vec<Sample>> = LazyLock::new(|| {
    let lines = include_str!("../../vectors/saturation-index.csv").lines().filter(|l| !l.starts_with('#'));
    lines.skip(1).map(sample).collect()
});

/// Columns by place: the same rows go to PHREEQC in `phreeqc.py`, by name.
fn sample(line: &str) -> Sample {
    let x: Vec<f64> = line.split(',').map_while(|cell| cell.parse().ok()).collect();
    Sample {
        temperature: Temperature::from_celsius(x[0]).unwrap(),
        ph: Ph::from_units(x[1]).unwrap(),
        alkalinity: Alkalinity::from_mg_per_l(x[2]).unwrap(),
        hardness: Hardness::from_mg_per_l(x[3]).unwrap(),
        cyanurate: Cyanurate::from_mg_per_l(x[4]).unwrap(),
        salt: Salinity::from_mg_per_l(x[6]).unwrap(),
        boron: Boron::from_mg_per_l(x[5]).unwrap(),
        magnesium: Magnesium::from_mg_per_l(x[7]).unwrap(),
        sulfate: Sulfate::from_mg_per_l(x[8]).unwrap(),
    }
}

fn round(turns: u32, act: impl Fn(&Sample) -> f64) -> f64 {
    (0..turns).flat_map(|_| WATERS.iter()).map(|sample| act(black_box(sample))).sum()
}

/// How many waters one turn goes through.
#[wasm_bindgen]
pub fn waters() -> u32 {
    WATERS.len() as u32
}

/// The index at the measured pH.
#[wasm_bindgen]
pub fn index(turns: u32) -> f64 {
    round(turns, |sample| sample.state().unwrap().index.unwrap().log10())
}

/// A tenth of a mmol of acid to a litre, and the pH after it: the water is solved twice.
#[wasm_bindgen]
pub fn treatment(turns: u32) -> f64 {
    let dose = Dose::from_mmol_per_l(0.1).unwrap();
    round(turns, |sample| {
        let water = sample.water().unwrap().treated(Chemical::HydrochloricAcid, dose);
        water.state().unwrap().ph.units()
    })
}

/// The way to pH 7.5 and 30 more of alkalinity, calcium hardness and cyanuric acid.
#[wasm_bindgen]
pub fn recipes(turns: u32) -> f64 {
    let more = |x: f64| x + 30.0;
    round(turns, |sample| {
        let goal = Goal {
            ph: Ph::from_units(7.5).unwrap(),
            alkalinity: Alkalinity::from_mg_per_l(more(sample.alkalinity.mg_per_l())).unwrap(),
            hardness: Hardness::from_mg_per_l(more(sample.hardness.mg_per_l())).unwrap(),
            cyanurate: Cyanurate::from_mg_per_l(more(sample.cyanurate.mg_per_l())).unwrap(),
        };
        recipe(&sample.water().unwrap(), &goal).map_or(0.0, |found| found.calcium.mmol_per_l())
    })
}

/// As many powers of ten as an index takes on these waters, and nothing else: one for each reaction that takes
/// place, one for the hydrogen ion, one for carbon dioxide.
#[wasm_bindgen]
pub fn powers(turns: u32) -> f64 {
    round(turns, |sample| {
        (0..13).map(|i| libm::exp(black_box(-sample.ph.units() - f64::from(i) / 8.0))).sum()
    })
}

/// The demo's job with two stages in and three readings; `salt` stirs the last of them.
fn job(salt: f64) -> (Job, Course) {
    let kg = |x| Mass::from_kilograms(x).unwrap();
    let ppm = |x| Salinity::from_mg_per_l(x).unwrap();
    let read = |x| Reading { salt: ppm(x), again: None, instrument: Instrument::Meter };
    let job = Job {
        volume: Volume::from_cubic_metres(62.82).unwrap(),
        method: Method::Taped,
        doubt: None,
        bag: kg(20.0),
        purity: Purity::from_ratio(0.994).unwrap(),
        in_hand: 0,
        band: Band::of(Some(ppm(2_800.0)), Some(ppm(3_200.0)), Some(ppm(3_600.0))).unwrap(),
        history: History::Fresh,
        fill: None,
        handled: Handled::Bags([kg(0.05), kg(0.5)]),
        levels: Levels::default(),
    };
    let mut log = [None; MOST_ENTRIES];
    log[0] = Some(Entry { when: 0, what: What::Dose(kg(120.0)) });
    log[1] = Some(Entry { when: 1_440, what: What::Reading(read(2_320.0)) });
    log[2] = Some(Entry { when: 1_500, what: What::Dose(kg(30.0)) });
    log[3] = Some(Entry { when: 4_400, what: What::Reading(read(2_850.0 + salt / 100.0)) });
    (job, course(Some(Baseline { when: None, reading: read(400.0) }), &log))
}

/// A whole decision with three readings.
#[wasm_bindgen]
pub fn decision(turns: u32) -> f64 {
    round(turns, |sample| {
        let (job, course) = job(sample.salt.mg_per_l());
        decide::decide(&job, &course).unwrap().known.unwrap().need
    })
}

/// Which measurement would pay, at the same readings.
#[wasm_bindgen]
pub fn paying(turns: u32) -> f64 {
    round(turns, |sample| {
        let (job, course) = job(sample.salt.mg_per_l());
        pays::pays(&job, &course).unwrap().unwrap().lab
    })
}
