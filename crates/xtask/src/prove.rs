//! What is proved beyond the daily test, because it takes a tool or a time of its own?

use crate::shell::{self, cargo, run};
use crate::{prove_bench, prove_vectors};
use anyhow::{Context, Result, bail};
use std::path::PathBuf;
use std::process::Command;

const FUZZ: &str = "cargo-fuzz --version 0.13.2";
const MUTANTS: &str = "cargo-mutants --version 27.1.0";

/// Proves what the first word says.
pub fn prove(words: &[&str]) -> Result<()> {
    match words {
        ["vectors"] => prove_vectors::run_and_compare(),
        ["fuzz"] => fuzz(600),
        ["fuzz", seconds] => fuzz(seconds.parse().context("how many seconds?")?),
        ["mutants"] => mutants("0/1"),
        ["mutants", shard] => mutants(shard),
        ["bench"] => prove_bench::run(),
        _ => bail!("nothing of that name can be proved: vectors, fuzz, mutants or bench"),
    }
}

/// Both targets for so long each. What breaks one ends it, and lies in `tests/fuzz/artifacts`.
fn fuzz(seconds: u32) -> Result<()> {
    let tool = tool(FUZZ)?;
    for target in ["chem", "answer"] {
        let corpus = shell::target().join("fuzz-corpus").join(target);
        std::fs::create_dir_all(&corpus)?;
        let mut command = Command::new(&tool);
        command.current_dir(shell::root()).env("RUSTUP_TOOLCHAIN", "nightly");
        // Without a sanitizer: nothing here is unsafe, and it goes several times as fast.
        command.args(["fuzz", "run", "--fuzz-dir=tests/fuzz", "--sanitizer=none", "--target-dir"]);
        command.arg(shell::target().join("fuzz")).arg(target).arg(corpus).arg("--");
        command.args([
            format!("-max_total_time={seconds}"),
            "-timeout=10".into(),
            "-print_final_stats=1".into(),
        ]);
        run(&mut command)?;
    }
    Ok(())
}

/// Changes the chemistry, one place at a time, in shard K of N (`K/N`, from 0); does a check notice?
/// The list of those that none noticed lies in `target/mutants.out/missed.txt`.
fn mutants(shard: &str) -> Result<()> {
    let tool = tool(MUTANTS)?;
    let mut command = Command::new(tool);
    command.current_dir(shell::root());
    command.args(["mutants", "--package=chem", "--test-package=chem,evidence", "--jobs=1"]);
    // A change that makes a loop endless is noticed by the clock. The unchanged source goes first: where a
    // check fails anyway, every change would count as noticed.
    command.args(["--timeout=60", "--sharding=round-robin", "--shard", shard, "--output"]);
    command.arg(shell::target()).args(["--", "--lib"]);
    command.args(["vectors", "properties", "laws", "sweep"].map(|test| format!("--test={test}")));
    run(&mut command)
}

/// A tool of cargo's, put where nothing else on the machine changes.
fn tool(words: &str) -> Result<PathBuf> {
    let folder = shell::target().join("tools");
    let name = words.split(' ').next().unwrap_or(words);
    let path = folder.join("bin").join(name);
    if !path.exists() {
        run(cargo("install --quiet --locked --root").arg(&folder).args(words.split(' ')))?;
    }
    Ok(path)
}
