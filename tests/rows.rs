//! Which whole cases are held fast? One row each: what is typed, what must be said.
//!
//! Amounts and shares are worked by hand from the mass balance (source: arithmetic) unless a row says otherwise;
//! the index figures of the demo are PHREEQC's for the same waters. Bags to buy and to add, `found.*`, `dosing.*`
//! and `risk.*` are this project's own model, whose rows are held in `vectors/staging.csv`.
#![allow(dead_code)] // Each test that includes this reads its own part of a row.

/// A case: its form as in a link, the outputs it must show, the states that must hold (`!`: must not).
pub struct Row {
    /// Shown when it fails.
    pub name: &'static str,
    /// The form, `name=text` a part.
    pub form: &'static [&'static str],
    /// `output=text` a part; `output=–` where nothing may be shown.
    pub shows: &'static [&'static str],
    /// States.
    pub holds: &'static str,
}

mod days;
mod dose;
pub mod everything;
mod faults;
mod ready;
mod running;
mod schedule;
mod treat;
mod volume;
mod water;

const BALANCED: &str = "water.ph=7.5 water.ta=110 water.ch=250 water.cya=40";

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

/// The form of a row, its parts put together.
pub fn form(parts: &[&str]) -> form::Form {
    let pairs = parts.iter().flat_map(|part| part.split(' ')).map(|pair| pair.split_once('=').unwrap());
    form::Form(pairs.map(|(name, text)| (name.to_string(), text.to_string())).collect())
}
