//! What is proved beyond the daily test, because it takes a tool or a time of its own?

mod bench;
mod browser;
mod engines;
mod fuzz;
mod lighthouse;
mod mutants;
mod panics;
mod simulation;
mod supply;
mod vectors;

use crate::package;
use crate::shell::Steps;
use anyhow::{Context, Result, bail};

/// Proves what the first word says.
pub fn prove(words: &[&str]) -> Result<()> {
    match words {
        ["package"] => package::prove(&mut Steps::default()),
        ["vectors"] => vectors::run_and_compare(),
        ["fuzz"] => fuzz::fuzz(600),
        ["fuzz", seconds] => fuzz::fuzz(seconds.parse().context("how many seconds?")?),
        ["panics"] => panics::panics(),
        ["mutants"] => mutants::mutants(&mutants::SHARDS),
        ["mutants", shard] => mutants::mutants(&[shard]),
        ["simulation"] => simulation::run_many(),
        ["bench"] => bench::run(),
        ["engines"] => engines::run(""),
        ["engines", part] => engines::run(part),
        ["access"] => browser::access(),
        ["speed"] => browser::run("speed"),
        ["soak"] => browser::run("soak"),
        ["lighthouse"] => lighthouse::run(),
        ["supply"] => supply::run(),
        _ => bail!("nothing of that name can be proved: `cargo xtask help` lists what can"),
    }
}
