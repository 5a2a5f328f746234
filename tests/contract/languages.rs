//! Are the pages in other languages the same pages, with nothing but words changed?
//!
//! Every element with its names must stand in the other page as often as in the English one, blocks in the same
//! order; within a sentence a language may order as it needs.

use evidence::site::{PAGES, Page, folder};
use scraper::ElementRef;
use std::collections::{BTreeMap, BTreeSet};

/// Attributes that hold words, or what goes by the language.
const WORDS: [&str; 6] = ["aria-label", "alt", "title", "content", "data-manifest", "lang"];

/// Elements that a sentence may order in its own way.
const INLINE: [&str; 8] = ["a", "b", "em", "i", "span", "output", "sub", "sup"];

/// Each other language with the English page and its own.
fn pairs() -> Vec<(&'static str, Page, Page)> {
    let pairs = PAGES.iter().flat_map(|[(_, english), others @ ..]| {
        others.iter().map(|(lang, other)| (*lang, Page::read(english), Page::read(other)))
    });
    pairs.collect()
}

/// An element with its fields, outputs, states and codes, and whatever else is no word.
fn named(element: ElementRef) -> String {
    let mut named = element.value().name().to_string();
    for (name, value) in element.value().attrs() {
        let page = name == "href" && value.contains(".html");
        if WORDS.contains(&name) || page {
            named += &format!(" {name}");
        } else if name == "value" {
            // A figure may have the language's own sign.
            named += &format!(" {name}={:?}", value.replace(',', "."));
        } else {
            named += &format!(" {name}={value:?}");
        }
    }
    named
}

/// A page that is built but not listed would be judged by no test.
#[test]
fn every_page_that_is_built_is_judged() {
    let listed: BTreeSet<String> = PAGES.into_iter().flatten().map(|(_, file)| file.into()).collect();
    let all = std::fs::read_dir(folder()).unwrap();
    let names = all.map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let built: BTreeSet<String> = names.filter(|name| name.ends_with(".html")).collect();
    assert_eq!(built, listed, "in the built site, and in tests/src/site.rs");
}

fn counted(page: &Page) -> BTreeMap<String, usize> {
    page.select("*").into_iter().fold(BTreeMap::new(), |mut all, element| {
        *all.entry(named(element)).or_default() += 1;
        all
    })
}

#[test]
fn nothing_but_words_is_changed() {
    for (lang, english, other) in pairs() {
        let [ours, theirs] = [&english, &other].map(counted);
        for (a, b, what) in [(&ours, &theirs, "lacks"), (&theirs, &ours, "has of its own")] {
            let apart: Vec<_> = a.iter().filter(|(part, count)| b.get(*part) != Some(count)).collect();
            assert!(apart.is_empty(), "{} {what} {apart:#?}", other.file);
        }
        let blocks = |page: &Page| -> Vec<String> {
            let all = page.select("*").into_iter();
            all.filter(|element| !INLINE.contains(&element.value().name())).map(named).collect()
        };
        assert_eq!(blocks(&english), blocks(&other), "{}: the order of blocks", other.file);
        assert_eq!(other.values("html", "lang"), [lang.to_string()].into(), "{}", other.file);
        assert_eq!(other.select("[lang=en-US]").len(), 0, "{}", other.file);
    }
}

/// A sentence that stands in both pages was forgotten; sources keep their titles.
#[test]
fn every_sentence_is_in_the_pages_own_language() {
    for (_, english, other) in pairs() {
        let theirs = other.words();
        let sentence = |text: &&String| {
            let letters = |word: &&str| word.chars().filter(|c| c.is_alphabetic()).count() > 2;
            text.split(' ').filter(letters).count() >= 4
        };
        let source = |text: &String| SOURCES.iter().any(|name| text.contains(name));
        let words = english.words();
        let left: Vec<_> =
            words.iter().filter(sentence).filter(|text| !source(text) && theirs.contains(text)).collect();
        assert!(left.is_empty(), "{}: {left:#?}", other.file);
    }
}

const SOURCES: [&str; 7] = ["H₂Cy⁻", "Geochimica", "Truesdell", "Wahman", "Kell", "PHREEQC", "O’Brien"];

/// Of each language the words, and the words in a row, that promise it.
const PROMISES: [(&str, &[&str], &[&str]); 2] = [
    ("fr", &["sûr", "sûre", "sûrs", "sûres", "garanti"], &["sans danger", "sans risque"]),
    ("es", &["seguro", "segura", "garantizado", "garantizada"], &["sin riesgo", "sin peligro"]),
];

#[test]
fn no_language_promises_what_nobody_can() {
    for (lang, _, page) in pairs() {
        let Some((_, words, phrases)) = PROMISES.iter().find(|(of, ..)| *of == lang) else {
            panic!("{lang}: PROMISES has no words of it");
        };
        let all = page.words().join(" ").to_lowercase();
        for word in all.split(|c: char| !c.is_alphabetic()) {
            assert!(!words.contains(&word), "{}: {word}", page.file);
        }
        for phrase in *phrases {
            assert!(!all.contains(phrase), "{}: {phrase}", page.file);
        }
    }
}
