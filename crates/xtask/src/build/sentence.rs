//! How does a sentence of a page stand before a translator, without its HTML?
//!
//! Each element within is a numbered placeholder: `<1>words</1>`, or `<1/>` if a translator has nothing to do in it.

use super::markup::{self, Element, Node};
use anyhow::{Context, Result, ensure};
use std::collections::BTreeSet;

/// Signs that one language spaces or forms otherwise than the next, and so are words to a translator.
const SIGNS: [char; 9] = [':', ';', '!', '?', '%', '“', '”', '«', '»'];

/// A run of text and inline elements.
#[derive(Default)]
pub struct Sentence {
    pub english: String,
    /// What each placeholder stands for.
    pub notes: Vec<String>,
    /// The source that opens each, and that closes it.
    elements: Vec<(String, String)>,
}

impl Sentence {
    pub fn of(page: &str, run: &[&Node]) -> Self {
        let mut sentence = Self::default();
        for node in run {
            sentence.add(page, node);
        }
        sentence.english = sentence.english.trim_matches(markup::is_space).to_string();
        sentence
    }

    fn add(&mut self, page: &str, node: &Node) {
        match node {
            Node::Text { words, .. } => {
                for c in words.chars() {
                    let c = if markup::is_space(c) { ' ' } else { c };
                    if c != ' ' || !self.english.ends_with(' ') {
                        self.english.push(c);
                    }
                }
            }
            Node::Element(element) if element.children.iter().any(is_open) => {
                self.elements.push((page[element.open.clone()].into(), page[element.close.clone()].into()));
                let number = self.elements.len();
                self.notes.push(format!("{number}: {}", told(element)));
                self.english += &format!("<{number}>");
                for child in &element.children {
                    self.add(page, child);
                }
                self.english += &format!("</{number}>");
            }
            Node::Element(element) => {
                self.elements.push((page[element.open.start..element.close.end].into(), String::new()));
                let number = self.elements.len();
                let sign = match page[element.open.end..element.close.start].trim() {
                    "" | "–" => String::new(),
                    sign => format!(" {sign}"),
                };
                self.notes.push(format!("{number}: {}{sign}", told(element)));
                self.english += &format!("<{number}/>");
            }
            Node::Other(_) => {}
        }
    }

    /// The source that says it in other words.
    pub fn said(&self, words: &str) -> Result<String> {
        let same = held(&self.english)? == held(words)?;
        ensure!(same, "the placeholders of the translation are not those of the English: {words:?}");
        let element = |number: usize| {
            self.elements.get(number - 1).with_context(|| format!("<{number}> is no element"))
        };
        let mut said = String::new();
        for piece in pieces(words) {
            match piece {
                Piece::Words(words) => said += &markup::text(words),
                Piece::Open(n) | Piece::Whole(n) => said += &element(n)?.0,
                Piece::Close(n) => said += &element(n)?.1,
            }
        }
        Ok(said)
    }
}

/// Words, or an element beside which a language may need some.
fn is_open(node: &Node) -> bool {
    match node {
        Node::Text { words, .. } => says(words),
        Node::Element(_) => true,
        Node::Other(_) => false,
    }
}

/// Is there anything in it that a language says its own way?
pub fn says(words: &str) -> bool {
    let figure =
        |part: &[u8]| part[0].is_ascii_digit() && matches!(part[1], b'.' | b',') && part[2].is_ascii_digit();
    words.contains(|c: char| c.is_alphabetic() || SIGNS.contains(&c))
        || words.as_bytes().windows(3).any(figure)
}

/// What a translator has to know of an element: a figure by its name, a link by its goal, a part by when it is shown.
fn told(element: &Element) -> String {
    let known =
        ["name", "href", "data-when", "data-n"].iter().find_map(|name| Some((name, element.get(name)?)));
    match known {
        Some((&"data-when", when)) => format!("{} when {when}", element.name),
        Some((_, value)) if !value.starts_with("#sw1") => format!("{} {value}", element.name),
        _ => element.name.clone(),
    }
}

enum Piece<'a> {
    Words(&'a str),
    Open(usize),
    Close(usize),
    Whole(usize),
}

