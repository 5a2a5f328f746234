//! Is all that comes from outside allowed, and does the same source make the same page wherever it is built?

use crate::setup;
use crate::shell::{self, cargo};
use anyhow::{Context, Result, ensure};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const DENY: &str = "cargo-deny --version 0.20.2";

/// Of different length, so that no length of a path can hide in the page.
const PLACES: [&str; 2] = ["twice/a", "twice/another, with a longer name"];

pub fn run() -> Result<()> {
    allowed()?;
    twice()
}

/// What `tests/deny.toml` allows, in each workspace. What it allows in vain is refused in the main one.
fn allowed() -> Result<()> {
    let tool = setup::tool(DENY)?;
    for (path, text) in manifests()? {
        if !text.lines().any(|line| line.starts_with("[workspace]")) {
            continue;
        }
        println!("{}", path.strip_prefix(shell::root())?.display());
        let vain = if text.contains("\nmembers") { "--deny" } else { "--allow" };
        let mut command = Command::new(&tool);
        command.current_dir(shell::root()).arg("--manifest-path").arg(&path);
        command.args(["--all-features", "--locked", "--config=tests/deny.toml", "check"]);
        command.args([vain, "license-not-encountered", vain, "unmatched-skip"]);
        // Each exception is met in one workspace, and in no other.
        command.args(["--allow", "license-exception-not-encountered"]);
        shell::run(command.args(["licenses", "sources", "bans"]))?;
    }
    Ok(())
}

/// Each with its text: ours, and those of the proofs with a workspace of their own.
fn manifests() -> Result<Vec<(PathBuf, String)>> {
    let mut found = Vec::new();
    for path in ["Cargo.toml", "tests/Cargo.toml"] {
        found.push(shell::root().join(path));
    }
    for room in ["crates", "tests"] {
        let folders = shell::files_and_folders(&shell::root().join(room))?;
        found.extend(folders.iter().map(|folder| folder.join("Cargo.toml")).filter(|path| path.is_file()));
    }
    found.into_iter().map(|path| Ok((path.clone(), fs::read_to_string(path)?))).collect()
}

/// Two builds from nothing, in two folders, must agree in every byte, and must not tell whose machine it was.
fn twice() -> Result<()> {
    // Both copies first: whoever goes on writing meanwhile changes neither.
    let folders = [copied(PLACES[0])?, copied(PLACES[1])?];
    let [one, other] = [made(&folders[0])?, made(&folders[1])?];
    for (name, bytes) in &one {
        let hash: String = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
        println!("{hash}  {}", name.display());
    }
    let differing = differing(&one, &other);
    ensure!(differing.is_empty(), "the two builds differ in {differing:?}");
    println!("{} files, twice the same", one.len());
    Ok(())
}

type Files = BTreeMap<PathBuf, Vec<u8>>;

/// A copy of what git knows of, in this folder of `target`.
fn copied(place: &str) -> Result<PathBuf> {
    let folder = shell::emptied(place)?.canonicalize()?;
    for name in tracked()? {
        let copy = folder.join(&name);
        fs::create_dir_all(copy.parent().context("a file lies in a folder")?)?;
        fs::copy(shell::root().join(&name), copy).with_context(|| name.clone())?;
    }
    Ok(folder)
}

/// The site, built in this folder.
fn made(folder: &Path) -> Result<Files> {
    let target = folder.join("target");
    shell::run(cargo("xtask build").current_dir(folder).env("CARGO_TARGET_DIR", &target))?;

    let site = target.join("site");
    let mut files = Files::new();
    for path in shell::files(&site)? {
        files.insert(path.strip_prefix(&site)?.into(), fs::read(&path)?);
    }
    // In the page it is packed, where no path could be seen.
    let module = fs::read(target.join("loader/loader_bg.wasm"))?;
    let home = std::env::home_dir().filter(|home| home.parent().is_some());
    for ours in [Some(folder.into()), Some(shell::cargo_home()), home].into_iter().flatten() {
        let ours = ours.to_string_lossy().into_owned();
        for (name, bytes) in files.iter().chain([(&PathBuf::from("the module"), &module)]) {
            ensure!(!holds(bytes, &ours), "{} tells of {ours}", name.display());
        }
    }
    Ok(files)
}

fn tracked() -> Result<Vec<String>> {
    let done = Command::new("git").args(["ls-files", "-z"]).current_dir(shell::root()).output()?;
    ensure!(done.status.success(), "git ls-files: {}", String::from_utf8_lossy(&done.stderr));
    Ok(String::from_utf8(done.stdout)?.split_terminator('\0').map(String::from).collect())
}

