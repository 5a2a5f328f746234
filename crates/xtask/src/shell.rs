//! Where does everything lie, and how does a verb run another program?

use anyhow::{Context, Result, bail};
use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

/// The folder of the workspace.
pub fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

/// Cargo's output folder; `CARGO_TARGET_DIR` moves it, and with it all that the verbs make.
pub fn target() -> PathBuf {
    let folder = std::env::var_os("CARGO_TARGET_DIR").unwrap_or_else(|| "target".into());
    let folder = root().join(folder);
    folder.canonicalize().unwrap_or(folder)
}

/// Where cargo keeps what it fetched.
pub fn cargo_home() -> PathBuf {
    let given = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    given.unwrap_or_else(|| std::env::home_dir().unwrap_or_default().join(".cargo"))
}

/// A folder of `target` with nothing in it.
pub fn emptied(name: &str) -> Result<PathBuf> {
    let folder = target().join(name);
    if folder.exists() {
        fs::remove_dir_all(&folder)?;
    }
    fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// The files in a folder and in those within, by name.
pub fn files(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    for path in files_and_folders(folder)? {
        if path.is_dir() { found.extend(files(&path)?) } else { found.push(path) }
    }
    Ok(found)
}

pub fn files_and_folders(folder: &Path) -> Result<Vec<PathBuf>> {
    let entries = fs::read_dir(folder).with_context(|| folder.display().to_string())?;
    let mut found = entries.map(|entry| Ok(entry?.path())).collect::<Result<Vec<_>>>()?;
    found.sort();
    Ok(found)
}

/// The cargo that runs us, with these words, split at spaces.
pub fn cargo(words: &str) -> Command {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(program);
    command.args(words.split(' ')).current_dir(root()).env("CARGO_TARGET_DIR", target());
    command
}

/// Runs to the end; any exit but success is an error that shows the command.
pub fn run(command: &mut Command) -> Result<()> {
    let shown = shown(command);
    let status = command.status().with_context(|| format!("cannot start `{shown}`"))?;
    if !status.success() {
        bail!("`{shown}` ended with {status}");
    }
    Ok(())
}

/// Runs to the end without a word; did it succeed?
pub fn succeeds(command: &mut Command) -> bool {
    command.output().is_ok_and(|done| done.status.success())
}

/// Where on the search path is this program?
pub fn find(program: &str) -> Option<PathBuf> {
    let name = format!("{program}{}", std::env::consts::EXE_SUFFIX);
    std::env::split_paths(&std::env::var_os("PATH")?)
        .map(|folder| folder.join(&name))
        .find(|path| path.is_file())
}

fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name();
    let words = program.into_iter().chain(command.get_args());
    let words: Vec<_> = words.map(|word| word.to_string_lossy()).collect();
    words.join(" ")
}

/// The steps taken so far, each with its time.
#[derive(Default)]
pub struct Steps(Vec<Step>);

struct Step {
    name: &'static str,
    time: Duration,
    passed: bool,
}

impl Steps {
    /// Takes one step and prints its line.
    pub fn take<T>(&mut self, name: &'static str, act: impl FnOnce() -> Result<T>) -> Result<T> {
        let start = Instant::now();
        let outcome = act().context(name);
        let step = Step { name, time: start.elapsed(), passed: outcome.is_ok() };
        println!("{step}");
        self.0.push(step);
        outcome
    }
}

impl fmt::Display for Step {
    fn fmt(&self, out: &mut fmt::Formatter) -> fmt::Result {
        let end = if self.passed { "" } else { "  FAILED" };
        write!(out, "{:<36}{:>7.1} s{end}", self.name, self.time.as_secs_f64())
    }
}

impl fmt::Display for Steps {
    fn fmt(&self, out: &mut fmt::Formatter) -> fmt::Result {
        for step in &self.0 {
            writeln!(out, "{step}")?;
        }
        let all: Duration = self.0.iter().map(|step| step.time).sum();
        write!(out, "{:<36}{:>7.1} s", "all", all.as_secs_f64())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::process::Stdio;

    #[test]
    fn a_command_that_fails_is_an_error_that_shows_it() {
        let error = run(cargo("no-such-verb --at-all").stderr(Stdio::null())).unwrap_err();
        assert!(error.to_string().contains("no-such-verb --at-all"), "{error}");
    }

    #[test]
    fn a_failed_step_keeps_its_line_and_its_name() {
        let mut steps = Steps::default();
        let error = steps.take::<()>("weigh", || bail!("no scale")).unwrap_err();
        assert_eq!(format!("{error:#}"), "weigh: no scale");
        assert!(steps.to_string().contains("FAILED"));
    }

    #[test]
    fn a_program_is_found_only_where_it_is() {
        assert!(find("cargo").is_some());
        assert_eq!(find("no-such-program"), None);
    }
}
