//! How quick is the page, can everyone use it, and is it the same after a long life? What the browser's tests measure,
//! in Chromium.

use crate::shell::{self, Steps, cargo};
use crate::{build, package, serve, setup};
use anyhow::{Result, ensure};
use std::path::PathBuf;

/// To the digit.
pub const AXE: &str = r#"{ "private": true, "dependencies": { "axe-core": "4.14.1" } }"#;

/// Brings axe-core, and runs it over the pages.
pub fn access() -> Result<()> {
    setup::node()?;
    let file = package::tools("axe", AXE)?.with_file_name("axe-core").join("axe.min.js");
    measure("access", &[("SALTWRIGHT_AXE", file)])
}

/// Runs what is measured in one room of the browser's tests; it prints its figures, and fails where one is missed.
pub fn run(room: &str) -> Result<()> {
    measure(room, &[])
}

fn measure(room: &str, more: &[(&str, PathBuf)]) -> Result<()> {
    let mut steps = Steps::default();
    let driver = steps.take("browser and driver", setup::browser)?;
    let site = build::make(&mut steps)?;
    let server = serve::start(&site.folder, 0)?;
    let tests = |words: &str| {
        let mut tests = cargo(&format!(
            "test --quiet --package evidence --test browser -- --ignored --test-threads=1 {words} {room}::"
        ));
        tests.env("SALTWRIGHT_SITE", &site.folder).env("SALTWRIGHT_URL", server.address());
        tests.env("CHROMEDRIVER", &driver).env_remove("SALTWRIGHT_ENGINE");
        tests.envs(more.iter().map(|(name, path)| (name, path)));
        tests
    };
    let listed = tests("--list --format terse").output()?;
    let listed =
        String::from_utf8_lossy(&listed.stdout).lines().filter(|line| line.ends_with(": test")).count();
    ensure!(listed > 0, "nothing is measured in `{room}`");
    shell::run(&mut tests("--nocapture"))
}
