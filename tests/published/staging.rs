//! Does the judgement under doubt say what our reference model says? Every row, every column of
//! `vectors/staging.csv`.

use super::decision::Checked;
use evidence::vectors;

#[cfg(not(target_family = "wasm"))]
#[test]
fn every_row_agrees() {
    let (files, own) = vectors::files("staging");
    assert!(!files.is_empty() || !own, "our own rows are gone");
    let mut checked = Checked::default();
    for path in &files {
        let name = path.file_name().unwrap().to_str().unwrap();
        checked.check(name, &std::fs::read_to_string(path).unwrap());
    }
    println!("{checked}");
    assert!(checked.beyond.is_empty(), "beyond tolerance:\n{}", checked.beyond.join("\n"));
    if own {
        vectors::leave("native-staging.txt", &checked.values);
    }
}

#[cfg(target_family = "wasm")]
#[wasm_bindgen_test::wasm_bindgen_test]
fn every_row_agrees_and_equals_native() {
    let mut checked = Checked::default();
    checked.check("staging.csv", include_str!("../vectors/staging.csv"));
    assert!(checked.beyond.is_empty(), "beyond tolerance:\n{}", checked.beyond.join("\n"));
    let native =
        include_str!(env!("SALTWRIGHT_NATIVE_STAGING", "run the native test first; `cargo xtask test` does"));
    vectors::match_native(&checked.values, native);
}
