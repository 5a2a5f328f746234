//! How do words, style, loader and wasm become one script and one page?

use anyhow::{Context, Result, bail, ensure};
use base64::{Engine, engine::general_purpose::STANDARD as BASE64};
use sha2::{Digest, Sha256, Sha384};
use std::fs;
use std::path::Path;

const GLUE: &str = include_str!("glue.js");
const CHARSET: &str = r#"<meta charset="utf-8">"#;
const STYLE: &str = r#"<link rel="stylesheet" href="style/"#;
const NO_STYLE: &str = "<style></style>\n";
const SCRIPT: &str = r#"<script type="module" src="saltwright.js"></script>"#;

/// What a page says that is to be found without its server, and what its policy then allows: worker and manifest of
/// its own address, and the one name, `VOUCHER` in `web/src/offline.rs`, under which the worker's is vouched for.
const WORKER: &str = " data-worker=";
const SERVED: &str = "worker-src 'self'; manifest-src 'self'; trusted-types saltwright";
const UNSERVED: &str = "trusted-types 'none'";

/// What the wasm must offer; the page and other people's scripts call these.
const EXPORTS: [&str; 3] = ["answer", "attach", "edition"];

/// From here on the loader is about fetching wasm from somewhere; `glue.js` stands in its place.
const LOADER_END: &str = "async function __wbg_load(";

/// One module: the loader, and the wasm as text inside it.
pub fn script(loader: &str, wasm: &[u8]) -> Result<String> {
    let Some((loader, _)) = loader.split_once(LOADER_END) else {
        bail!("the loader has no `{LOADER_END}`; does glue.js fit this version of wasm-bindgen?");
    };
    for name in EXPORTS {
        let export = format!("export function {name}(");
        ensure!(loader.contains(&export), "crate web must export `{name}`");
    }
    let loader = strip(&strip(loader, "/*", "*/"), "//", "\n");
    let import = loader.lines().find(|line| line.starts_with("import "));
    ensure!(import.is_none(), "the loader needs another file: {import:?}");
    let script = loader + &GLUE.replace("{wasm}", &BASE64.encode(deflate(wasm)?));
    let marks = ["</script", "<script", "<!--", "import.meta", "\r"];
    refuse(&script, &marks, "saltwright.js")?;
    Ok(script)
}

/// What people read, and how it looks.
#[derive(Default)]
pub struct Words {
    /// The page, with nothing between its `<style>` tags.
    pub text: String,
    pub style: String,
}

/// The words of a page, and the files of style that it links, one behind the other, without comments.
pub fn words(page: &str, www: &Path) -> Result<Words> {
    let page = strip(page, "<!--", "-->");
    refuse(&page, &["<pre", "\r"], "the page")?;
    let mut parts = page.split(STYLE);
    let mut text = parts.next().unwrap_or_default().to_string();
    let mut sheets = String::new();
    for part in parts {
        let (file, rest) = part.split_once("\">\n").context("a link to a style has no end")?;
        if sheets.is_empty() {
            text.push_str(NO_STYLE);
        }
        let path = www.join("style").join(file);
        sheets.push_str(&fs::read_to_string(&path).with_context(|| format!("style/{file}"))?);
        text.push_str(rest);
    }
    let style = strip(&sheets, "/*", "*/");
    refuse(&style, &["</style", "<!--", "\r"], "the style")?;
    Ok(Words { text, style })
}

/// One file: the words, with style and script inside, and a policy that allows just these two.
pub fn page(words: &Words, script: &str) -> Result<String> {
    let Words { text, style } = words;
    let (start, rest) = split(text, CHARSET)?;
    let (head, rest) = split(rest, NO_STYLE)?;
    let (body, end) = split(rest, SCRIPT)?;
    let served = if text.contains(WORKER) { SERVED } else { UNSERVED };
    let policy = format!(
        "default-src 'none'; script-src '{}' 'wasm-unsafe-eval'; style-src '{}'; img-src data:; {served}; \
         require-trusted-types-for 'script'; base-uri 'none'; form-action 'none'",
        sha256(script),
        sha256(style),
    );
    Ok(format!(
        "{start}{CHARSET}\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\
         {head}<style>{style}</style>\n{body}<script type=\"module\">{script}</script>{end}"
    ))
}

