//! What if chemistry and decision were written plainly in JavaScript: the same figures, how quickly, in how many bytes?
//!
//! Both sides hold the same functions, stand in one script and are timed turn about. No bar but one: what is timed must
//! agree, or the comparison would be of two different things. That is one job of three readings over all waters: salt by
//! weight, water to be replaced and readings that contradict each other are written on both sides and not compared.

use crate::prove_bench::{Times, chromium, folder, node, script};
use crate::shell::{self, run};
use crate::{build, package, sizes};
use anyhow::{Context, Result, ensure};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const PLAIN: &str = "tests/bench/plain";
/// In there, what goes round the waters: no part of the plan.
const ROUNDS: &str = "bench.js";
/// The files that `PLAIN` was written from, whole: some of them hold more than is compared.
const OURS: [(&str, &str); 2] = [
    ("crates/chem/src", "bounds density equilibrium recipe salt speciation species treatment units water"),
    (
        "crates/plan/src",
        "band choice course decide dilute dosing estimate filter job mixture odd pays policy spread stage",
    ),
];
const NAMES: [&str; 6] = ["index", "treatment", "recipe", "powers", "decision", "pays"];

/// Two libraries of exponentials differ in the last digit, and a difference of near equals shows it magnified.
const MOST_APART: f64 = 1e-9;

/// Measures both sides, prints the tables, and fails where they disagree.
pub fn run_both() -> Result<()> {
    let tools = package::tools("package-tools", package::TOOLS)?;
    let whole = ["--bundle", "--format=iife", "--global-name=plain"];
    let plain = minified(&tools, &shell::root().join(PLAIN).join(ROUNDS), &whole)?;
    let script = script(&plain)?;
    let checked = |engine: &str, times: Times| -> Result<Times> {
        println!("{engine}: {}", agreement(&times).with_context(|| format!("in {engine}"))?);
        Ok(times)
    };
    let engines = [checked("Node", node(&script)?)?, checked("Chromium", chromium(&script)?)?];

    println!(
        "{:<12}{:>14}{:>12}{:>8}{:>17}{:>12}{:>8}",
        "ns each", "Node: wasm", "plain", "times", "Chromium: wasm", "plain", "times"
    );
    for name in NAMES.iter().chain(&["first"]) {
        print!("{name:<12}");
        for (times, width) in engines.iter().zip([14, 17]) {
            let (ours, theirs) = (times[*name], times[&format!("plain.{name}")]);
            print!("{ours:>width$.0}{theirs:>12.0}{:>8.1}", theirs / ours);
        }
        println!();
    }
    let calls = engines.each_ref().map(|times| times["call"]);
    println!(
        "first is the very first decision; an empty call into wasm takes {:.0} and {:.0} ns",
        calls[0], calls[1]
    );

    let loader = minified(&tools, &folder().join("bench.js"), &[])?;
    let module = fs::read(folder().join("bench_bg.wasm"))?;
    let parts = [("wasm", module.as_slice()), ("its loader", loader.as_bytes()), ("plain", plain.as_bytes())];
    println!("{:<12}{:>10}{:>10}", "bytes", "as it is", "brotli");
    for (name, bytes) in parts {
        println!("{name:<12}{:>10}{:>10}", bytes.len(), sizes::brotli(bytes)?.len());
    }

    let mut plain = build::files(&shell::root().join(PLAIN))?;
    plain.retain(|path| !path.ends_with(ROUNDS));
    let ours = OURS.iter().flat_map(|(room, names)| {
        names.split(' ').map(move |name| shell::root().join(room).join(name).with_extension("rs"))
    });
    println!(
        "lines of code in the files compared: {} of Rust, {} of JavaScript",
        lines(ours)?,
        lines(plain)?
    );
    Ok(())
}

/// How far the two sides lie apart at most, and over how many figures; an error beyond what two libraries explain.
fn agreement(times: &Times) -> Result<String> {
    let mut told = String::from("apart by");
    for name in NAMES {
        let (apart, answers) = (times[&format!("apart.{name}")], times[&format!("answers.{name}")]);
        ensure!(
            apart <= MOST_APART,
            "{name} in plain JavaScript lies {apart:e} off, more than {MOST_APART:e}"
        );
        // Nothing agrees with nothing.
        ensure!(answers > 400.0, "{name} has only {answers} figures to compare");
        told.push_str(&format!(" {apart:.0e} ({name}, {answers})"));
    }
    Ok(told)
}

/// The script as a page would have it.
fn minified(tools: &Path, from: &Path, options: &[&str]) -> Result<String> {
    let to = shell::target().join("bench-minified.js");
    let mut bundler = Command::new(tools.join("esbuild"));
    bundler.arg(from).args(["--minify", "--charset=utf8", "--log-level=warning"]).args(options);
    run(bundler.arg(format!("--outfile={}", to.display())))?;
    Ok(fs::read_to_string(to)?)
}

/// Lines that are neither empty nor a comment nor a test.
fn lines(files: impl IntoIterator<Item = PathBuf>) -> Result<usize> {
    let mut all = 0;
    for path in files {
        let text = fs::read_to_string(&path).with_context(|| path.display().to_string())?;
        all += lines_of(&text);
    }
    Ok(all)
}

fn lines_of(text: &str) -> usize {
    let code = text.lines().map(str::trim).take_while(|line| *line != "#[cfg(test)]");
    code.filter(|line| !line.is_empty() && !["//", "/*"].iter().any(|sign| line.starts_with(sign))).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn times(apart: f64, answers: f64) -> Times {
        let both = |name| [(format!("apart.{name}"), apart), (format!("answers.{name}"), answers)];
        NAMES.into_iter().flat_map(both).collect()
    }

    #[test]
    fn sides_that_disagree_or_say_nothing_are_refused() {
        assert!(agreement(&times(1e-12, 465.0)).is_ok());
        assert!(agreement(&times(2e-9, 465.0)).is_err());
        assert!(agreement(&times(f64::INFINITY, 465.0)).is_err());
        assert!(agreement(&times(0.0, 0.0)).is_err());
    }

    #[test]
    fn comments_and_tests_are_no_code() {
        assert_eq!(lines_of("//! Why?\n\n/** So. */\nlet x = 1; // one\n}\n#[cfg(test)]\nmod tests {}\n"), 2);
    }
}
