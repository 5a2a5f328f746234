//! What becomes of many pools if people do as they are told?

use crate::shell::{cargo, run};
use anyhow::Result;

/// As many as the reference simulation has.
const POOLS: &str = "200000";

/// Prints the table for the README; fails where it is not the reference's within four standard errors.
pub fn run_many() -> Result<()> {
    let words = "test --release --package evidence --test model -- --nocapture";
    run(cargo(words).env("SALTWRIGHT_POOLS", POOLS))
}
