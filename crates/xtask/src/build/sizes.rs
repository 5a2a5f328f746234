//! How much has to travel?

use super::linked;
use anyhow::{Result, ensure};
use flate2::{Compression, write::GzEncoder};
use std::fmt;
use std::io::Write;

/// The whole page, in whichever language, as a good server sends it, may be this many bytes: what it takes for the
/// dose, the index, the steps before the salt, the decision under doubt (100 KiB), for the whole job round it
/// (readiness, tape, schedule, output, keeping, records, paper: 60), and for teaching (question mode, numbered
/// exercises, frames, the method in full, the names that a page under development is checked by: 40).
pub const PAGE_LIMIT: usize = 200 * 1024;

/// What the build made, and the parts it was made of.
pub struct Parts<'a> {
    /// Each with its name; `index.html` is the one whose parts are told.
    pub pages: &'a [(String, String)],
    pub words: &'a str,
    pub style: &'a str,
    pub script: &'a str,
    pub wasm: &'a [u8],
    /// The same before its functions lost their names.
    pub named: &'a [u8],
}

/// One row a page, then one a part of `index.html`, and the functions that take the most of the wasm.
pub struct Sizes {
    parts: Vec<Size>,
    wasm: usize,
    largest: Vec<(String, usize)>,
}

struct Size {
    name: String,
    plain: usize,
    gzip: usize,
    brotli: usize,
}

impl Sizes {
    pub fn measure(parts: &Parts) -> Result<Self> {
        let named = [
            ("  words", parts.words.as_bytes()),
            ("  style", parts.style.as_bytes()),
            ("  script", parts.script.as_bytes()),
            ("    wasm", parts.wasm),
        ];
        let size = |(name, bytes): (&str, &[u8])| {
            let name = name.to_string();
            Ok(Size { name, plain: bytes.len(), gzip: gzip(bytes)?, brotli: brotli(bytes)?.len() })
        };
        let pages = parts.pages.iter().map(|(name, page)| (name.as_str(), page.as_bytes()));
        let rows = pages.chain(named).map(size).collect::<Result<_>>()?;
        Ok(Self { parts: rows, wasm: parts.wasm.len(), largest: linked::largest(parts.named)? })
    }

    /// Refuses a page over the limit.
    pub fn check(&self) -> Result<()> {
        for Size { name, brotli, .. } in self.parts.iter().filter(|size| size.name.ends_with(".html")) {
            ensure!(
                *brotli <= PAGE_LIMIT,
                "{name} is {brotli} bytes in brotli, over the limit of {PAGE_LIMIT}"
            );
        }
        Ok(())
    }
}

impl fmt::Display for Sizes {
    fn fmt(&self, out: &mut fmt::Formatter) -> fmt::Result {
        writeln!(out, "{:<24}{:>9}{:>9}{:>9}", "bytes", "plain", "gzip", "brotli")?;
        for Size { name, plain, gzip, brotli } in &self.parts {
            writeln!(out, "{name:<24}{plain:>9}{gzip:>9}{brotli:>9}")?;
        }
        writeln!(out, "{:<24}{PAGE_LIMIT:>27}\n", "limit of a page")?;
        write!(out, "{:>9}{:>9}  largest functions", "plain", "of wasm")?;
        for (name, bytes) in &self.largest {
            let share = 100.0 * *bytes as f64 / self.wasm as f64;
            write!(out, "\n{bytes:>9}{share:>7.1} %  {name}")?;
        }
        Ok(())
    }
}

fn gzip(bytes: &[u8]) -> Result<usize> {
    let mut packer = GzEncoder::new(Vec::new(), Compression::best());
    packer.write_all(bytes)?;
    Ok(packer.finish()?.len())
}

/// As small as brotli gets it.
pub fn brotli(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut packed = Vec::new();
    let params = brotli::enc::BrotliEncoderParams { quality: 11, lgwin: 22, ..Default::default() };
    brotli::BrotliCompress(&mut &bytes[..], &mut packed, &params)?;
    Ok(packed)
}

#[cfg(test)]
mod tests {
    use super::*;

    const EMPTY: &[u8] = b"\0asm\x01\0\0\0";

    fn page_of(brotli: usize) -> Sizes {
        let name = "index.html".to_string();
        Sizes { parts: vec![Size { name, plain: 0, gzip: 0, brotli }], wasm: 0, largest: vec![] }
    }

    #[test]
    fn the_limit_itself_is_allowed_and_one_more_is_not() {
        assert!(page_of(PAGE_LIMIT).check().is_ok());
        assert!(page_of(PAGE_LIMIT + 1).check().is_err());
    }

    #[test]
    fn the_page_is_what_the_check_judges() {
        let page = "page ".repeat(9);
        let pages = [("index.html".to_string(), page.clone()), ("index.fr.html".to_string(), page.clone())];
        let parts = Parts { pages: &pages, words: "", style: "", script: "", wasm: b"", named: EMPTY };
        let sizes = Sizes::measure(&parts).unwrap();
        assert_eq!((sizes.parts[1].name.as_str(), sizes.parts[1].plain), ("index.fr.html", page.len()));
    }
}
