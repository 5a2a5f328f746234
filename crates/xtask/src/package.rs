//! How does the module become a package for script authors, and does it work where it is installed? Can the crates
//! be packed?

use crate::shell::{self, Steps, cargo, run};
use crate::{build, setup};
use anyhow::{Context, Result, ensure};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const VERSION: &str = env!("CARGO_PKG_VERSION");
const LICENSE: &str = env!("CARGO_PKG_LICENSE");
const README: &str = include_str!("package.md");

/// What the site has that goes into the package: the module, its types, every name there is.
const FILES: [&str; 3] = ["saltwright.js", "saltwright.d.ts", "names.md"];

/// What the check takes from npm, to the digit. Neither has dependencies but its own programs.
pub const TOOLS: &str =
    r#"{ "private": true, "dependencies": { "esbuild": "0.28.2", "typescript": "7.0.2" } }"#;

/// Builds, and makes the package.
pub fn package(steps: &mut Steps) -> Result<PathBuf> {
    steps.take("node and npm", setup::node)?;
    let site = build::build(steps)?;
    steps.take("package", || make(&site.folder))
}

/// Builds, makes the package, and checks it; then the crates.
pub fn prove(steps: &mut Steps) -> Result<()> {
    let archive = package(steps)?;
    steps.take("tests of the package", || check(&archive))?;
    steps.take("crates, packed", crates)
}

/// The chemistry's package; it stands on its own.
const CHEM: &str = "saltwright-chem";

/// Packs the crates, and builds each from what was packed; then another crate, far away, uses the chemistry.
pub fn crates() -> Result<()> {
    let mut words = format!(
        "package --quiet --allow-dirty --package {CHEM} --package saltwright-plan --package saltwright-form --package saltwright-web"
    );
    // Nobody publishes them, so cargo has to be told where a packed crate's neighbour lies.
    for (name, folder) in [(CHEM, "chem"), ("saltwright-plan", "plan"), ("saltwright-form", "form")] {
        words.push_str(&format!(" --config patch.crates-io.{name}.path=\"crates/{folder}\""));
    }
    // In a folder beside `target/package`, which is not cargo's; what is compiled already is not compiled again.
    let mut command = cargo(&words);
    run(command
        .env("CARGO_TARGET_DIR", shell::target().join("crates"))
        .env("CARGO_BUILD_BUILD_DIR", shell::target()))?;
    used_elsewhere()
}

/// A crate outside the workspace depends on the packed chemistry and runs the code of its README.
fn used_elsewhere() -> Result<()> {
    let folder = std::env::temp_dir().join(format!("saltwright-crate-{}", std::process::id()));
    fs::create_dir_all(folder.join("src"))?;
    let packed = shell::target().join(format!("crates/package/{CHEM}-{VERSION}.crate"));
    run(Command::new("tar").arg("-xzmf").arg(packed).arg("-C").arg(&folder))?;
    let unpacked = folder.join(format!("{CHEM}-{VERSION}"));
    let readme = fs::read_to_string(unpacked.join("README.md"))?;
    let (_, rest) = readme.split_once("```rust\n").context("the README of the chemistry has no example")?;
    let (code, _) = rest.split_once("```").context("the example of the chemistry's README has no end")?;
    fs::write(folder.join("src/main.rs"), code)?;
    let path = unpacked.file_name().context("no folder")?.display();
    let about = format!(
        "[package]\nname = \"elsewhere\"\nedition = \"2024\"\n\n[dependencies]\n{CHEM} = {{ path = \"{path}\" }}\n"
    );
    fs::write(folder.join("Cargo.toml"), about)?;
    let mut command = cargo("run --quiet");
    let target = shell::target().canonicalize()?.join("crates/elsewhere");
    let printed = said(command.current_dir(&folder).env("CARGO_TARGET_DIR", target));
    fs::remove_dir_all(&folder)?;
    ensure!(printed?.starts_with("today: "), "the chemistry's README promises what it does not print");
    Ok(())
}

/// Makes `target/package` of the site, and the archive that npm installs. Returns the archive.
pub fn make(site: &Path) -> Result<PathBuf> {
    let folder = shell::emptied("package")?;
    for name in FILES {
        fs::copy(site.join(name), folder.join(name)).with_context(|| name.to_string())?;
    }
    fs::copy(shell::root().join("LICENSE"), folder.join("LICENSE"))?;
    fs::write(folder.join("README.md"), README.replace("{version}", VERSION))?;
    fs::write(folder.join("package.json"), about())?;
    let archive = shell::target().join(format!("saltwright-{VERSION}.tgz"));
    run(npm("pack --pack-destination", &folder).arg(shell::target()))?;
    ensure!(archive.is_file(), "npm made no {}", archive.display());
    Ok(archive)
}

fn about() -> String {
    format!(
        r#"{{
  "name": "saltwright",
  "version": "{VERSION}",
  "description": "May the salt go into the pool, how much, and what next? One module, wasm inside.",
  "license": "{LICENSE}",
  "type": "module",
  "exports": {{
    ".": {{ "types": "./saltwright.d.ts", "default": "./saltwright.js" }},
    "./package.json": "./package.json"
  }},
  "files": {FILES:?},
  "engines": {{ "node": ">=20.12" }}
}}
"#
    )
}

