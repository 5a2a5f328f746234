//! How does the source become the site?

use crate::check;
use crate::shell::{self, Steps};
use crate::sizes::{Parts, Sizes};
use crate::{linked, names, package, page, setup};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};
use wasm_bindgen_cli::wasm_bindgen;

/// What came out, and where it lies.
pub struct Site {
    pub folder: PathBuf,
    pub sizes: Sizes,
}

/// Makes `target/site` from nothing.
pub fn build(steps: &mut Steps) -> Result<Site> {
    steps.take("rust targets", setup::targets)?;
    make(steps)
}

/// The same on a machine that is known to be ready.
pub fn make(steps: &mut Steps) -> Result<Site> {
    steps.take("compile wasm", compile)?;
    let loader = steps.take("make loader", loader)?;
    let site = steps.take("assemble site", || assemble(&loader))?;
    println!("{}", site.sizes);
    Ok(site)
}

fn compile() -> Result<()> {
    // Panic messages hold file names; whose machine it was is nobody's business, and must not
    // change a byte of the result.
    let mut flags = vec![format!("--remap-path-prefix={}=.", shell::root().canonicalize()?.display())];
    for crates in files_and_folders(&cargo_home().join("registry/src")).unwrap_or_default() {
        flags.push(format!("--remap-path-prefix={}=.", crates.display()));
    }
    let words = "build --quiet --package saltwright-web --lib --release --target wasm32-unknown-unknown";
    shell::run(shell::cargo(words).env("CARGO_ENCODED_RUSTFLAGS", flags.join("\x1f")))
}

pub fn cargo_home() -> PathBuf {
    let given = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    given.unwrap_or_else(|| std::env::home_dir().unwrap_or_default().join(".cargo"))
}

struct Loader {
    text: String,
    types: String,
    /// With the names of its functions, for the table alone.
    named: Vec<u8>,
    wasm: Vec<u8>,
}

fn loader() -> Result<Loader> {
    let target = shell::target();
    let input = target.join("wasm32-unknown-unknown/release/saltwright_web.wasm");
    let folder = target.join("loader");
    let (input, output) = (input.to_string_lossy(), folder.to_string_lossy());
    wasm_bindgen::run_cli_with_args([
        "wasm-bindgen",
        "--target=web",
        "--omit-default-module-path",
        "--remove-producers-section",
        "--out-name=loader",
        "--out-dir",
        &output,
        &input,
    ])?;
    let text = fs::read_to_string(folder.join("loader.js"))?;
    let types = package::types(&fs::read_to_string(folder.join("loader.d.ts"))?)?;
    let named = linked::used(&text, &fs::read(folder.join("loader_bg.wasm"))?)?;
    let (text, wasm) = names::short(&text, &named)?;
    Ok(Loader { text, types, named, wasm })
}

fn assemble(loader: &Loader) -> Result<Site> {
    let www = shell::root().join("www");
    let read = |name| fs::read_to_string(www.join(name)).with_context(|| format!("www/{name}"));
    let (words, style) = (read("index.html")?, read("style.css")?);
    let script = page::script(&loader.text, &loader.wasm)?;
    let integrity = page::integrity(&script);

    let folder = shell::target().join("site");
    if folder.exists() {
        fs::remove_dir_all(&folder)?;
    }
    let mut pages = Vec::new();
    for path in files(&www)? {
        let name = path.strip_prefix(&www)?;
        let place = folder.join(name);
        fs::create_dir_all(place.parent().expect("a file lies in a folder"))?;
        if name == Path::new("style.css") {
            continue;
        }
        if name.extension().is_none_or(|kind| kind != "html") {
            fs::copy(&path, &place)?;
            continue;
        }
        let words = fs::read_to_string(&path)?;
        let name = name.to_string_lossy().into_owned();
        if page::is_whole(&words) {
            let page = page::page(&words, &style, &script).with_context(|| name.clone())?;
            fs::write(&place, &page)?;
            pages.push((name, page));
        } else {
            fs::write(&place, page::guest(&words, &integrity))?;
        }
    }
    fs::write(folder.join("saltwright.js"), &script)?;
    fs::write(folder.join("saltwright.d.ts"), &loader.types)?;
    check::script::write(&folder)?;
    fs::write(folder.join("saltwright.js.integrity"), &integrity)?;

    println!("integrity {integrity}");

    let sizes = Sizes::measure(&Parts {
        pages: &pages,
        words: &page::strip(&words, "<!--", "-->"),
        style: &page::strip(&style, "/*", "*/"),
        script: &script,
        wasm: &loader.wasm,
        named: &loader.named,
    })?;
    Ok(Site { folder, sizes })
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
