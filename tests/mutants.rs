//! Does any check of the chemistry notice that it was changed? All of them in one program.
//!
//! Not of the daily test, which runs each where it lies: `cargo xtask prove mutants` builds this thousands of
//! times over, and so it knows neither plan nor page.

mod draw;
#[path = "laws.rs"]
mod laws;
#[path = "sweep/questions.rs"]
mod questions;
#[path = "vectors.rs"]
mod vectors;

use draw::Draw;
use questions::QUESTIONS;
use questions::ask::{Ask, Source};

impl Source for Draw {
    fn word(&mut self) -> u64 {
        (self.next() * (1u64 << 53) as f64) as u64
    }
}

/// The daily sweep's first rounds.
#[test]
fn every_function_of_the_chemistry_answers_with_numbers() {
    for question in QUESTIONS {
        let mut draw = Draw(5);
        (0..1_000).for_each(|_| question(&mut Ask(&mut draw)));
    }
}
