//! Does the page hold in Chromium, in Firefox and in WebKit?

use crate::shell::{Steps, cargo};
use crate::{build, serve, setup};
use anyhow::{Context, Result, ensure};
use std::path::PathBuf;
use std::process::Command;

const DRIVER: &str = "geckodriver --version 0.37.1";
const ENGINES: [&str; 3] = ["chromium", "firefox", "webkit"];

/// How a test tells what it leaves without a judgement, and that this is all there is of it.
const UNJUDGED: &str = "NOT JUDGED: ";
const WHOLE: &str = "all of it: ";

/// Runs each test of the page with this part in its name in each engine. What failed is told at once, the table
/// line by line; notes and sums come last.
pub fn run(part: &str) -> Result<()> {
    let mut steps = Steps::default();
    let chromium = steps.take("browser and driver", setup::browser)?;
    let webkit = steps.take("other browsers", setup::more_browsers)?;
    let firefox = steps.take("driver of Firefox", || setup::tool(DRIVER))?;
    let site = build::make(&mut steps)?;
    let server = serve::start(&site.folder, 0)?;
    let here = Place { chromium, firefox, webkit, site: site.folder.clone(), address: server.address() };

    let tests = here.tests(part)?;
    let mut notes = Vec::new();
    let mut sums = ENGINES.map(|_| Sum::default());
    println!("\n{:<80}{}", "", ENGINES.map(|engine| format!("{engine:<20}")).concat());
    for test in &tests {
        print!("{test:<80}");
        let mut complaints = Vec::new();
        for (engine, sum) in ENGINES.iter().zip(&mut sums) {
            let outcome = here.run(engine, test)?;
            print!("{:<20}", outcome.cell(&mut notes));
            sum.count(&outcome);
            complaints.extend(outcome.complaint.map(|text| format!("{engine}: {text}")));
        }
        println!();
        complaints.iter().for_each(|complaint| println!("{complaint}"));
    }
    println!();
    for (number, note) in notes.iter().enumerate() {
        println!("{}  not judged: {note}", number + 1);
    }
    for (engine, sum) in ENGINES.iter().zip(&sums) {
        println!(
            "{engine}: {} pass, {} of them in part, {} not judged, {} fail",
            sum.pass, sum.part, sum.not, sum.fail
        );
    }
    let failed: usize = sums.iter().map(|sum| sum.fail).sum();
    ensure!(failed == 0, "{failed} failed");
    Ok(())
}

/// Where everything is that a test must know of.
struct Place {
    chromium: PathBuf,
    firefox: PathBuf,
    webkit: PathBuf,
    site: PathBuf,
    address: String,
}

impl Place {
    fn cargo(&self, words: &str) -> Command {
        let mut command = cargo(&format!("test --quiet --package evidence --test browser -- {words}"));
        command.env("SALTWRIGHT_SITE", &self.site).env("SALTWRIGHT_URL", &self.address);
        command
            .env("CHROMEDRIVER", &self.chromium)
            .env("GECKODRIVER", &self.firefox)
            .env("WEBKITDRIVER", &self.webkit);
        command
    }

    /// All with this part in their name but what is only measured.
    fn tests(&self, part: &str) -> Result<Vec<String>> {
        let measured = self.list("--ignored")?;
        let mut tests = self.list("")?;
        tests.retain(|test| test.contains(part) && !measured.contains(test));
        ensure!(!tests.is_empty(), "there is no test of the page with `{part}` in its name");
        Ok(tests)
    }

    fn list(&self, which: &str) -> Result<Vec<String>> {
        let done = self.cargo(format!("--list --format terse {which}").trim()).output()?;
        ensure!(done.status.success(), "the tests of the page:\n{}", String::from_utf8_lossy(&done.stderr));
        let list = String::from_utf8(done.stdout)?;
        Ok(list.lines().filter_map(|line| line.strip_suffix(": test")).map(String::from).collect())
    }

    fn run(&self, engine: &str, test: &str) -> Result<Outcome> {
        let mut command = self.cargo(&format!("--test-threads=1 --exact {test}"));
        let done = command.env("SALTWRIGHT_ENGINE", engine).output().context("cannot start cargo")?;
        let (out, err) = (String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
        Ok(Outcome::read(engine, done.status.success(), &out, &err))
    }
}

/// What came of a test in an engine.
struct Outcome {
    unjudged: Vec<String>,
    whole: bool,
    complaint: Option<String>,
}

impl Outcome {
    fn read(engine: &str, passed: bool, out: &str, err: &str) -> Self {
        // The runner's own sign for a test may stand before it in the line.
        let told = err.lines().filter_map(|line| line.split_once(UNJUDGED)).map(|(_, what)| what);
        let mut unjudged: Vec<_> = told.clone().map(|what| format!("{engine}, {what}")).collect();
        unjudged.dedup();
        let ran = out.contains("1 passed");
        let complaint = (!passed || !ran).then(|| format!("{out}\n{err}"));
        Self { unjudged, whole: told.clone().any(|what| what.starts_with(WHOLE)), complaint }
    }

    /// As it stands in the table, with the numbers of its notes.
    fn cell(&self, notes: &mut Vec<String>) -> String {
        let mut cell = String::from(match self {
            Self { complaint: Some(_), .. } => "FAILS",
            Self { whole: true, .. } => "not judged",
            _ => "passes",
        });
        for note in &self.unjudged {
            let known = notes.iter().position(|known| known == note);
            let number = known.unwrap_or_else(|| {
                notes.push(note.clone());
                notes.len() - 1
            });
            cell += &format!(" {}", number + 1);
        }
        cell
    }
}

#[derive(Default)]
struct Sum {
    pass: usize,
    part: usize,
    not: usize,
    fail: usize,
}

impl Sum {
    fn count(&mut self, outcome: &Outcome) {
        match outcome {
            Outcome { complaint: Some(_), .. } => self.fail += 1,
            Outcome { whole: true, .. } => self.not += 1,
            _ => {
                self.pass += 1;
                self.part += usize::from(!outcome.unjudged.is_empty());
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_judged_is_no_pass_and_what_did_not_run_is_a_failure() {
        let passed = "test result: ok. 1 passed; 0 failed";
        let mut notes = Vec::new();
        let mut cell = |passed, out, err| Outcome::read("webkit", passed, out, err).cell(&mut notes);
        assert_eq!(cell(true, passed, ""), "passes");
        assert_eq!(cell(true, passed, ".NOT JUDGED: its colour: it is dark\n"), "passes 1");
        assert_eq!(cell(true, passed, "NOT JUDGED: all of it: it is dark\n"), "not judged 2");
        assert_eq!(cell(true, passed, "NOT JUDGED: its colour: it is dark\n"), "passes 1");
        assert_eq!(cell(false, "", ""), "FAILS");
        assert_eq!(cell(true, "test result: ok. 0 passed; 0 failed", ""), "FAILS");
    }
}
