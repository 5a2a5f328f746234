//! Can the chemistry's solver panic?

use crate::shell::{cargo, run};
use anyhow::{Result, bail};

/// A program that links only if the compiler has proved that it cannot. The same program with a
/// panic in it must not link, or the proof were none.
pub fn panics() -> Result<()> {
    let words = "run --quiet --release --manifest-path tests/panics/Cargo.toml";
    run(&mut cargo(words))?;
    let broken = cargo(&format!("{words} --features broken")).output()?;
    let said = String::from_utf8_lossy(&broken.stderr);
    if broken.status.success() || !said.contains("detected panic in function `broken`") {
        bail!("a function that panics went unnoticed:\n{said}");
    }
    Ok(())
}
