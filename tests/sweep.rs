//! Is there a number, however odd, at which the chemistry or the plan panics, or answers with no number?
//!
//! Drawn anew at every run from the same seeds: the whole typed domain, corners first. The same
//! questions go to a fuzzer in `cargo xtask prove fuzz`.

#[path = "sweep/questions.rs"]
mod questions;

use chem::{Fraction, Mass, Purity, bounds};
use plan::{Bag, Band, Case, Goals, Ground, History, Instrument, Method, Optional, Products, Surface, Tests};
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
        finite((case, rise), plan::treat::treat(&case, rise));
    }
}

/// A few seconds without optimisation.
const ROUNDS: usize = 20_000;

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
                cyanurate: maybe!(sample.cyanurate),
            }
        }};
    }
    let [low, target, high] = [(); 3].map(|()| maybe!(ask.salinity()));
    Case {
        volume: maybe!(ask.volume()),
        method: maybe!(ask.one(Method::ALL)),
        surface: maybe!(ask.one(Surface::ALL)),
        reading: optional!(ask.salinity()),
        instrument: maybe!(ask.one(Instrument::ALL)),
        history: maybe!(ask.one(History::ALL)),
        band: Band::of(low, target, high).or(Band::of(None, target, None)).ok(),
        bag: Bag {
            size: maybe!(Mass::from_kilograms(ask.within(&bounds::BAG_SIZE)).unwrap()),
            purity: maybe!(ask.purity()),
            in_hand: optional!(ask.one(&[0, 1, 2, 1_000, u32::MAX])),
            ..Bag::default()
        },
        water: tests!(),
        fill: tests!(),
        fill_salt: maybe!(ask.salinity()),
        cap: optional!(Fraction::from_ratio(ask.within(&bounds::CAP)).unwrap()),
        ground: maybe!(ask.one(Ground::ALL)),
        products: maybe!(Products {
            acid: ask.acid_percent(),
            calcium: ask.purity(),
            powder: if ask.one(&[true, false]) { ask.purity() } else { Purity::WHOLE },
        }),
        goals: maybe!({
            let goal = ask.goal();
            Goals {
                ph: maybe!(goal.ph),
                alkalinity: maybe!(goal.alkalinity),
                hardness: maybe!(goal.hardness),
                cyanurate: maybe!(goal.cyanurate),
            }
        }),
    }
}
