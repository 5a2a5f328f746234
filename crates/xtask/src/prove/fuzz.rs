//! Is there any string of bytes at which the chemistry, or the answer to a form, breaks?

use crate::setup;
use crate::shell::{self, run};
use anyhow::Result;
use std::process::Command;

const TOOL: &str = "cargo-fuzz --version 0.13.2";

/// Each target for so long. What breaks one ends it, and lies in `tests/fuzz/artifacts`.
pub fn fuzz(seconds: u32) -> Result<()> {
    let tool = setup::tool(TOOL)?;
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