fn differing<'a>(one: &'a Files, other: &'a Files) -> Vec<&'a Path> {
    let mut names: Vec<_> = one.keys().chain(other.keys()).map(PathBuf::as_path).collect();
    names.sort();
    names.dedup();
    names.retain(|&name| one.get(name) != other.get(name));
    names
}

fn holds(bytes: &[u8], text: &str) -> bool {
    bytes.windows(text.len()).any(|part| part == text.as_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::prove::{browser, lighthouse};
    use std::collections::BTreeSet;

    type Names = BTreeSet<String>;

    /// What a manifest takes from outside; what lies on a path is ours.
    fn taken(text: &str) -> Names {
        let mut inside = false;
        let mut names = Names::new();
        for line in text.lines() {
            if line.starts_with('[') {
                inside = line.ends_with("dependencies]");
            }
            let end = line.find(|c: char| !c.is_ascii_alphanumeric() && !"-_".contains(c)).unwrap_or(0);
            if inside && end > 0 && !line.contains("path = ") {
                names.insert(line[..end].into());
            }
        }
        for ours in ["chem", "plan", "form", "web"] {
            names.remove(ours);
        }
        names
    }

    /// What npm is asked for, each with its version.
    fn pinned(text: &str) -> Names {
        let (_, list) = text.split_once(r#""dependencies": {"#).unwrap();
        let words: Vec<_> = list.split('"').skip(1).step_by(2).collect();
        words.chunks(2).map(|pair| pair.join(" ")).collect()
    }

    /// The names in the table, those of cargo and those of npm.
    fn justified(text: &str) -> [Names; 2] {
        let (_, table) = text.split_once("| Crate | For |\n|---|---|\n").unwrap();
        let rows =
            table.lines().map_while(|line| line.strip_prefix("| ")?.strip_suffix(" |")?.split_once(" | "));
        let (mut crates, mut npm) = (Names::new(), Names::new());
        for (names, why) in rows {
            assert!(!why.trim().is_empty(), "{names}: what for?");
            let (set, names) = match names.strip_prefix("of npm: ") {
                Some(names) => (&mut npm, names),
                None => (&mut crates, names),
            };
            for name in names.split(", ") {
                assert!(set.insert(name.into()), "{name} stands there twice");
            }
        }
        [crates, npm]
    }

    #[test]
    fn each_direct_dependency_is_justified_and_no_other() {
        let manifests = manifests().unwrap();
        let (root, rest) = manifests.split_first().unwrap();
        let used: Names = rest.iter().flat_map(|(_, text)| taken(text)).collect();
        let idle: Vec<_> = taken(&root.1).difference(&used).cloned().collect();
        assert!(idle.is_empty(), "no crate uses {idle:?} of the workspace");
        let words = fs::read_to_string(shell::root().join("DEVELOPERS.md")).unwrap();
        let of_npm = [crate::package::TOOLS, browser::AXE, lighthouse::TOOL];
        let of_npm = of_npm.into_iter().flat_map(pinned).collect();
        assert_eq!(justified(&words), [used, of_npm], "the table, and what is used");
    }

    #[test]
    fn every_way_to_depend_is_read() {
        let text = "[package]\nname = \"x\"\n[dependencies]\nchem.workspace = true\nlibm = \"1\"\na-b = { version = \
            \"1\", features = [\n    \"C\",\n] }\n# d = \"1\"\n[target.'cfg(x)'.dev-dependencies]\ne_f.workspace = true\n\
            [features]\ng = []\n";
        assert_eq!(taken(text), ["a-b", "e_f", "libm"].map(String::from).into());
        assert_eq!(
            pinned(r#"{ "dependencies": { "a": "1", "b": "2.0" } }"#),
            ["a 1", "b 2.0"].map(String::from).into()
        );
    }

    #[test]
    fn a_file_that_differs_or_is_missing_is_named() {
        let files = |list: &[(&str, &str)]| -> Files {
            list.iter().map(|&(name, text)| (name.into(), text.into())).collect()
        };
        let one = files(&[("a", "1"), ("b", "2"), ("c", "3")]);
        assert!(differing(&one, &one).is_empty());
        let other = files(&[("a", "1"), ("b", "x"), ("d", "4")]);
        assert_eq!(differing(&one, &other), ["b", "c", "d"].map(Path::new));
    }

    #[test]
    fn a_path_in_the_midst_of_bytes_is_seen() {
        assert!(holds(b"\0\xff/home/x/src\0", "/home/x") && !holds(b"./src", "/home/x"));
    }
}
