//! Does everything hold?

use crate::shell::{self, Steps, cargo, run};
use crate::{build, package, serve, setup, words};
use anyhow::{Context, Result, ensure};
use std::fs;
use std::path::PathBuf;
use std::process::Command;

/// The verb under which cargo hands us compiled tests.
pub const RUNNER: &str = "run-wasm-test";

const WASM: &str = "--target wasm32-unknown-unknown";

/// Runs every check in order; the first failure ends it. The table comes last either way.
pub fn test() -> Result<()> {
    let mut steps = Steps::default();
    let outcome = all(&mut steps);
    println!("\n{steps}");
    outcome
}

fn all(steps: &mut Steps) -> Result<()> {
    steps.take("rust targets", setup::targets)?;
    steps.take("rust components", setup::components)?;
    steps.take("node and npm", setup::node)?;
    let driver = steps.take("browser and driver", setup::browser)?;

    steps.take("format", || run(&mut cargo("fmt --all --check")))?;
    steps.take("lints", || run(&mut cargo("clippy --workspace --all-targets -- -D warnings")))?;
    steps.take("lints, wasm", || {
        run(&mut cargo(&format!("clippy --package saltwright-web --all-targets {WASM} -- -D warnings")))
    })?;
    steps.take("without std and heap", bare)?;
    steps.take("docs", || run(cargo("doc --workspace --no-deps").env("RUSTDOCFLAGS", "-D warnings")))?;

    // The tests read the pages that were built.
    let site = build::make(steps)?;
    steps.take("size", || site.sizes.check())?;
    let [native, native_staging] = native_results()?;
    steps.take("tests", || {
        run(cargo("test --workspace --exclude xtask").env("SALTWRIGHT_SITE", &site.folder))
    })?;
    steps.take("tests with serde", || run(&mut cargo("test --package saltwright-chem --features serde")))?;
    steps.take("tests of xtask", || run(&mut cargo("test --package xtask")))?;
    steps.take("words", words::check)?;
    steps.take("crates, packed", package::crates)?;

    let browser = Browser::new(driver)?;
    steps.take("published checks, wasm", || {
        let words = format!("test --package evidence --test published {WASM}");
        let mut tests = browser.wasm(&words)?;
        run(tests.env("SALTWRIGHT_NATIVE", native).env("SALTWRIGHT_NATIVE_STAGING", native_staging))
    })?;
    steps.take("tests of wasm in a browser", || {
        run(&mut browser
            .wasm(&format!("test --package saltwright-form --package saltwright-web --lib {WASM}"))?)
    })?;

    let archive = steps.take("package", || package::make(&site.folder))?;
    steps.take("tests of the package", || package::check(&archive))?;
    let server = serve::start(&site.folder, 0)?;
    steps.take("tests of the page", || {
        let mut tests = cargo("test --package evidence --test browser -- --test-threads=1");
        let tests = tests.env("SALTWRIGHT_SITE", &site.folder).env("SALTWRIGHT_URL", server.address());
        run(browser.with(tests))
    })
}

/// That chemistry and plan link without std and without a heap, with and without serde; whoever asks for a heap must
/// not link, or that were no proof.
fn bare() -> Result<()> {
    let words = "build --quiet --manifest-path tests/bare/Cargo.toml --target thumbv6m-none-eabi";
    let target = shell::target().join("bare");
    for features in ["", "serde"] {
        run(cargo(words).arg("--features").arg(features).env("CARGO_TARGET_DIR", &target))?;
    }
    let heap = cargo(words).args(["--features", "heap"]).env("CARGO_TARGET_DIR", &target).output()?;
    let said = String::from_utf8_lossy(&heap.stderr);
    ensure!(said.contains("no global memory allocator found"), "a heap went unnoticed:\n{said}");
    Ok(())
}

/// Where the native run of the published checks leaves its results for the wasm run to match.
/// What an earlier run left is removed: it must not pass for this one's.
fn native_results() -> Result<[PathBuf; 2]> {
    let folder = shell::root().canonicalize()?.join("target/evidence");
    fs::create_dir_all(&folder)?;
    let files = ["native.txt", "native-staging.txt"].map(|file| folder.join(file));
    for file in files.iter().filter(|file| file.exists()) {
        fs::remove_file(file)?;
    }
    Ok(files)
}

/// How tests reach a Chromium that shows no window, keeps nothing and calls nobody.
struct Browser {
    driver: PathBuf,
    options: PathBuf,
}

const OPTIONS: &str = r#"{
  "goog:chromeOptions": {
    "args": [
      "headless=new", "no-sandbox", "disable-gpu", "disable-quic", "no-first-run",
      "disable-background-networking", "disable-component-update", "disable-sync",
      "disable-dev-shm-usage"
    ]
  }
}
"#;

impl Browser {
    fn new(driver: PathBuf) -> Result<Self> {
        let options = shell::target().join("webdriver.json");
        fs::write(&options, OPTIONS).with_context(|| options.display().to_string())?;
        Ok(Self { driver, options })
    }

    fn with<'a>(&self, command: &'a mut Command) -> &'a mut Command {
        command
            .env("CHROMEDRIVER", &self.driver)
            .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", &self.options)
            .env("WASM_BINDGEN_TEST_TIMEOUT", "120")
    }

    /// Cargo with this very program as runner of what it compiles for wasm.
    /// By `--config`, because the variable for it breaks at a space in the path.
    fn wasm(&self, words: &str) -> Result<Command> {
        let program = std::env::current_exe()?;
        let runner = format!("target.wasm32-unknown-unknown.runner=[{program:?}, {RUNNER:?}]");
        let mut command = cargo(words);
        command.arg("--config").arg(runner);
        self.with(&mut command);
        Ok(command)
    }
}
