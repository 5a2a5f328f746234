//! Do the general libraries still say what the stored vectors say?

use crate::shell::files;
use crate::shell::{self, run};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const VECTORS: &str = "tests/vectors";

/// How far apart two numbers may be, of their size and, next to nothing, as such: the libraries print
/// eight digits and stop iterating a little beyond that.
const APART: (f64, f64) = (1e-6, 1e-9);

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
        differing
            .extend(differences(&read(&stored)?, &read(&fresh)?).iter().map(|what| format!("{name} {what}")));
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

/// Each cell that differs, by row and column; no line that one has and the other lacks passes.
fn differences(stored: &str, fresh: &str) -> Vec<String> {
    let columns: Vec<_> = stored.lines().nth(1).unwrap_or("").split(',').collect();
    let (mut ours, mut theirs) = (stored.lines(), fresh.lines());
    let mut found = Vec::new();
    for line in 1..=stored.lines().count().max(fresh.lines().count()) {
        let (a, b) = (ours.next().unwrap_or(""), theirs.next().unwrap_or(""));
        // Above the rows stand the source and the columns.
        let cells = [a, b].map(|text| text.split(',').count());
        if line < 3 || cells != [columns.len(); 2] {
            if a != b {
                found.push(format!("line {line}: stored {a:?}, fresh {b:?}"));
            }
            continue;
        }
        for (column, (a, b)) in columns.iter().zip(a.split(',').zip(b.split(','))) {
            if !agree(a, b) {
                found.push(format!("row {}, {column}: stored {a:?}, fresh {b:?}", line - 2));
            }
        }
    }
    found
}

fn agree(a: &str, b: &str) -> bool {
    match (a.parse::<f64>(), b.parse::<f64>()) {
        (Ok(x), Ok(y)) => (x - y).abs() <= APART.1.max(APART.0 * x.abs().max(y.abs())),
        _ => a == b,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_millionth_passes_and_more_does_not() {
        assert!(agree("7.482679", "7.4826795") && agree("-0", "0") && agree("2e-10", "1e-10"));
        assert!(!agree("7.48267", "7.48269") && !agree("3e-9", "1e-9"));
        assert!(!agree("NaN", "7") && !agree("HCl", "NaOH") && !agree("", "0"));
    }

    #[test]
    fn a_difference_names_its_row_its_column_and_both_values() {
        let found =
            differences("# source: a\nt_c,ph\n24,7.5\n25,7.6\n", "# source: a\nt_c,ph\n24,7.5\n25,7.7\n");
        assert_eq!(found, [r#"row 2, ph: stored "7.6", fresh "7.7""#]);
        assert_eq!(differences("# source: a\nt_c\n", "# source: b\nt_c\n").len(), 1);
    }

    #[test]
    fn a_missing_line_or_cell_is_a_difference() {
        let [one, two] = ["# source: a\nt_c,ph\n24,7.5\n", "# source: a\nt_c,ph\n24,7.5\n25,7.6\n"];
        assert_eq!((differences(one, two).len(), differences(two, one).len()), (1, 1));
        assert_eq!(differences(one, "# source: a\nt_c,ph\n24\n").len(), 1);
        assert!(differences(two, two).is_empty());
    }
}