/// Installs the archive in an empty folder, and uses it there as its authors' readers would.
pub fn check(archive: &Path) -> Result<()> {
    let tools = tools("package-tools", TOOLS)?;
    let folder = shell::emptied("package-proof/installed")?;
    let alone = shell::emptied("package-proof/bundled")?;
    fs::write(folder.join("package.json"), r#"{ "private": true }"#)?;
    run(npm("install --offline --engine-strict", &folder).arg(archive))?;
    for name in ["figures.mjs", "made.mjs", "use.ts", "tsconfig.json"] {
        fs::copy(shell::root().join("tests/package").join(name), folder.join(name))?;
    }

    run(node("figures.mjs", &folder).arg(VERSION))?;
    example(&folder)?;

    let bundle = alone.join("figures.mjs");
    let mut bundler = Command::new(tools.join("esbuild"));
    bundler.args(["figures.mjs", "--bundle", "--format=esm", "--minify", "--log-level=warning"]);
    run(bundler.arg(format!("--outfile={}", bundle.display())).current_dir(&folder))?;
    run(node("figures.mjs", &alone).arg(VERSION))?;

    all_used(
        &fs::read_to_string(folder.join("node_modules/saltwright/saltwright.d.ts"))?,
        &fs::read_to_string(folder.join("use.ts"))?,
    )?;
    fs::write(folder.join("made.ts"), said(&mut node("made.mjs", &folder))?)?;
    run(Command::new(tools.join("tsc")).args(["--project", "."]).current_dir(&folder))
}

/// Runs the example of the README; behind each line that prints stands what it must print.
fn example(folder: &Path) -> Result<()> {
    let readme = fs::read_to_string(folder.join("node_modules/saltwright/README.md"))?;
    let (_, rest) = readme.split_once("```js\n").context("the README has no example")?;
    let (code, _) = rest.split_once("```").context("the README's example has no end")?;
    fs::write(folder.join("example.mjs"), code)?;
    let must: Vec<_> =
        code.lines().filter_map(|line| line.split_once("; // ")).map(|(_, must)| must).collect();
    let prints = said(&mut node("example.mjs", folder))?;
    let prints: Vec<_> = prints.lines().collect();
    ensure!(!must.is_empty(), "the README's example promises nothing");
    ensure!(prints == must, "the README's example prints {prints:?} instead of {must:?}");
    Ok(())
}

/// Every name that is declared stands in the script that shows its use.
fn all_used(types: &str, script: &str) -> Result<()> {
    let inside = |c: char| c.is_ascii_alphanumeric() || c == '_';
    let words: Vec<_> = script.split(|c| !inside(c)).collect();
    let unused: Vec<_> = declared(types).filter(|name| !words.contains(name)).collect();
    ensure!(unused.is_empty(), "tests/package/use.ts does not use {unused:?}");
    Ok(())
}

/// The names of functions, interfaces, classes and of their members.
fn declared(types: &str) -> impl Iterator<Item = &str> {
    types.lines().filter_map(|line| {
        let line = line.trim_start();
        let rest = ["export function ", "export interface ", "export class "]
            .iter()
            .find_map(|start| line.strip_prefix(start))
            .unwrap_or(line.strip_prefix("readonly ").unwrap_or(line));
        let end = rest.find(|c: char| !c.is_ascii_alphanumeric() && c != '_')?;
        let (name, after) = rest.split_at(end);
        let declares = [":", "?:", "(", " {"].iter().any(|sign| after.starts_with(sign));
        (declares && !name.is_empty()).then_some(name)
    })
}

/// Where pinned programs lie; they stay there, and a second run asks nobody for them.
pub fn tools(name: &str, pinned: &str) -> Result<PathBuf> {
    let folder = shell::target().join(name);
    fs::create_dir_all(&folder)?;
    fs::write(folder.join("package.json"), pinned)?;
    run(&mut npm("install --prefer-offline", &folder))?;
    Ok(folder.join("node_modules/.bin"))
}

/// Npm with these words, split at spaces: no foreign script is run, no advice asked for.
fn npm(words: &str, folder: &Path) -> Command {
    let mut command = Command::new("npm");
    command.args(["--loglevel=error", "--ignore-scripts", "--no-audit", "--no-fund", "--no-update-notifier"]);
    command.args(words.split(' ')).current_dir(folder);
    command
}

fn node(script: &str, folder: &Path) -> Command {
    let mut command = Command::new("node");
    command.arg(script).current_dir(folder);
    command
}

/// What a program printed.
fn said(command: &mut Command) -> Result<String> {
    let done = command.output().with_context(|| format!("cannot start {command:?}"))?;
    let [out, error] = [done.stdout, done.stderr].map(|text| String::from_utf8_lossy(&text).into_owned());
    ensure!(done.status.success(), "{command:?} ended with {}\n{error}", done.status);
    Ok(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    const TYPES: &str = "export interface Answer {\n    states: string[];\n    low?: Shown;\n}\n\nexport class Controller {\n    \
        private constructor();\n    form(): Record<string, string>;\n}\n\n\
        export function attach(form: HTMLFormElement): void;\n";

    #[test]
    fn a_name_that_no_script_uses_is_noticed() {
        let names: Vec<_> = declared(TYPES).collect();
        assert_eq!(names, ["Answer", "states", "low", "Controller", "form", "attach"]);
        assert!(all_used(TYPES, "attach(Controller.form); Answer.states; low").is_ok());
        let error = all_used(TYPES, "attach(Controller.form); Answer.states; lower").unwrap_err();
        assert!(error.to_string().contains("[\"low\"]"), "{error}");
    }
}
