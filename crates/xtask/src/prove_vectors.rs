//! Do the general libraries still say what the stored vectors say?

use crate::build::files;
use crate::shell::{self, run};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const VECTORS: &str = "tests/vectors";

/// The libraries print eight digits and stop iterating a little beyond that.
const APART: f64 = 1e-6;

/// Generates every vector file that comes from a library, and compares number by number. The new files
/// stay in `target/vectors`: whoever wants them copies them.
pub fn run_and_compare() -> Result<()> {
    let (stored, fresh) = (shell::root().join(VECTORS), shell::target().join("vectors"));
    if fresh.exists() {
        fs::remove_dir_all(&fresh)?;
    }
    fs::create_dir_all(&fresh)?;
    let mut generate = Command::new(python(&stored.join("requirements.txt"))?);
    run(generate.arg("-B").arg(stored.join("generate.py")).arg(&fresh))?;

    let mut differing = Vec::new();
    for path in files(&fresh)? {
        let name = path.file_name().context("a file has a name")?.to_string_lossy().into_owned();
        let read = |folder: &Path| fs::read_to_string(folder.join(&name)).with_context(|| name.clone());
        differing.extend(differences(&read(&stored)?, &read(&fresh)?).map(|what| format!("{name} {what}")));
    }
    match differing.as_slice() {
        [] => Ok(()),
        all => bail!("stored and fresh vectors differ:\n{}", all.join("\n")),
    }
}

/// A Python of our own with what these requirements say.
pub fn python(requirements: &Path) -> Result<PathBuf> {
    let folder = shell::target().join("venv");
    let python = folder.join(if cfg!(windows) { "Scripts/python.exe" } else { "bin/python" });
    if !python.exists() {
        run(Command::new("python3").args(["-m", "venv"]).arg(&folder))?;
    }
    let pip = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--requirement"];
    run(Command::new(&python).args(pip).arg(requirements))?;
    Ok(python)
}

/// The lines that differ; no line that one of them has and the other lacks passes.
fn differences<'a>(stored: &'a str, fresh: &'a str) -> impl Iterator<Item = String> + 'a {
    let count = stored.lines().count().max(fresh.lines().count());
    let (mut ours, mut theirs) = (stored.lines(), fresh.lines());
    (1..=count).filter_map(move |line| {
        let (a, b) = (ours.next().unwrap_or(""), theirs.next().unwrap_or(""));
        (!agree(a, b)).then(|| format!("line {line}: stored {a:?}, fresh {b:?}"))
    })
}

fn agree(a: &str, b: &str) -> bool {
    let same = |(a, b): (&str, &str)| match (a.parse::<f64>(), b.parse::<f64>()) {
        (Ok(x), Ok(y)) => (x - y).abs() <= APART * x.abs().max(y.abs()),
        _ => a == b,
    };
    a.split(',').count() == b.split(',').count() && a.split(',').zip(b.split(',')).all(same)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_millionth_passes_and_more_does_not() {
        assert!(agree("HCl,7.482679,-0", "HCl,7.4826795,0"));
        assert!(!agree("HCl,7.48267", "HCl,7.48269"));
        assert!(!agree("HCl,NaN", "HCl,7") && !agree("HCl,1", "HCl,1,2"));
    }

    #[test]
    fn a_missing_line_is_a_difference() {
        assert_eq!(differences("a\n1\n2\n", "a\n1\n").count(), 1);
        assert_eq!(differences("a\n1\n", "a\n1\n2\n").count(), 1);
        assert_eq!(differences("a\n1\n", "a\n1.0\n").count(), 0);
    }
}
