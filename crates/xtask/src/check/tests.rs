//! Do both readers, this one and the script, find in each page of tests/check what its author is to be told?
//!
//! A page there ends in a comment: `expected`, then a line a finding, in order; the page beside it without fault has none.

use super::{page, script};
use form::contract::lint::{Element, Known};
use serde_json::{Map, Value, json};
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// Path, page, expected lines.
fn pages() -> Vec<(PathBuf, String, Vec<String>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/check");
    let mut paths: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    paths.retain(|path| path.extension().is_some_and(|end| end == "html"));
    paths.sort();
    let page = |path: PathBuf| {
        let html = fs::read_to_string(&path).unwrap();
        let (_, expected) = html.rsplit_once("<!-- expected").expect("every page says what is expected");
        let lines = expected.trim_end().trim_end_matches("-->").lines().map(str::trim);
        let expected = lines.filter(|line| !line.is_empty()).map(String::from).collect();
        (path, html, expected)
    };
    paths.into_iter().map(page).collect()
}

#[test]
fn every_finding_is_told_and_no_other() {
    let known = Known::of_the_contract();
    let pages = pages();
    assert!(pages.len() >= 5, "{} pages", pages.len());
    for (path, html, expected) in pages {
        let bare = |line: String| {
            line.split_once(": ").map_or(line.clone(), |(at, rest)| {
                if at.parse::<u32>().is_ok() { rest.into() } else { line.clone() }
            })
        };
        let told: Vec<String> = page::lines(&html, &known).unwrap().into_iter().map(bare).collect();
        assert_eq!(told, expected, "{}", path.display());
    }
}

#[test]
fn a_finding_has_its_line() {
    let html = "<form data-saltwright=1>\n<p>x</p>\n<input name=\"salt.nwo\">\n</form>";
    let told = page::lines(html, &Known::of_the_contract()).unwrap();
    assert!(told[0].starts_with("3: <input"), "{told:?}");
    assert!(page::lines("<form></form>", &Known::of_the_contract()).is_err());
}

fn as_json(element: &Element) -> Value {
    let attributes: Map<String, Value> =
        element.attributes.iter().map(|(name, value)| (name.clone(), value.as_str().into())).collect();
    json!({ "tag": element.tag, "attributes": attributes, "parent": element.parent, "hasWords": element.has_words })
}

/// Runs the script as it goes out, in Node.
#[test]
fn the_script_says_the_same() {
    let drive = "
        const forms = JSON.parse(process.argv.at(-1));
        const all = forms.map((elements) => findings(elements).map(({ place, words }) => `${called(elements[place])}: ${words}`));
        console.log(JSON.stringify(all));";
    let pages = pages();
    let forms: Vec<Vec<Element>> = pages.iter().flat_map(|(_, html, _)| page::forms(html)).collect();
    assert_eq!(forms.len(), pages.len(), "a form a page");
    let forms: Value = forms.iter().map(|elements| elements.iter().map(as_json).collect::<Value>()).collect();
    let mut node = Command::new("node");
    node.args(["--input-type=module", "-", &forms.to_string()]).stdin(Stdio::piped()).stdout(Stdio::piped());
    let mut node = node.spawn().expect("`node` on the path");
    let source = script::text().unwrap() + drive;
    node.stdin.take().unwrap().write_all(source.as_bytes()).unwrap();
    let said = node.wait_with_output().unwrap();
    assert!(said.status.success());
    let said: Vec<Vec<String>> = serde_json::from_slice(&said.stdout).unwrap();
    for ((path, _, expected), said) in pages.iter().zip(said) {
        assert_eq!(&said, expected, "{}", path.display());
    }
}

#[test]
fn the_script_asks_nothing_of_a_network_and_writes_no_html() {
    let source = script::text().unwrap();
    for word in ["fetch", "XMLHttp", "import(", "innerHTML", "eval(", "http"] {
        assert!(!source.contains(word), "{word}");
    }
}
