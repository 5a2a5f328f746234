//! Does the judgement under doubt say what our reference model says? Every row, every column of
//! `vectors/staging.csv`; then what must hold whatever the case.
//!
//! `SALTWRIGHT_VECTORS=folder cargo test -p evidence --test staging -- --nocapture` reads another folder.
//! As wasm the file is embedded, and every value must equal the native one bit for bit.

#[path = "staging/cards.rs"]
mod cards;
#[cfg(not(target_family = "wasm"))]
#[path = "vectors/folder.rs"]
mod folder;
#[path = "staging/properties.rs"]
mod properties;
#[path = "staging/rows.rs"]
mod rows;

#[cfg(target_family = "wasm")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

#[cfg(not(target_family = "wasm"))]
#[test]
fn every_row_agrees() {
    let (files, own) = folder::files("staging");
    assert!(!files.is_empty() || !own, "our own rows are gone");
    let mut checked = rows::Checked::default();
    for path in &files {
        let name = path.file_name().unwrap().to_str().unwrap();
        checked.check(name, &std::fs::read_to_string(path).unwrap());
    }
    println!("{checked}");
    assert!(checked.beyond.is_empty(), "beyond tolerance:\n{}", checked.beyond.join("\n"));
    if own {
        folder::leave("native-staging.txt", checked.values.iter().map(|x| x.to_bits()));
    }
}

#[cfg(target_family = "wasm")]
#[wasm_bindgen_test::wasm_bindgen_test]
fn every_row_agrees_and_equals_native() {
    let mut checked = rows::Checked::default();
    checked.check("staging.csv", include_str!("vectors/staging.csv"));
    assert!(checked.beyond.is_empty(), "beyond tolerance:\n{}", checked.beyond.join("\n"));
    let native =
        include_str!(env!("SALTWRIGHT_NATIVE_STAGING", "run the native test first; `cargo xtask test` does"));
    let native: Vec<_> = native.lines().map(|l| u64::from_str_radix(l, 16).unwrap()).collect();
    assert_eq!(checked.values.len(), native.len(), "native and wasm compared different rows");
    let differing = checked.values.iter().zip(&native).filter(|(ours, bits)| ours.to_bits() != **bits);
    assert_eq!(differing.count(), 0, "of {} values, wasm differs from native in", native.len());
}
