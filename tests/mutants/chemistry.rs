//! Does any check of the chemistry notice that it was changed? All of them in one program.
//!
//! Not of the daily test, which runs each where it lies: `cargo xtask prove mutants` builds this thousands of
//! times over, and so it knows neither plan nor page.

#[path = "../published/checks.rs"]
mod checks;
#[path = "../invariants/chemistry.rs"]
mod chemistry;
#[path = "../invariants/doses.rs"]
mod doses;
#[path = "../published/row.rs"]
mod row;
#[path = "../published/vectors.rs"]
mod vectors;

use evidence::ask::Ask;
use evidence::draw::Draw;
use evidence::questions::QUESTIONS;

/// The daily sweep's first rounds.
#[test]
fn every_function_of_the_chemistry_answers_with_numbers() {
    for question in QUESTIONS {
        let mut draw = Draw(5);
        (0..1_000).for_each(|_| question(&mut Ask(&mut draw)));
    }
}
