//! Do our formulas give what others published? One row, one check; files in `vectors/`.

use super::checks::CHECKS;
use super::row::{Found, PRINTED, Row};
use evidence::vectors;

/// Checks one file; says what it did and adds each of our values to `values`.
fn check(name: &str, text: &str, values: &mut Vec<f64>) -> Result<String, Vec<String>> {
    let Some((_, tolerance, work)) = CHECKS.iter().find(|c| c.0 == name) else {
        return Ok(format!("{name}: skipped, there is no check for it"));
    };
    let mut lines = text.lines();
    let source = lines.next().unwrap_or("");
    assert!(source.starts_with("# source: "), "{name}: the first line must name its source");
    let head: Vec<_> = lines.next().unwrap_or("").split(',').collect();
    let (mut at, mut rows, mut largest, mut beyond) = (0, 0, 0.0f64, Vec::new());
    for line in lines {
        at += 1;
        let found = work(&Row { head: &head, cells: line.split(',').collect() });
        rows += usize::from(!found.is_empty());
        for found in found {
            let Found { column, ours, theirs, scale } = found;
            values.push(ours);
            let difference = (ours - theirs).abs() / scale;
            // The last bit is for the printed digits, which are decimal.
            if difference.is_nan() || difference > tolerance + 1e-9 {
                beyond.push(format!("{name} row {at}, {column}: ours {ours}, theirs {theirs}"));
            }
            largest = largest.max(difference);
        }
    }
    assert!(rows > 0, "{name} has no rows");
    let unit = if *tolerance == PRINTED { " of the last printed digit" } else { "" };
    let passed_by =
        if rows < at { format!(" ({} more are no reference here)", at - rows) } else { String::new() };
    let said = format!(
        "{name}: {rows} rows{passed_by}, largest difference {largest:.2e}, tolerance {tolerance}{unit}"
    );
    if beyond.is_empty() { Ok(said) } else { Err(beyond) }
}

#[cfg(not(target_family = "wasm"))]
#[test]
fn every_vector_file_agrees() {
    let (files, own) = vectors::files("");
    assert!(!files.is_empty(), "no vector file in the folder");
    let (mut values, mut beyond) = (Vec::new(), Vec::new());
    for path in &files {
        let name = path.file_name().unwrap().to_str().unwrap();
        match check(name, &std::fs::read_to_string(path).unwrap(), &mut values) {
            Ok(said) => println!("{said}"),
            Err(rows) => beyond.extend(rows),
        }
    }
    assert!(beyond.is_empty(), "beyond tolerance:\n{}", beyond.join("\n"));
    if own {
        vectors::leave("native.txt", &values);
    }
}

#[cfg(target_family = "wasm")]
#[wasm_bindgen_test::wasm_bindgen_test]
fn every_vector_file_agrees_and_equals_native() {
    macro_rules! files {
        ($($name:literal),*) => { [$(($name, include_str!(concat!("../vectors/", $name)))),*] };
    }
    // In the order in which the native run reads the folder.
    let files = files![
        "air-equilibrium.csv",
        "chlorine-titrations.csv",
        "conductivity.csv",
        "demo-index.csv",
        "density.csv",
        "dilution.csv",
        "doses.csv",
        "hocl-by-hand.csv",
        "hocl.csv",
        "meter.csv",
        "mixing.csv",
        "psu-cross-check.csv",
        "recipes.csv",
        "salt-mass.csv",
        "salt-shift.csv",
        "saturation-index-wide.csv",
        "saturation-index.csv",
        "titrations.csv",
        "treatments.csv",
        "volumes.csv",
        "worked.csv"
    ];
    assert_eq!(files.len(), CHECKS.len(), "a file with a check is not embedded");
    let mut values = Vec::new();
    for (name, text) in files {
        match check(name, text, &mut values) {
            Ok(said) => wasm_bindgen_test::console_log!("{said}"),
            Err(rows) => panic!("beyond tolerance:\n{}", rows.join("\n")),
        }
    }
    let native =
        include_str!(env!("SALTWRIGHT_NATIVE", "run the native test first; `cargo xtask test` does"));
    vectors::match_native(&values, native);
}