/// Is this a page that carries style and script inside?
pub fn is_whole(page: &str) -> bool {
    page.contains(STYLE) && page.contains(SCRIPT)
}

/// A page that fetches the script, as its author would write it: `sha384-…` is the script's integrity, `sha256-…`
/// the hash of the page's own inline module.
pub fn guest(words: &str, integrity: &str) -> String {
    let inline =
        words.split_once("<script type=\"module\">").and_then(|(_, rest)| rest.split_once("</script>"));
    let own = inline.map_or(String::new(), |(script, _)| sha256(script));
    words.replace("sha384-…", integrity).replace("sha256-…", &own)
}

/// The value of the `integrity` attribute that goes with a script.
pub fn integrity(script: &str) -> String {
    format!("sha384-{}", BASE64.encode(Sha384::digest(script)))
}

fn sha256(text: &str) -> String {
    format!("sha256-{}", BASE64.encode(Sha256::digest(text)))
}

/// The smallest form that every browser can unpack by itself.
fn deflate(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut packed = Vec::new();
    let format = zopfli::Format::Deflate;
    // More blocks than the tool's own fifteen: 0.7 KB less travels with each page.
    let options = zopfli::Options { maximum_block_splits: 100, ..zopfli::Options::default() };
    zopfli::compress(options, format, bytes, &mut packed)?;
    Ok(packed)
}

/// Drops the white space that starts a line, empty lines, and comments that start a line.
/// A comment behind other text stays: telling it from a string would take a parser.
fn strip(text: &str, open: &str, close: &str) -> String {
    let mut kept = String::new();
    let mut rest = text.trim_start();
    while !rest.is_empty() {
        let after = if let Some(comment) = rest.strip_prefix(open) {
            comment.split_once(close).map_or("", |(_, after)| after)
        } else {
            let (line, after) = rest.split_once('\n').unwrap_or((rest, ""));
            kept.push_str(line);
            kept.push('\n');
            after
        };
        rest = after.trim_start();
    }
    kept
}

fn split<'a>(text: &'a str, tag: &str) -> Result<(&'a str, &'a str)> {
    match text.split(tag).collect::<Vec<_>>()[..] {
        [before, after] => Ok((before, after)),
        [_] => bail!("the page must have `{tag}`, spelt so, and behind the tags before it"),
        _ => bail!("the page has `{tag}` more than once"),
    }
}

