//! What is one index, one treatment, one recipe, one decision, over and over? The clock is the caller's.
//!
//! Each function goes so many times round the waters that were pushed, and returns the sum of one figure of each
//! answer. The whole answer passes a black box, so that nothing of it can be left out as unused; a water without an
//! answer adds nothing.

use chem::treatment::recipe::{Goal, recipe};
use chem::treatment::{Chemical, Dose};
use chem::*;
use plan::RiskLevels;
use plan::log::{Baseline, Entry, MOST_ENTRIES, Reading, LogEvent};
use plan::salt::course::{Course, course};
use plan::salt::decide;
use plan::salt::job::{Handled, Job};
use plan::salt::value_of_information::value_of_information;
use plan::{Band, History, Instrument, Method};
use std::hint::black_box;
use std::sync::{Mutex, MutexGuard, PoisonError};
use wasm_bindgen::prelude::wasm_bindgen;

static WATERS: Mutex<Vec<Sample>> = Mutex::new(Vec::new());

fn all() -> MutexGuard<'static, Vec<Sample>> {
    WATERS.lock().unwrap_or_else(PoisonError::into_inner)
}

/// One water more: the first columns of `saturation-index.csv`, in its order. How many are there now? One that is none
/// is left out.
#[wasm_bindgen]
#[allow(clippy::too_many_arguments)] // A row of numbers, as they come.
pub fn push(t: f64, ph: f64, ta: f64, ch: f64, cya: f64, b: f64, salt: f64, mg: f64, so4: f64) -> u32 {
    let sample = || {
        Some(Sample {
            temperature: Temperature::from_celsius(t).ok()?,
            ph: Ph::from_units(ph).ok()?,
            alkalinity: Alkalinity::from_mg_per_l(ta).ok()?,
            hardness: Hardness::from_mg_per_l(ch).ok()?,
            cyanuric_acid: CyanuricAcid::from_mg_per_l(cya).ok()?,
            salt: Salinity::from_mg_per_l(salt).ok()?,
            boron: Boron::from_mg_per_l(b).ok()?,
            magnesium: Magnesium::from_mg_per_l(mg).ok()?,
            sulfate: Sulfate::from_mg_per_l(so4).ok()?,
        })
    };
    let mut all = all();
    all.extend(sample());
    all.len() as u32
}

fn round(turns: u32, act: impl Fn(&Sample) -> Option<f64>) -> f64 {
    let all = all();
    (0..turns).flat_map(|_| all.iter()).filter_map(|sample| act(black_box(sample))).sum()
}

/// The index at the measured pH.
#[wasm_bindgen]
pub fn index(turns: u32) -> f64 {
    round(turns, |sample| Some(black_box(sample.state().ok()?).index?.log10()))
}

/// A tenth of a mmol of acid to a litre, and the pH after it: the water is solved twice.
#[wasm_bindgen]
pub fn treatment(turns: u32) -> f64 {
    round(turns, |sample| {
        let dose = Dose::from_mmol_per_l(0.1).ok()?;
        let state = sample.water().ok()?.treated(Chemical::HydrochloricAcid, dose).state().ok()?;
        Some(black_box(state).ph.units())
    })
}

/// The way to pH 7.5 and 30 more of alkalinity, calcium hardness and cyanuric acid.
#[wasm_bindgen]
pub fn recipes(turns: u32) -> f64 {
    round(turns, |sample| {
        let goal = Goal {
            ph: Ph::from_units(7.5).ok()?,
            alkalinity: Alkalinity::from_mg_per_l(sample.alkalinity.mg_per_l() + 30.0).ok()?,
            hardness: Hardness::from_mg_per_l(sample.hardness.mg_per_l() + 30.0).ok()?,
            cyanuric_acid: CyanuricAcid::from_mg_per_l(sample.cyanuric_acid.mg_per_l() + 30.0).ok()?,
        };
        Some(black_box(recipe(&sample.water().ok()?, &goal).ok()?).bicarbonate.mmol_per_l())
    })
}

/// As many powers of ten as an index takes on these waters, and nothing else: one for each reaction that takes
/// place, one for the hydrogen ion, one for carbon dioxide.
#[wasm_bindgen]
pub fn powers(turns: u32) -> f64 {
    round(turns, |sample| {
        let power = |i| libm::exp(black_box(-sample.ph.units() - f64::from(i) / 8.0));
        Some((0..13).map(power).sum())
    })
}

/// The demo's job with two stages in and three readings; `salt` stirs the last of them.
fn job(salt: f64) -> Option<(Job, Course)> {
    let kg = |x| Mass::from_kilograms(x).ok();
    let ppm = |x| Salinity::from_mg_per_l(x).ok();
    let read = |x| Some(Reading { salt: ppm(x)?, again: None, instrument: Instrument::Meter });
    let job = Job {
        volume: Volume::from_cubic_metres(62.82).ok()?,
        method: Method::Taped,
        doubt: None,
        bag: kg(20.0)?,
        purity: Purity::from_ratio(0.994).ok()?,
        in_hand: 0,
        band: Band::of(ppm(2_800.0), ppm(3_200.0), ppm(3_600.0)).ok()?,
        history: History::Fresh,
        fill: None,
        handled: Handled::Bags(plan::Bag::default().weighed_in),
        levels: RiskLevels::default(),
    };
    let mut log = [None; MOST_ENTRIES];
    log[0] = Some(Entry { when: 0, what: LogEvent::Dose(kg(120.0)?) });
    log[1] = Some(Entry { when: 1_440, what: LogEvent::Reading(read(2_320.0)?) });
    log[2] = Some(Entry { when: 1_500, what: LogEvent::Dose(kg(30.0)?) });
    log[3] = Some(Entry { when: 4_400, what: LogEvent::Reading(read(2_850.0 + salt)?) });
    Some((job, course(Some(Baseline { when: None, reading: read(400.0)? }), &log)))
}

/// How much of a water's salt the last reading is stirred by.
const STIR: f64 = 0.01;

/// A whole decision with three readings.
#[wasm_bindgen]
pub fn decision(turns: u32) -> f64 {
    round(turns, |sample| {
        let (job, course) = job(sample.salt.mg_per_l() * STIR)?;
        Some(black_box(decide::decide(&job, &course).ok()?).plain)
    })
}

/// Which measurement would pay, at the same readings.
#[wasm_bindgen]
pub fn paying(turns: u32) -> f64 {
    round(turns, |sample| {
        let (job, course) = job(sample.salt.mg_per_l() * STIR)?;
        Some(black_box(value_of_information(&job, &course).ok()??).today)
    })
}
