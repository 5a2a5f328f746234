//! What is proved beyond the daily test, because it takes a tool or a time of its own?

use crate::shell::{self, Steps, cargo, run};
use crate::{
    package, prove_bench, prove_browser, prove_engines, prove_lighthouse, prove_simulation, prove_supply,
    prove_vectors,
};
use anyhow::{Context, Result, bail};
use std::path::PathBuf;
use std::process::Command;

const FUZZ: &str = "cargo-fuzz --version 0.13.2";
const MUTANTS: &str = "cargo-mutants --version 27.1.0";

/// Proves what the first word says.
pub fn prove(words: &[&str]) -> Result<()> {
    match words {
        ["package"] => package::prove(&mut Steps::default()),
        ["vectors"] => prove_vectors::run_and_compare(),
        ["fuzz"] => fuzz(600),
        ["fuzz", seconds] => fuzz(seconds.parse().context("how many seconds?")?),
        ["panics"] => panics(),
        ["mutants"] => mutants(&SHARDS),
        ["mutants", shard] => mutants(&[shard]),
        ["simulation"] => prove_simulation::run_many(),
        ["bench"] => prove_bench::run(),
        ["engines"] => prove_engines::run(""),
        ["engines", part] => prove_engines::run(part),
        ["access"] => prove_browser::access(),
        ["speed"] => prove_browser::run("speed"),
        ["life"] => prove_browser::run("life"),
        ["lighthouse"] => prove_lighthouse::run(),
        ["supply"] => prove_supply::run(),
        _ => bail!("nothing of that name can be proved: `cargo xtask help` lists what can"),
    }
}

/// Each target for so long. What breaks one ends it, and lies in `tests/fuzz/artifacts`.
fn fuzz(seconds: u32) -> Result<()> {
    let tool = tool(FUZZ)?;
    for target in ["chem", "answer", "outside"] {
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

/// That the chemistry's solver cannot panic: a program that links only if the compiler has proved it. The same
/// program with a panic in it must not link, or the proof were none.
fn panics() -> Result<()> {
    let words = "run --quiet --release --manifest-path tests/panics/Cargo.toml";
    run(&mut cargo(words))?;
    let broken = cargo(&format!("{words} --features broken")).output()?;
    let said = String::from_utf8_lossy(&broken.stderr);
    if broken.status.success() || !said.contains("detected panic in function `broken`") {
        bail!("a function that panics went unnoticed:\n{said}");
    }
    Ok(())
}

/// Each ends within an hour on two cores; together they are all.
const SHARDS: [&str; 6] = ["0/6", "1/6", "2/6", "3/6", "4/6", "5/6"];
const LEAST_CAUGHT: f64 = 0.9;

/// What is changed, and whose tests beside its own are to notice it. By cargo's own word, as the tool's would leave
/// them out while it tries the unchanged source.
const MUTATED: [(&str, &str); 2] = [("saltwright-chem", "mutants"), ("plan", "evidence")];

/// Changes chemistry and plan, one place at a time, in each shard K of N (`K/N`, from 0); does a check notice?
/// Each shard is a sample of every file. A change that makes a loop endless is noticed by the clock. The unchanged
/// source goes first: where a check fails anyway, every change would count as noticed.
fn mutants(shards: &[&str]) -> Result<()> {
    let tool = tool(MUTANTS)?;
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

/// A tool of cargo's, put where nothing else on the machine changes.
pub fn tool(words: &str) -> Result<PathBuf> {
    let folder = shell::target().join("tools");
    let name = words.split(' ').next().unwrap_or(words);
    let path = folder.join("bin").join(name);
    if !path.exists() {
        run(cargo("install --quiet --locked --root").arg(&folder).args(words.split(' ')))?;
    }
    Ok(path)
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
