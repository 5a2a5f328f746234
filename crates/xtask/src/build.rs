//! How does the source become the site? Compile, expand, assemble, measure: each step hands its work to the next.

mod assemble;
pub mod catalogue;
mod compile;
mod contract;
mod expand;
mod linked;
pub mod markup;
pub mod messages;
mod sentence;
mod short_names;
pub mod sizes;
mod start;
pub mod translate;
mod types;

use crate::check;
use crate::setup;
use crate::shell::{self, Steps};
use anyhow::{Context, Result};
use catalogue::Catalogue;
use sizes::{Parts, Sizes};
use std::fs;
use std::path::{Path, PathBuf};
use translate::MANIFEST;

/// What came out, and where it lies.
pub struct Site {
    pub folder: PathBuf,
    pub sizes: Sizes,
}

/// A file of the site by its name there.
pub type Page = (String, String);

/// Makes `target/site` from nothing.
pub fn build(steps: &mut Steps) -> Result<Site> {
    steps.take("rust targets", setup::targets)?;
    make(steps)
}

/// The same on a machine that is known to be ready.
pub fn make(steps: &mut Steps) -> Result<Site> {
    steps.take("compile wasm", compile::wasm)?;
    let loader = steps.take("make loader", compile::loader)?;
    let pages = steps.take("expand pages", expanded)?;
    let site = steps.take("assemble site", || site(&loader, &pages))?;
    println!("{}", site.sizes);
    Ok(site)
}

/// Writes the pages in plain HTML, before style and script are put in, to `target/pages`; no wasm is compiled.
pub fn pages(steps: &mut Steps) -> Result<PathBuf> {
    let pages = steps.take("expand pages", expanded)?;
    let folder = shell::emptied("pages")?;
    for (name, words) in pages {
        let place = folder.join(name);
        fs::create_dir_all(place.parent().context("a file lies in a folder")?)?;
        fs::write(place, words)?;
    }
    Ok(folder)
}

/// The pages in English, by name: those that each language has.
pub fn english() -> Result<Vec<Page>> {
    expand::pages(&www())
}

/// The manifest in English.
pub fn manifest() -> Result<String> {
    fs::read_to_string(www().join(MANIFEST)).context(MANIFEST)
}

fn www() -> PathBuf {
    shell::root().join("www")
}

/// Every page that carries style and script inside, made of templates, in each language, or kept by hand; and the
/// manifests that go with them.
fn expanded() -> Result<Vec<Page>> {
    let mut pages = translate::all(&english()?, &manifest()?, &Catalogue::all()?)?;
    for (name, path) in by_hand(&www())? {
        let words = if is_html(&path) { fs::read_to_string(&path)? } else { continue };
        if assemble::is_whole(&words) {
            pages.push((name, words));
        }
    }
    Ok(pages)
}

/// What lies in `www` and is no part of a page made here, each with its name in the site.
fn by_hand(www: &Path) -> Result<Vec<(String, PathBuf)>> {
    let rooms = ["pages", "parts", "style", "words", MANIFEST].map(|room| www.join(room));
    let files = shell::files(www)?.into_iter();
    let files = files.filter(|path| !rooms.iter().any(|room| path.starts_with(room)));
    files.map(|path| Ok((path.strip_prefix(www)?.to_string_lossy().into_owned(), path))).collect()
}

fn site(loader: &compile::Loader, expanded: &[Page]) -> Result<Site> {
    let www = www();
    let script = assemble::script(&loader.text, &loader.wasm)?;
    let integrity = assemble::integrity(&script);
    let folder = shell::emptied("site")?;
    copy(&www, &folder, &integrity)?;

    let mut pages = Vec::new();
    let mut index = assemble::Words::default();
    for (name, words) in expanded {
        if !name.ends_with(".html") {
            fs::write(folder.join(name), words)?;
            continue;
        }
        let words = assemble::words(words, &www).with_context(|| name.clone())?;
        let page = assemble::page(&words, &script).with_context(|| name.clone())?;
        fs::write(folder.join(name), &page)?;
        pages.push((name.clone(), page));
        if name == "index.html" {
            index = words;
        }
    }
    fs::write(folder.join("saltwright.js"), &script)?;
    fs::write(folder.join("saltwright.d.ts"), &loader.types)?;
    check::script::write(&folder)?;
    fs::write(folder.join("saltwright.js.integrity"), &integrity)?;
    println!("integrity {integrity}");

    let sizes = Sizes::measure(&Parts {
        pages: &pages,
        words: &index.text,
        style: &index.style,
        script: &script,
        wasm: &loader.wasm,
        named: &loader.named,
    })?;
    Ok(Site { folder, sizes })
}

/// Copies what is no page of ours: the worker, manifests, names, pages that fetch the script.
fn copy(www: &Path, folder: &Path, integrity: &str) -> Result<()> {
    for (name, path) in by_hand(www)? {
        let place = folder.join(name);
        fs::create_dir_all(place.parent().context("a file lies in a folder")?)?;
        if is_html(&path) {
            let words = fs::read_to_string(&path)?;
            fs::write(&place, assemble::guest(&words, integrity))?;
        } else {
            fs::copy(&path, &place)?;
        }
    }
    Ok(())
}

fn is_html(path: &Path) -> bool {
    path.extension().is_some_and(|kind| kind == "html")
}
