//! How much has to travel?

use anyhow::{Result, ensure};
use flate2::{Compression, write::GzEncoder};
use std::fmt;
use std::io::Write;

/// The whole page, as a good server sends it, may be this many bytes: what it takes for the dose, the index, the
/// steps before the salt, the decision under doubt (100 KiB), and for the whole job round it (readiness, tape,
/// schedule, output, keeping, records, paper), half of that in words and in wasm for browsers (60).
pub const PAGE_LIMIT: usize = 160 * 1024;

/// What the build made, and the parts it was made of.
pub struct Parts<'a> {
    pub page: &'a str,
    pub words: &'a str,
    pub style: &'a str,
    pub script: &'a str,
    pub wasm: &'a [u8],
}

/// One row a part, the page first.
pub struct Sizes(Vec<Size>);

struct Size {
    name: &'static str,
    plain: usize,
    gzip: usize,
    brotli: usize,
}

impl Sizes {
    pub fn measure(parts: &Parts) -> Result<Self> {
        let named = [
            ("page", parts.page.as_bytes()),
            ("  words", parts.words.as_bytes()),
            ("  style", parts.style.as_bytes()),
            ("  script", parts.script.as_bytes()),
            ("    wasm", parts.wasm),
        ];
        let size = |(name, bytes): (_, &[u8])| {
            Ok(Size { name, plain: bytes.len(), gzip: gzip(bytes)?, brotli: brotli(bytes)?.len() })
        };
        named.into_iter().map(size).collect::<Result<_>>().map(Self)
    }

    /// Refuses a page over the limit.
    pub fn check(&self) -> Result<()> {
        let page = self.0[0].brotli;
        ensure!(page <= PAGE_LIMIT, "the page is {page} bytes in brotli, over the limit of {PAGE_LIMIT}");
        Ok(())
    }
}

impl fmt::Display for Sizes {
    fn fmt(&self, out: &mut fmt::Formatter) -> fmt::Result {
        writeln!(out, "{:<14}{:>9}{:>9}{:>9}", "bytes", "plain", "gzip", "brotli")?;
        for Size { name, plain, gzip, brotli } in &self.0 {
            writeln!(out, "{name:<14}{plain:>9}{gzip:>9}{brotli:>9}")?;
        }
        write!(out, "{:<14}{PAGE_LIMIT:>27}", "limit of page")
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

    fn page_of(brotli: usize) -> Sizes {
        let name = "page";
        Sizes(vec![Size { name, plain: 0, gzip: 0, brotli }])
    }

    #[test]
    fn the_limit_itself_is_allowed_and_one_more_is_not() {
        assert!(page_of(PAGE_LIMIT).check().is_ok());
        assert!(page_of(PAGE_LIMIT + 1).check().is_err());
    }

    #[test]
    fn the_page_is_what_the_check_judges() {
        let page = "page ".repeat(9);
        let parts = Parts { page: &page, words: "", style: "", script: "", wasm: b"" };
        let sizes = Sizes::measure(&parts).unwrap();
        assert_eq!((sizes.0[0].name, sizes.0[0].plain), ("page", page.len()));
    }
}
