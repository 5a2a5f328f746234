//! Do formulas and decisions say what others published? One row, one check; files in `vectors/`.
//!
//! `SALTWRIGHT_VECTORS=folder cargo test -p evidence --test published -- --nocapture` reads another folder. As wasm
//! the files of `vectors/` are embedded, and every value must equal the native one bit for bit.

mod checks;
mod decision;
mod row;
mod staging;
mod vectors;

#[cfg(target_family = "wasm")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
