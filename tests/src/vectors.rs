//! Which files of vectors are read, and what does a native run leave for the wasm run to match?

#[cfg(not(target_family = "wasm"))]
use std::path::PathBuf;

/// The files whose names begin so, in order, and whether they are our own: else they are those of the folder that
/// `SALTWRIGHT_VECTORS` names.
#[cfg(not(target_family = "wasm"))]
pub fn files(begin: &str) -> (Vec<PathBuf>, bool) {
    let own = concat!(env!("CARGO_MANIFEST_DIR"), "/vectors");
    let folder = std::env::var("SALTWRIGHT_VECTORS");
    let mut files: Vec<_> = std::fs::read_dir(folder.as_deref().unwrap_or(own))
        .expect("the folder of vectors can be read")
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "csv"))
        .filter(|path| path.file_name().unwrap().to_str().unwrap().starts_with(begin))
        .collect();
    files.sort();
    (files, folder.is_err())
}

/// Where a native run leaves its bits for the wasm run of the same test, which must find the same ones.
#[cfg(not(target_family = "wasm"))]
pub fn leave(name: &str, values: &[f64]) {
    let target = concat!(env!("CARGO_MANIFEST_DIR"), "/../target/evidence");
    std::fs::create_dir_all(target).unwrap();
    let lines: Vec<_> = values.iter().map(|value| format!("{:016x}", value.to_bits())).collect();
    std::fs::write(format!("{target}/{name}"), lines.join("\n")).unwrap();
}

/// That every value is, bit for bit, what a native run has left.
pub fn match_native(values: &[f64], native: &str) {
    let native: Vec<_> = native.lines().map(|line| u64::from_str_radix(line, 16).unwrap()).collect();
    assert_eq!(values.len(), native.len(), "native and wasm compared different rows");
    let differing = values.iter().zip(&native).filter(|(ours, bits)| ours.to_bits() != **bits).count();
    assert_eq!(differing, 0, "of {} values, wasm differs from native in", values.len());
}
