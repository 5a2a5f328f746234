//! Does each name of the contract stand once in Rust, in its table?
//!
//! Comments and tests may name what they are about. Names of one plain word, such as `low`, are words of Rust's own and of
//! the plan's codes too: they are looked for in this crate alone.

use saltwright_form::contract::lint::Known;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// Every file of Rust in a folder and in those within.
fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
}

/// Its literals by line, without comments and without what only tests hold.
fn literals(source: &str) -> Vec<(usize, String)> {
    let code = source
        .split("#[cfg(test)]\nmod ")
        .next()
        .unwrap_or_default()
        .split("#[cfg(all(test")
        .next()
        .unwrap_or_default();
    let mut found = Vec::new();
    for (line, text) in (1..).zip(code.lines().filter(|line| !line.contains("#[doc")).map(str::trim_start)) {
        if !text.starts_with("//") {
            let code = text.split(" // ").next().unwrap_or_default();
            found.extend(code.split('"').skip(1).step_by(2).map(|literal| (line, literal.to_string())));
        }
    }
    found
}

/// File, line and name of each name that a crate has outside the tables.
fn written_again(a_crate: &str, also_plain: bool) -> Vec<String> {
    let known = Known::of_the_contract();
    let fields = known.fields.into_iter().map(|field| field.name);
    let states = known.states.into_iter().map(|state| state.name);
    let lists = [known.outputs, known.faults, known.lists, known.cells, known.acts, known.marks];
    let names: BTreeSet<String> = fields.chain(states).chain(lists.into_iter().flatten()).collect();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(a_crate).join("src");
    let mut paths = Vec::new();
    sources(&folder, &mut paths);
    assert!(!paths.is_empty(), "{a_crate} has sources");
    let tables = ["fields.rs", "outputs.rs", "facts.rs", "states.rs", "lists.rs", "codes.rs", "field_id.rs"];
    let is_table = |path: &Path| {
        path.parent().is_some_and(|folder| folder.ends_with("contract"))
            && tables.iter().any(|table| path.ends_with(table))
    };
    let mut found = Vec::new();
    for path in paths.iter().filter(|path| !is_table(path)) {
        for (line, literal) in literals(&fs::read_to_string(path).unwrap()) {
            let bare = literal.trim_start_matches('!');
            if names.contains(bare) && (also_plain || bare.contains('.')) {
                found.push(format!("{}:{line}: {literal}", path.strip_prefix(&folder).unwrap().display()));
            }
        }
    }
    found
}

#[test]
fn no_name_is_written_again() {
    assert_eq!(written_again("form", true), [""; 0]);
    assert_eq!(written_again("plan", false), [""; 0]);
}

#[test]
fn a_name_that_is_written_again_would_be_found() {
    let source =
        "fn f() { g(\"salt.now\") } // \"no\"\n/// \"nor this\"\n#[cfg(test)]\nmod tests { \"nor\" }";
    assert_eq!(literals(source), [(1, "salt.now".to_string())]);
}

/// The page's crate is held to it once it takes its names from the table.
#[test]
fn no_name_is_written_again_for_the_page() {
    assert_eq!(written_again("web", false), [""; 0]);
}
