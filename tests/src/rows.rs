//! Which whole cases are held fast? One row each: what is typed, what must be said.
//!
//! Amounts and shares are worked by hand from the mass balance (source: arithmetic) unless a row says otherwise;
//! the index figures of the demo are PHREEQC's for the same waters. Bags to buy and to add, `found.*`, `dosing.*`
//! and `risk.*` are this project's own model, whose rows are held in `vectors/staging.csv`.

pub use crate::row::{Row, form};

mod days;
mod dose;
mod faults;
mod ready;
mod running;
mod schedule;
mod treat;
mod volume;
mod water;

/// All cases.
pub fn all() -> impl Iterator<Item = &'static Row> {
    [
        dose::ROWS,
        water::ROWS,
        treat::ROWS,
        days::ROWS,
        ready::ROWS,
        ready::CHANGES,
        running::ROWS,
        schedule::ROWS,
        volume::ROWS,
        faults::ROWS,
    ]
    .into_iter()
    .flatten()
}