fn refuse(text: &str, marks: &[&str], file: &str) -> Result<()> {
    let lower = text.to_ascii_lowercase();
    for mark in marks {
        ensure!(!lower.contains(mark), "{file} contains {mark:?}: it cannot stand inside the page");
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    const WORDS: &str = "<!doctype html>\n<!-- Which\n question? -->\n<head>\n  <meta charset=\"utf-8\">\n  \
        <style></style>\n</head>\n\
        <script type=\"module\" src=\"saltwright.js\"></script>\n";

    fn of(text: &str, style: &str) -> Words {
        Words { text: strip(text, "<!--", "-->"), style: style.into() }
    }

    fn loader(extra: &str) -> String {
        let exports = EXPORTS.map(|name| format!("export function {name}() {{\n}}\n"));
        format!("{}{extra}\n{LOADER_END}fetch(import.meta.url))", exports.concat())
    }

    fn between<'a>(text: &'a str, open: &str, close: &str) -> &'a str {
        let (_, rest) = text.split_once(open).expect(open);
        rest.split_once(close).expect(close).0
    }

    /// "abc": FIPS 180-4 examples. The greeting: W3C Content Security Policy and Subresource Integrity.
    #[test]
    fn hashes_are_the_published_ones() {
        assert_eq!(sha256("abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
        assert_eq!(
            integrity("abc"),
            "sha384-ywB1P0WjXou1oD1pmsZQBycsMqsO3tFjGotgWkP/W+2AhgcroefMI1i67KE0yCWn"
        );
        let greeting = "alert('Hello, world.');";
        assert_eq!(sha256(greeting), "sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng=");
        assert_eq!(
            integrity(greeting),
            "sha384-H8BRh8j48O9oYatfu5AZzq6A9RINhZO5H16dQZngK7T62em8MUt1FLm52t+eX6xO"
        );
    }

    #[test]
    fn the_script_carries_the_wasm_and_asks_for_no_file() {
        let wasm: Vec<u8> = (0..9999_u32).map(|n| (n * n / 8) as u8).collect();
        let script = script(&loader("  /* gone */ kept;\n  // gone"), &wasm).unwrap();
        let packed = BASE64.decode(between(&script, "atob(\"", "\")")).unwrap();
        let mut unpacked = Vec::new();
        flate2::read::DeflateDecoder::new(&packed[..]).read_to_end(&mut unpacked).unwrap();
        assert_eq!(unpacked, wasm);
        assert!(script.contains("kept;") && !script.contains("gone"), "{script}");
        assert!(!script.contains("fetch("), "{script}");
    }

    #[test]
    fn a_script_that_would_break_the_page_is_refused() {
        for extra in [
            "'</script>'",
            "'</SCRIPT '",
            "'<!--'",
            "'<script>'",
            "a = import.meta.url",
            "import { a } from './a.js';",
            "a;\r",
        ] {
            assert!(script(&loader(extra), b"").is_err(), "{extra}");
        }
        assert!(script(&loader("a;"), b"").is_ok());
    }

    #[test]
    fn a_loader_of_another_make_is_refused() {
        let whole = loader("");
        for missing in ["__wbg_load", "function answer", "function attach", "function edition"] {
            let error = script(&whole.replace(missing, ""), b"").unwrap_err();
            let name = missing.trim_start_matches("function ");
            assert!(error.to_string().contains(name), "{error}");
        }
    }

    #[test]
    fn the_policy_allows_what_the_page_holds() {
        let page = page(&of(WORDS, "body{margin:0}"), "go();\n").unwrap();
        let policy = between(
            &page,
            "<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"",
            "\">",
        );
        let script = between(&page, "<script type=\"module\">", "</script>");
        let style = between(&page, "<style>", "</style>");
        assert_eq!((script, style), ("go();\n", "body{margin:0}"));
        assert!(policy.contains(&format!("script-src '{}' 'wasm-unsafe-eval';", sha256(script))));
        assert!(policy.contains(&format!("style-src '{}';", sha256(style))));
        assert!(!page.contains("question"), "{page}");
    }

    #[test]
    fn only_a_page_with_a_worker_may_have_one() {
        let with = page(&of(&format!("{WORDS}<form data-worker=\"a.js\">"), ""), "").unwrap();
        assert!(with.contains(SERVED) && !with.contains(UNSERVED), "{with}");
        let without = page(&of(WORDS, ""), "").unwrap();
        assert!(without.contains(UNSERVED) && !without.contains(SERVED), "{without}");
    }

    #[test]
    fn a_page_without_a_tag_or_with_two_is_refused_by_its_name() {
        for tag in [CHARSET, NO_STYLE, SCRIPT] {
            for wrong in [String::new(), format!("{tag}{tag}")] {
                let error = page(&of(&WORDS.replace(tag, &wrong), ""), "").unwrap_err();
                assert!(error.to_string().contains(tag), "{error}");
            }
        }
    }

    #[test]
    fn only_comments_that_start_a_line_are_stripped() {
        let text = "/* a */ b {\n\n  c: '/* d */';\n/* e\nf */}";
        assert_eq!(strip(text, "/*", "*/"), "b {\nc: '/* d */';\n}\n");
        assert_eq!(strip("a\n/* never closed\nb", "/*", "*/"), "a\n");
    }
}
