//! Which files of vectors are read: our own, or those of another folder that `SALTWRIGHT_VECTORS` names?

use std::path::PathBuf;

/// The files whose names begin so, in order, and whether they are our own.
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
pub fn leave(name: &str, bits: impl Iterator<Item = u64>) {
    let target = concat!(env!("CARGO_MANIFEST_DIR"), "/../target/evidence");
    std::fs::create_dir_all(target).unwrap();
    let lines: Vec<_> = bits.map(|bits| format!("{bits:016x}")).collect();
    std::fs::write(format!("{target}/{name}"), lines.join("\n")).unwrap();
}
