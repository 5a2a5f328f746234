//! How long do an index, a treatment, a recipe and a decision take, here, as wasm, and in PHREEQC?
//!
//! One run of everything on the same waters, so that what else the machine does weighs on all alike.

use crate::setup;
use crate::shell::{self, cargo, find};
use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_bindgen_cli::wasm_bindgen;

/// As cargo takes it, with the page's own profile: a measurement in a workspace of its own.
const BENCH: &str = "--quiet --release --manifest-path tests/bench/Cargo.toml --config Cargo.toml";
const WASM: &str = "wasm32-unknown-unknown";
const LIBRARY: &str = "phreeqpython==1.6.2";
const WATERS: &str = "tests/vectors/saturation-index.csv";

const MOST_NS_OF_AN_INDEX_IN_WASM: f64 = 1_500.0;
const MOST_NS_OF_A_DECISION_IN_WASM: f64 = 500_000.0;
const LEAST_TIMES_PHREEQC: f64 = 500.0;

/// What a program printed: names with numbers, nanoseconds for the most part.
type Times = BTreeMap<String, f64>;

/// Measures, prints the table, and fails where it falls short of what was asked for.
pub fn run() -> Result<()> {
    let native = times(&mut cargo(&format!("run {BENCH}")))?;
    let phreeqc =
        times(Command::new(python()?).args(["tests/bench/phreeqc.py", WATERS]).current_dir(shell::root()))?;
    let script = script()?;
    let (node, chromium) = (node(&script)?, chromium(&script)?);

    println!(
        "{:<12}{:>12}{:>12}{:>12}{:>14}{:>12}",
        "ns each", "natively", "Node", "Chromium", "PHREEQC", "times"
    );
    for name in ["index", "treatment", "recipe", "powers", "decision", "pays"] {
        print!("{name:<12}{:>12.0}{:>12.0}{:>12.0}", native[name], node[name], chromium[name]);
        match phreeqc.get(name) {
            Some(theirs) => println!("{theirs:>14.0}{:>12.0}", theirs / native[name]),
            None => println!("{:>14}{:>12}", "-", "-"),
        }
    }
    let powers = |times: &Times| 100.0 * times["powers"] / times["index"];
    println!(
        "powers of ten are {:.0} % of an index natively, {:.0} % in Node",
        powers(&native),
        powers(&node)
    );
    println!("asked water by water, PHREEQC takes {:.0} ns for an index", phreeqc["single"]);
    println!("the indices of PHREEQC lie within {:.1e} of the stored ones", phreeqc["apart"]);

    let slowest = node["index"].max(chromium["index"]);
    let ratio = phreeqc["index"] / native["index"];
    if phreeqc["apart"] > 1e-4 {
        bail!("PHREEQC solved other waters than the stored ones");
    }
    if slowest > MOST_NS_OF_AN_INDEX_IN_WASM {
        bail!("an index takes {slowest:.0} ns as wasm, more than {MOST_NS_OF_AN_INDEX_IN_WASM}");
    }
    let decision = node["decision"].max(chromium["decision"]);
    if decision > MOST_NS_OF_A_DECISION_IN_WASM {
        bail!("a decision takes {decision:.0} ns as wasm, more than {MOST_NS_OF_A_DECISION_IN_WASM}");
    }
    if ratio < LEAST_TIMES_PHREEQC {
        bail!("an index is {ratio:.0} times as quick as PHREEQC's, less than {LEAST_TIMES_PHREEQC}");
    }
    Ok(())
}

fn times(command: &mut Command) -> Result<Times> {
    let shown = command.get_program().to_string_lossy().into_owned();
    let done = command.output().with_context(|| format!("cannot start `{shown}`"))?;
    if !done.status.success() {
        bail!("`{shown}` ended with {}\n{}", done.status, String::from_utf8_lossy(&done.stderr));
    }
    read(String::from_utf8_lossy(&done.stdout).trim()).with_context(|| format!("`{shown}` printed no times"))
}

fn read(printed: &str) -> Option<Times> {
    let pairs = printed.lines().map(|line| line.split_once(' '));
    pairs.map(|pair| pair.and_then(|(name, x)| Some((name.to_string(), x.trim().parse().ok()?)))).collect()
}

/// A Python of our own that has PHREEQC.
fn python() -> Result<PathBuf> {
    let folder = shell::target().join("venv");
    let python = folder.join("bin/python");
    if !python.exists() {
        shell::run(Command::new("python3").args(["-m", "venv"]).arg(&folder))?;
    }
    shell::run(Command::new(&python).args(["-m", "pip", "install", "--quiet", LIBRARY]))?;
    Ok(python)
}

/// Loader, module, waters and stopwatch in one script, the same for Node and for a page.
fn script() -> Result<PathBuf> {
    shell::run(&mut cargo(&format!("build {BENCH} --lib --target {WASM}")))?;
    let folder = shell::target().join("bench");
    let input = shell::target().join(WASM).join("release/bench.wasm");
    let (from, to) = (input.to_string_lossy(), folder.to_string_lossy());
    wasm_bindgen::run_cli_with_args([
        "wasm-bindgen",
        "--target=no-modules",
        "--no-typescript",
        "--remove-name-section",
        "--remove-producers-section",
        "--out-dir",
        &to,
        &from,
    ])?;
    let loader = fs::read_to_string(folder.join("bench.js"))?;
    let module = BASE64_STANDARD.encode(fs::read(folder.join("bench_bg.wasm"))?);
    let waters = fs::read_to_string(shell::root().join(WATERS))?;
    let stopwatch = fs::read_to_string(shell::root().join("tests/bench/wasm.js"))?;
    let script = folder.join("stopwatch.js");
    let texts = format!("const MODULE = {module:?};\nconst WATERS = {waters:?};");
    fs::write(&script, format!("{loader}\n{texts}\n{stopwatch}"))?;
    Ok(script)
}

/// What Node prints of the script.
fn node(script: &Path) -> Result<Times> {
    times(Command::new(find("node").context("no `node` on the path")?).arg(script))
}

/// A page with nothing but the script; what it leaves in its body comes back as text.
fn chromium(script: &Path) -> Result<Times> {
    let program = setup::chromium().context("no Chromium on the path")?;
    let folder = script.parent().context("a script lies in a folder")?;
    let page = folder.join("stopwatch.html");
    fs::write(&page, "<!doctype html><body><script src=\"stopwatch.js\"></script></body>")?;
    let profile = folder.join("profile");
    if profile.exists() {
        fs::remove_dir_all(&profile)?;
    }
    let mut command = Command::new(program);
    command
        .args(setup::QUIET.split_whitespace())
        .arg("--dump-dom")
        .arg(format!("--user-data-dir={}", profile.display()));
    command.arg(format!("file://{}", page.display()));
    let done = command.output()?;
    let page = String::from_utf8_lossy(&done.stdout);
    let body = page.split_once("<body>").and_then(|(_, rest)| rest.split_once("</body>"));
    body.and_then(|(body, _)| read(body.trim())).with_context(|| format!("the page ended as\n{page}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_table_of_times_is_none() {
        assert_eq!(read("index 850.5\nrecipe 9\n").map(|t| t["index"]), Some(850.5));
        assert_eq!(read("index\n"), None);
        assert_eq!(read("index fast\n"), None);
    }
}
