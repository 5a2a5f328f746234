//! Are the pages in other languages the same pages, with nothing but words changed?
//!
//! Each tag with its attributes must stand in the other page as often as in the English one, blocks in the same order;
//! within a sentence a language may order as it needs.

use std::collections::BTreeMap;

/// Each with its language and its name in it; as the build expands them: `cargo xtask pages` makes them.
const PAGES: [(&str, &str, &str); 4] = [
    ("index.html", "fr", "fr.html"),
    ("index.html", "es", "es.html"),
    ("first-salt.html", "fr", "first-salt.fr.html"),
    ("first-salt.html", "es", "first-salt.es.html"),
];

fn page(name: &str) -> String {
    let path = concat!(env!("CARGO_TARGET_TMPDIR"), "/../pages/").to_string() + name;
    std::fs::read_to_string(path).expect("cargo xtask pages comes first")
}

/// Attributes that hold words, or what goes by the language.
const WORDS: [&str; 6] = ["aria-label", "alt", "title", "content", "data-manifest", "lang"];

/// Tags that a sentence may order in its own way.
const INLINE: [&str; 8] = ["a", "b", "em", "i", "span", "output", "sub", "sup"];

struct Tag {
    name: String,
    /// With its attributes, words left out.
    whole: String,
}

/// The tags of a page, comments left out, and the words between them.
fn taken_apart(page: &str) -> (Vec<Tag>, Vec<String>) {
    let (mut tags, mut words) = (Vec::new(), Vec::new());
    for piece in page.split('<').skip(1).filter(|piece| !piece.starts_with('!')) {
        let (tag, text) = piece.split_once('>').expect("a tag ends");
        let name = tag.split(' ').next().unwrap().trim_start_matches('/').to_string();
        tags.push(Tag { name, whole: without_words(tag) });
        if !text.trim().is_empty() {
            words.push(text.split_whitespace().collect::<Vec<_>>().join(" "));
        }
    }
    (tags, words)
}

fn without_words(tag: &str) -> String {
    let mut out = String::new();
    let mut rest = tag;
    while let Some((before, after)) = rest.split_once("=\"") {
        let (value, more) = after.split_once('"').expect("a value ends");
        let attribute = before.rsplit(' ').next().unwrap();
        let page = attribute == "href" && value.contains(".html");
        let value = if WORDS.contains(&attribute) || page { String::new() } else { value.to_string() };
        // A figure may have the language's own sign.
        let value = if attribute == "value" { value.replace(',', ".") } else { value };
        out += &format!("{before}=\"{value}\"");
        rest = more;
    }
    out + rest
}

fn counted<'a>(tags: impl Iterator<Item = &'a Tag>) -> BTreeMap<&'a str, usize> {
    tags.fold(BTreeMap::new(), |mut all, tag| {
        *all.entry(tag.whole.as_str()).or_default() += 1;
        all
    })
}

#[test]
fn nothing_but_words_is_changed() {
    for (english, lang, other) in PAGES {
        let (english, other) = (&page(english), &page(other));
        let (ours, theirs) = (taken_apart(english).0, taken_apart(other).0);
        let (ours_counted, theirs_counted) = (counted(ours.iter()), counted(theirs.iter()));
        for (tag, count) in &ours_counted {
            assert_eq!(theirs_counted.get(tag), Some(count), "{lang}: <{tag}>");
        }
        assert_eq!(ours.len(), theirs.len(), "{lang}");
        let blocks = |tags: &[Tag]| -> Vec<String> {
            tags.iter()
                .filter(|tag| !INLINE.contains(&tag.name.as_str()))
                .map(|tag| tag.whole.clone())
                .collect()
        };
        assert_eq!(blocks(&ours), blocks(&theirs), "{lang}: the order of blocks");
        assert!(other.contains(&format!("<html lang=\"{lang}\">")), "{lang}");
        assert!(!other.contains("lang=\"en-GB\""), "{lang}");
    }
}

/// A sentence that stands in both pages was forgotten; sources keep their titles.
#[test]
fn every_sentence_is_in_the_pages_own_language() {
    for (english, lang, other) in PAGES {
        let (english, other) = (&page(english), &page(other));
        let words = taken_apart(english).1;
        let theirs = taken_apart(other).1;
        let sentence = |text: &&String| {
            let letters = |word: &&str| word.chars().filter(|c| c.is_alphabetic()).count() > 2;
            text.split(' ').filter(letters).count() >= 4
        };
        let source = |text: &String| SOURCES.iter().any(|name| text.contains(name));
        let left: Vec<_> =
            words.iter().filter(sentence).filter(|text| !source(text) && theirs.contains(text)).collect();
        assert!(left.is_empty(), "{lang}: {left:#?}");
    }
}

const SOURCES: [&str; 7] = ["H₂Cy⁻", "Geochimica", "Truesdell", "Wahman", "Kell", "PHREEQC", "O’Brien"];

#[test]
fn no_language_promises_what_nobody_can() {
    for (_, lang, name) in PAGES {
        let page = page(name);
        let words: Vec<String> =
            page.to_lowercase().split(|c: char| !c.is_alphabetic()).map(String::from).collect();
        for word in
            ["sûr", "sûre", "sûrs", "sûres", "garanti", "seguro", "segura", "garantizado", "garantizada"]
        {
            assert!(!words.iter().any(|w| w == word), "{lang}: {word}");
        }
        let page = page.to_lowercase();
        for words in ["sans danger", "sans risque", "sin riesgo", "sin peligro"] {
            assert!(!page.contains(words), "{lang}: {words}");
        }
    }
}
