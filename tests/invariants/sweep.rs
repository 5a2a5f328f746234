//! Is there a number, however odd, at which the chemistry or the plan panics, or answers with no number?
//!
//! Drawn anew at every run from the same seeds: the whole typed domain, corners first. The same
//! questions go to a fuzzer in `cargo xtask prove fuzz`.

use evidence::any_case::case;
use evidence::ask::Ask;
use evidence::draw::Draw;
use evidence::finite::finite;
use evidence::questions::QUESTIONS;
use plan::water::treatment::{Start, TreatmentInput, treat};

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
        finite((case, rise), treat(&TreatmentInput::of(&case), rise, Start::Today));
    }
}

/// A few seconds without optimisation.
const ROUNDS: usize = 20_000;