/// Words and placeholders in turn; `<` before anything but a number is a sign like any other.
fn pieces(words: &str) -> Vec<Piece<'_>> {
    let (mut pieces, mut plain, mut at) = (Vec::new(), 0, 0);
    while let Some(found) = words[at..].find('<') {
        let start = at + found;
        at = start + 1;
        let Some((inner, _)) = words[at..].split_once('>') else { break };
        let number = inner.trim_start_matches('/').trim_end_matches('/').parse().ok().filter(|n| *n > 0);
        let piece = match (number, inner.starts_with('/'), inner.ends_with('/')) {
            (Some(n), false, false) => Piece::Open(n),
            (Some(n), true, false) => Piece::Close(n),
            (Some(n), false, true) => Piece::Whole(n),
            _ => continue,
        };
        pieces.extend((plain < start).then(|| Piece::Words(&words[plain..start])));
        pieces.push(piece);
        at += inner.len() + 1;
        plain = at;
    }
    pieces.extend((plain < words.len()).then(|| Piece::Words(&words[plain..])));
    pieces
}

/// A placeholder, the one that it stands in, and whether it is whole.
type Held = (usize, Option<usize>, bool);

/// Which placeholders there are, in whatever order.
fn held(words: &str) -> Result<BTreeSet<Held>> {
    let (mut held, mut within) = (BTreeSet::<Held>::new(), Vec::new());
    for piece in pieces(words) {
        let (number, whole) = match piece {
            Piece::Words(_) => continue,
            Piece::Open(n) => (n, false),
            Piece::Whole(n) => (n, true),
            Piece::Close(n) => {
                ensure!(within.pop() == Some(n), "</{n}> closes what is not open");
                continue;
            }
        };
        ensure!(held.iter().all(|(known, ..)| *known != number), "<{number}> stands twice");
        held.insert((number, within.last().copied(), whole));
        within.extend((!whole).then_some(number));
    }
    ensure!(within.is_empty(), "{within:?} is never closed");
    Ok(held)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<p> Filled &amp; level,\n<a href=\"#x\">here</a> m<sup>3</sup>: \
        <span data-when=\"pool.big\">about <output name=\"pool.size\">–</output></span>, <b>E<sup>−1.5</sup></b> </p>";

    fn sentence() -> Sentence {
        let nodes = markup::parse(PAGE).unwrap();
        let children: Vec<_> = nodes[0].element().unwrap().children.iter().collect();
        Sentence::of(PAGE, &children)
    }

    #[test]
    fn a_translator_sees_numbers_for_elements_and_is_told_what_they_are() {
        let sentence = sentence();
        assert_eq!(
            sentence.english,
            "Filled & level, <1>here</1> m<2/>: <3>about <4/></3>, <5>E<6>−1.5</6></5>"
        );
        let notes = ["1: a #x", "2: sup 3", "3: span when pool.big", "4: output pool.size", "5: b", "6: sup"];
        assert_eq!(sentence.notes, notes);
    }

    #[test]
    fn a_sentence_goes_there_and_back() {
        let same = sentence().said(&sentence().english).unwrap();
        assert_eq!(format!("<p> {same} </p>"), PAGE.replace('\n', " "));
    }

    #[test]
    fn another_language_has_its_own_order_and_signs() {
        let said = sentence().said("<5>E<6>−1,5</6></5> < 2 & <3><4/> environ</3> m<2/>, <1>là</1>").unwrap();
        assert_eq!(
            said,
            "<b>E<sup>−1,5</sup></b> &lt; 2 &amp; <span data-when=\"pool.big\"><output \
             name=\"pool.size\">–</output> environ</span> m<sup>3</sup>, <a href=\"#x\">là</a>"
        );
    }

    #[test]
    fn placeholders_that_are_not_those_of_the_english_are_refused() {
        let english = sentence().english;
        for (from, to) in [
            ("<2/>", ""),
            ("<2/>", "<2/><2/>"),
            ("<2/>", "<7/>"),
            ("<2/>", "<2></2>"),
            ("</1>", ""),
            ("<3>about <4/></3>", "<3>about</3> <4/>"),
            ("<1>here</1>", "<1/>"),
            ("</6></5>", "</5></6>"),
        ] {
            let wrong = english.replacen(from, to, 1);
            assert_ne!(wrong, english);
            assert!(sentence().said(&wrong).is_err(), "{wrong}");
        }
    }
}
