//! Does the judgement under doubt say what our reference model says? Every row, every column of
//! `vectors/staging.csv`; then what must hold whatever the case.
//!
//! `SALTWRIGHT_VECTORS=folder cargo test -p evidence --test staging -- --nocapture` reads another folder.
//! As wasm the file is embedded, and every value must equal the native one bit for bit.

#[path = "staging/cards.rs"]
mod cards;
#[path = "staging/properties.rs"]
mod properties;
#[path = "staging/rows.rs"]
mod rows;

#[cfg(target_family = "wasm")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

#[cfg(not(target_family = "wasm"))]
#[test]
fn every_row_agrees() {
    let own = concat!(env!("CARGO_MANIFEST_DIR"), "/vectors");
    let folder = std::env::var("SALTWRIGHT_VECTORS");
    let mut files: Vec<_> = std::fs::read_dir(folder.as_deref().unwrap_or(own))
        .expect("the folder of vectors can be read")
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "csv"))
        .filter(|path| path.file_name().unwrap().to_str().unwrap().starts_with("staging"))
        .collect();
    files.sort();
    assert!(!files.is_empty() || folder.is_ok(), "our own rows are gone");
    let mut checked = rows::Checked::default();
    for path in &files {
        let name = path.file_name().unwrap().to_str().unwrap();
        checked.check(name, &std::fs::read_to_string(path).unwrap());
    }
    println!("{checked}");
    assert!(checked.beyond.is_empty(), "beyond tolerance:\n{}", checked.beyond.join("\n"));
    if folder.is_err() {
        // For the wasm run of the same test, which must find the same bits.
        let target = concat!(env!("CARGO_MANIFEST_DIR"), "/../target/evidence");
        std::fs::create_dir_all(target).unwrap();
        let lines: Vec<_> = checked.values.iter().map(|x| format!("{:016x}", x.to_bits())).collect();
        std::fs::write(format!("{target}/native-staging.txt"), lines.join("\n")).unwrap();
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
