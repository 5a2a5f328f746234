//! Is there a number, however odd, at which the chemistry or the plan panics, or answers with no number?
//!
//! Drawn anew at every run from the same seeds: the whole typed domain, corners first. The same
//! questions go to a fuzzer in `cargo xtask prove fuzz`.

#[path = "sweep/questions.rs"]
mod questions;

use chem::{Fraction, Mass, Purity, Volume, bounds};
use plan::course::{Entry, Log, MOST_ENTRIES, Reading, What};
use plan::limits;
use plan::policy::Levels;
use plan::{
    Acid, Bag, Band, Case, Goals, Ground, History, Instrument, Method, Optional, Products, Surface, Tests,
    Unknown,
};
use questions::ask::{Ask, Source};
use questions::{QUESTIONS, finite};

/// A small generator (Marsaglia's xorshift, with a multiplication so that low bits serve too).
struct Draw(u64);

impl Source for Draw {
    fn word(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 3
    }
}

#[test]
fn every_function_of_the_chemistry_answers_with_numbers() {
    // Every room to its end, or to its first failure: one must not hide another's.
    let failed = QUESTIONS.iter().filter(|question| {
        let mut draw = Draw(5);
        std::panic::catch_unwind(move || (0..ROUNDS).for_each(|_| question(&mut Ask(&mut draw)))).is_err()
    });
    assert_eq!(failed.count(), 0, "rooms of the chemistry that fail, as told above");
}

#[test]
fn every_plan_holds_numbers() {
    let mut draw = Draw(6);
    for _ in 0..ROUNDS {
        let case = case(&mut Ask(&mut draw));
        finite(case, plan::plan(&case));
        let rise = Ask(&mut draw).salinity();
        finite((case, rise), plan::treat::treat(&case, rise, &Err(Unknown::NotAsked)));
    }
}

/// A few seconds without optimisation.
const ROUNDS: usize = 20_000;

/// Within the days of a job, or at either end of time.
fn moment(ask: &mut Ask) -> i64 {
    ask.one(&[0, 600, 1_440, 2_000, 2_880, 4_500, 10_000, i64::MIN, i64::MAX])
}

fn log(ask: &mut Ask) -> Log {
    let mut log = [None; MOST_ENTRIES];
    let lines = ask.one(&[1, 2, 3, 4, MOST_ENTRIES]);
    for place in log.iter_mut().take(lines) {
        let what = if ask.one(&[true, false]) {
            What::Dose(Mass::from_kilograms(ask.within(&limits::SALT)).unwrap())
        } else {
            let again = if ask.one(&[true, false]) { Some(ask.salinity()) } else { None };
            What::Reading(Reading { salt: ask.salinity(), again, instrument: ask.one(Instrument::ALL) })
        };
        *place = Some(Entry { when: moment(ask), what });
    }
    log
}

fn levels(ask: &mut Ask) -> Levels {
    Levels {
        over: ask.one(&[0.001, 0.01, 0.5, 0.9, -1.0]),
        cap: ask.one(&[0.1, 0.7, 1.0]),
        enough: ask.one(&[0.05, 0.75, 0.999]),
        slack: ask.one(&[0.0, 50.0, 1_000.0]),
        ..Levels::default()
    }
}

fn case(ask: &mut Ask) -> Case {
    macro_rules! maybe {
        ($x:expr) => {
            if ask.one(&[true, true, true, false]) { Some($x) } else { None }
        };
    }
    macro_rules! optional {
        ($x:expr) => {
            match ask.one(&[0, 1, 2, 2, 2, 2]) {
                0 => Optional::LeftOut,
                1 => Optional::Garbled,
                _ => Optional::Given($x),
            }
        };
    }
    macro_rules! tests {
        () => {{
            let sample = ask.sample();
            Tests {
                heat: maybe!(sample.temperature),
                ph: maybe!(sample.ph),
                alkalinity: maybe!(sample.alkalinity),
                hardness: maybe!(sample.hardness),
                cyanuric_acid: maybe!(sample.cyanuric_acid),
                chlorine: optional!(ask.chlorine()),
            }
        }};
    }
    let [low, target, high] = [(); 3].map(|()| maybe!(ask.salinity()));
    Case {
        volume: maybe!(Volume::from_cubic_metres(ask.within(&bounds::POOL)).unwrap()),
        method: maybe!(ask.one(Method::ALL)),
        doubt: optional!(Fraction::from_ratio(ask.within(&limits::DOUBT)).unwrap()),
        surface: maybe!(ask.one(Surface::ALL)),
        reading: optional!(ask.salinity()),
        again: optional!(ask.salinity()),
        instrument: maybe!(ask.one(Instrument::ALL)),
        read_at: optional!(moment(ask)),
        log: optional!(log(ask)),
        levels: optional!(levels(ask)),
        history: maybe!(ask.one(History::ALL)),
        band: Band::of(low, target, high).or(Band::of(None, target, None)).ok(),
        bag: Bag {
            size: maybe!(Mass::from_kilograms(ask.within(&limits::BAG_SIZE)).unwrap()),
            purity: maybe!(ask.purity()),
            in_hand: optional!(ask.one(&[0, 1, 2, 1_000, u32::MAX])),
            ..Bag::default()
        },
        water: tests!(),
        fill: tests!(),
        fill_salt: maybe!(ask.salinity()),
        cap: optional!(Fraction::from_ratio(ask.within(&limits::CAP)).unwrap()),
        ground: maybe!(ask.one(Ground::ALL)),
        products: maybe!(Products {
            acid: if ask.one(&[true, false]) {
                Acid::Hydrochloric(ask.acid_percent())
            } else {
                Acid::Bisulfate(ask.purity())
            },
            bleach: ask.bleach_trade(),
            calcium: ask.purity(),
            powder: if ask.one(&[true, false]) { ask.purity() } else { Purity::WHOLE },
        }),
        goals: {
            let goal = ask.goal();
            Goals {
                ph: maybe!(goal.ph),
                alkalinity: maybe!(goal.alkalinity),
                hardness: maybe!(goal.hardness),
                cyanuric_acid: maybe!(goal.cyanuric_acid),
                chlorine: maybe!(ask.chlorine()),
                garbled: ask.one(&[true, false, false, false]),
                water_unknown: ask.one(&[true, false, false, false]),
            }
        },
        ..Case::default()
    }
}
