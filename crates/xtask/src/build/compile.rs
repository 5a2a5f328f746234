//! How do the crates become wasm, and a loader for it?

use super::{linked, short_names, types};
use crate::shell;
use anyhow::Result;
use std::fs;
use wasm_bindgen_cli::wasm_bindgen;

/// Compiles crate web.
pub fn wasm() -> Result<()> {
    // Panic messages hold file names; whose machine it was is nobody's business, and must not
    // change a byte of the result.
    let mut flags = vec![format!("--remap-path-prefix={}=.", shell::root().canonicalize()?.display())];
    for crates in shell::files_and_folders(&shell::cargo_home().join("registry/src")).unwrap_or_default() {
        flags.push(format!("--remap-path-prefix={}=.", crates.display()));
    }
    let words = "build --quiet --package saltwright-web --lib --release --target wasm32-unknown-unknown";
    shell::run(shell::cargo(words).env("CARGO_ENCODED_RUSTFLAGS", flags.join("\x1f")))
}

/// What the tool makes of the wasm.
pub struct Loader {
    pub text: String,
    pub types: String,
    /// With the names of its functions, for the table alone.
    pub named: Vec<u8>,
    pub wasm: Vec<u8>,
}

/// Makes the loader, with as little in both files as can be.
pub fn loader() -> Result<Loader> {
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
    let types = types::of_the_module(&fs::read_to_string(folder.join("loader.d.ts"))?)?;
    let named = linked::used(&text, &fs::read(folder.join("loader_bg.wasm"))?)?;
    let (text, wasm) = short_names::short(&text, &named)?;
    Ok(Loader { text, types, named, wasm })
}
