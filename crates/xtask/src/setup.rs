//! What must stand on the machine first?

use crate::shell::{self, cargo, find, run, succeeds};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::Command;

/// The browser's module, and a machine with nothing but the language's core.
const TARGETS: [&str; 2] = ["wasm32-unknown-unknown", "thumbv6m-none-eabi"];

/// Adds the compile targets that are missing.
pub fn targets() -> Result<()> {
    for target in TARGETS {
        if !has_target(target) {
            run(Command::new("rustup").args(["target", "add", target]))
                .context("add this target to your Rust by the way it was installed")?;
        }
    }
    Ok(())
}

fn has_target(target: &str) -> bool {
    let words = ["--print", "target-libdir", "--target", target];
    let Ok(shown) = Command::new("rustc").args(words).output() else {
        return false;
    };
    let folder = String::from_utf8_lossy(&shown.stdout);
    shown.status.success() && Path::new(folder.trim()).is_dir()
}

/// Adds the formatter and the linter if they are missing.
pub fn components() -> Result<()> {
    for (component, verb) in [("rustfmt", "fmt"), ("clippy", "clippy")] {
        if !succeeds(&mut cargo(&format!("{verb} --version"))) {
            run(Command::new("rustup").args(["component", "add", component]))
                .context("add this component to your Rust by the way it was installed")?;
        }
    }
    Ok(())
}

/// Is there what runs and installs packages for scripts?
pub fn node() -> Result<()> {
    for program in ["node", "npm"] {
        find(program).with_context(|| {
            format!("there is no `{program}` on the path: Node from 20.12 on brings it, and npm with it")
        })?;
    }
    Ok(())
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

/// No window, no profile, no call to anybody: what a Chromium is told that measures.
pub const QUIET: &str = "--headless=new --no-sandbox --disable-gpu --disable-quic --no-first-run \
    --disable-background-networking --disable-component-update --disable-sync --disable-dev-shm-usage";

/// Chromium itself.
pub fn chromium() -> Option<PathBuf> {
    find("chromium").or_else(|| find("google-chrome"))
}

/// Finds Chromium's driver, and what reads a printed page; on Debian as root it installs them first.
pub fn browser() -> Result<PathBuf> {
    let there = || {
        chromium()?;
        find("pdftotext")?;
        find("chromedriver")
    };
    debian("chromium chromium-driver poppler-utils", there, MISSING)
}

/// Finds Firefox, and WebKitGTK's small browser with its driver and the screen it needs; its driver is told.
/// On Debian as root it installs them first.
pub fn more_browsers() -> Result<PathBuf> {
    let there = || {
        find("firefox").or_else(|| find("firefox-esr"))?;
        find("Xvfb")?;
        find("pdftotext")?;
        find("WebKitWebDriver")
    };
    debian("firefox-esr webkit2gtk-driver xvfb poppler-utils", there, MORE_MISSING)
}

/// What is there, if need be after these packages were installed.
fn debian(packages: &str, there: impl Fn() -> Option<PathBuf>, missing: &str) -> Result<PathBuf> {
    if let Some(driver) = there() {
        return Ok(driver);
    }
    let root = Command::new("id").arg("-u").output().is_ok_and(|id| id.stdout == b"0\n");
    if !root || find("apt-get").is_none() {
        bail!("{missing}");
    }
    for words in ["update", &format!("install --yes --no-install-recommends {packages}")] {
        let mut apt = Command::new("apt-get");
        run(apt.arg("--quiet").args(words.split(' ')).env("DEBIAN_FRONTEND", "noninteractive"))?;
    }
    there().with_context(|| format!("apt-get installed {packages}, yet they are not on the path"))
}

const MISSING: &str = "\
the browser tests need Chromium, its driver and a reader of PDF on the path, as `chromium`, `chromedriver`, `pdftotext`:
  Debian   apt-get install chromium chromium-driver poppler-utils
  others   a Chromium, the ChromeDriver of the same version, and poppler";

const MORE_MISSING: &str = "\
the other engines need Firefox, WebKitGTK's driver with its small browser, a screen for it and a reader of PDF
on the path, as `firefox`, `WebKitWebDriver`, `Xvfb`, `pdftotext`:
  Debian   apt-get install firefox-esr webkit2gtk-driver xvfb poppler-utils
  others   a Firefox, WebKitGTK with its WebDriver and MiniBrowser, Xvfb, and poppler";
