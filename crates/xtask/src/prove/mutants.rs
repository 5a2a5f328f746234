//! Does a check notice when chemistry or plan is changed?

use crate::{setup, shell};
use anyhow::{Context, Result, bail};
use std::process::Command;

const TOOL: &str = "cargo-mutants --version 27.1.0";

/// Each ends within an hour on two cores; together they are all.
pub const SHARDS: [&str; 6] = ["0/6", "1/6", "2/6", "3/6", "4/6", "5/6"];
const LEAST_CAUGHT: f64 = 0.9;

/// What is changed, and whose tests beside its own are to notice it. By cargo's own word, as the tool's would leave
/// them out while it tries the unchanged source.
const MUTATED: [(&str, &str); 2] = [("saltwright-chem", "mutants"), ("saltwright-plan", "evidence")];

/// Changes chemistry and plan, one place at a time, in each shard K of N (`K/N`, from 0); does a check notice?
/// Each shard is a sample of every file. A change that makes a loop endless is noticed by the clock. The unchanged
/// source goes first: where a check fails anyway, every change would count as noticed.
pub fn mutants(shards: &[&str]) -> Result<()> {
    let tool = setup::tool(TOOL)?;
    let folder = shell::target().join("mutants");
    let (mut caught, mut missed) = (0, Vec::new());
    for (shard, (changed, noticing)) in shards.iter().flat_map(|shard| MUTATED.map(|both| (shard, both))) {
        let mut command = Command::new(&tool);
        command.current_dir(shell::root()).args(["mutants", "--package", changed]);
        command.args(["--profile=mutants", "--jobs=2", "--timeout=60"]);
        command.args(["--sharding=round-robin", "--shard", shard, "--output"]).arg(&folder);
        command.args(["--", "--package", noticing, "--lib", "--test=mutants"]);
        // Two builds at a time, each into its own folder.
        command.env_remove("CARGO_TARGET_DIR").env("RUST_BACKTRACE", "0").env("SALTWRIGHT_ROUNDS", "400");
        command.env("SALTWRIGHT_VECTORS", shell::root().join("tests/vectors"));
        // 2: some were missed; 3: some took too long. Anything else is no result.
        let status = command.status().context("cannot start cargo-mutants")?;
        if !matches!(status.code(), Some(0 | 2 | 3)) {
            bail!("shard {shard} of the mutants of {changed} ended with {status}");
        }
        let lines = |name: &str| -> Result<Vec<String>> {
            let text = std::fs::read_to_string(folder.join("mutants.out").join(name))?;
            Ok(text.lines().map(String::from).collect())
        };
        caught += lines("caught.txt")?.len() + lines("timeout.txt")?.len();
        missed.extend(lines("missed.txt")?);
    }
    for survivor in &missed {
        println!("not noticed: {survivor}");
    }
    verdict(caught, missed.len())
}

fn verdict(caught: usize, missed: usize) -> Result<()> {
    let part = caught as f64 / (caught + missed) as f64;
    println!("{caught} changes noticed, {missed} not: {:.1} %", 100.0 * part);
    // Not even one is no proof either.
    if part >= LEAST_CAUGHT { Ok(()) } else { bail!("fewer than {:.0} % were noticed", 100.0 * LEAST_CAUGHT) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nine_in_ten_are_enough_and_none_at_all_is_not() {
        assert!(verdict(9, 1).is_ok() && verdict(89, 11).is_err() && verdict(0, 0).is_err());
    }

    #[test]
    fn the_shards_are_all_there_is() {
        let all: Vec<_> = (0..SHARDS.len()).map(|k| format!("{k}/{}", SHARDS.len())).collect();
        assert_eq!(SHARDS.as_slice(), all);
    }
}
