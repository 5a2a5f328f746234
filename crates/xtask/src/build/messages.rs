//! What of a page is to be translated, and where does it stand?
//!
//! A message is a run of text and inline elements within one block, or an attribute that people read. Its inline
//! elements become numbered placeholders: neither HTML nor a name of the contract stands before a translator.

use super::markup::{self, Attribute, Element, Node};
use super::sentence::{Sentence, says};
use anyhow::{Context, Result};
use std::ops::Range;

/// Elements that stand within a sentence; every other one ends it.
const INLINE: [&str; 19] = [
    "a", "abbr", "b", "br", "cite", "code", "em", "i", "kbd", "mark", "output", "q", "small", "span",
    "strong", "sub", "sup", "time", "var",
];

/// Attributes that people read or hear.
const READ: [&str; 5] = ["aria-label", "title", "placeholder", "alt", "label"];

/// Elements whose text is for machines.
const MUTE: [&str; 2] = ["script", "style"];

/// One thing to translate.
pub struct Message {
    /// The English, with placeholders.
    pub english: String,
    /// The nearest `id`: where a reader of the page finds it, and the `msgctxt` of a translation for here alone.
    pub place: String,
    /// What the placeholders 1, 2 and so on stand for, and what else a translator has to know.
    pub notes: Vec<String>,
    /// What of the page it takes up.
    pub span: Range<usize>,
    form: Form,
}

enum Form {
    Text(Sentence),
    /// With its name.
    Attribute(String),
    /// In a manifest.
    Json,
}

impl Message {
    /// The source that says it in other words.
    pub fn said(&self, words: &str) -> Result<String> {
        match &self.form {
            Form::Text(sentence) => sentence.said(words),
            Form::Attribute(name) => Ok(markup::attribute(name, words)),
            Form::Json => Ok(serde_json::to_string(words)?),
        }
    }
}

/// The attributes of a page that people read, in order.
pub fn attributes(page: &str) -> Result<Vec<Message>> {
    let mut found = Vec::new();
    in_attributes(&markup::parse(page)?, "page", &mut found);
    Ok(found)
}

/// The texts of a page, in order.
pub fn texts(page: &str) -> Result<Vec<Message>> {
    let mut found = Vec::new();
    in_texts(page, &markup::parse(page)?, "page", &mut found);
    Ok(found)
}

/// The names of languages, each in itself.
pub fn languages(page: &str) -> Result<Vec<Message>> {
    let mut found = Vec::new();
    for link in markup::elements(&markup::parse(page)?).filter(|element| is_own_language(element)) {
        in_texts(page, &link.children, "page", &mut found);
    }
    found
        .iter_mut()
        .for_each(|message| message.notes.push("the name of your language, in itself".to_string()));
    Ok(found)
}

/// What of a manifest people read.
pub fn manifest(manifest: &str) -> Result<Vec<Message>> {
    let name = serde_json::from_str::<serde_json::Value>(manifest)?["name"].clone();
    let english = name.as_str().context("a manifest has a name")?.to_string();
    let name = name.to_string();
    let start = manifest.find(&name).context("a manifest's name is spelt plainly")?;
    let notes = vec!["the name of the installed page".to_string()];
    Ok(vec![Message {
        english,
        place: "name".into(),
        notes,
        span: start..start + name.len(),
        form: Form::Json,
    }])
}

fn in_attributes(nodes: &[Node], place: &str, found: &mut Vec<Message>) {
    for element in nodes.iter().filter_map(Node::element) {
        let place = place_of(element, place);
        for attribute in element.attributes.iter().filter(|attribute| is_read(element, attribute)) {
            found.push(Message {
                english: attribute.value.clone(),
                place: place.to_string(),
                notes: vec![format!("{} of {}", attribute.name, element.name)],
                span: attribute.span.clone(),
                form: Form::Attribute(attribute.name.clone()),
            });
        }
        in_attributes(&element.children, place, found);
    }
}

/// A figure typed beforehand is read for its decimal sign.
fn is_read(element: &Element, attribute: &Attribute) -> bool {
    let value = &attribute.value;
    match attribute.name.as_str() {
        "content" => element.name == "meta" && element.get("name") == Some("description"),
        "value" => {
            let typed =
                element.name == "input" && matches!(element.get("type"), None | Some("text" | "hidden"));
            typed && value.contains('.') && value.bytes().all(|c| c == b'.' || c.is_ascii_digit())
        }
        name => READ.contains(&name) && says(value),
    }
}

fn in_texts(page: &str, nodes: &[Node], place: &str, found: &mut Vec<Message>) {
    let mut run = Vec::new();
    for node in nodes {
        if is_inline(node) {
            run.push(node);
            continue;
        }
        in_run(page, &std::mem::take(&mut run), place, found);
        if let Node::Element(element) = node
            && !MUTE.contains(&element.name.as_str())
            && !is_own_language(element)
        {
            in_texts(page, &element.children, place_of(element, place), found);
        }
    }
    in_run(page, &run, place, found);
}

/// One message if words stand between its elements; else each element has its own, or none.
fn in_run(page: &str, run: &[&Node], place: &str, found: &mut Vec<Message>) {
    if run.iter().any(|node| matches!(node, Node::Text { words, .. } if says(words))) {
        found.push(message(page, run, place));
        return;
    }
    for element in run.iter().filter_map(|node| node.element()) {
        in_texts(page, &element.children, place_of(element, place), found);
    }
}

fn message(page: &str, run: &[&Node], place: &str) -> Message {
    let sentence = Sentence::of(page, run);
    let (start, end) = (run[0].span().start, run[run.len() - 1].span().end);
    let before = page[start..end].len() - page[start..end].trim_start_matches(markup::is_space).len();
    let end = start + page[start..end].trim_end_matches(markup::is_space).len();
    Message {
        english: sentence.english.clone(),
        place: place.to_string(),
        notes: sentence.notes.clone(),
        span: start + before..end,
        form: Form::Text(sentence),
    }
}

fn place_of<'a>(element: &'a Element, around: &'a str) -> &'a str {
    element.get("id").or(element.get("for")).unwrap_or(around)
}

/// Is it a link to a page by its language, named in that one?
pub fn is_own_language(element: &Element) -> bool {
    element.get("hreflang").is_some()
}

fn is_inline(node: &Node) -> bool {
    match node {
        Node::Text { .. } => true,
        Node::Element(element) => {
            INLINE.contains(&element.name.as_str())
                && !is_own_language(element)
                && element.children.iter().all(is_inline)
        }
        Node::Other(_) => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<!DOCTYPE html>\n<html lang=\"en\"><title>Salt</title>\
        <meta name=\"viewport\" content=\"width=9\"><meta name=\"description\" content=\"How much?\">\
        <a href=\"index.html\" hreflang=\"en\" lang=\"en\">English</a><script>if (a) b < c</script>\
        <!-- never --><p id=\"a\"><label for=\"b\"><input type=\"radio\" value=\"1.5\"> an owner</label> 12 –\n\
        <input value=\"99.4\" aria-label=\"&lt;Purity&gt;\"> % <select id=\"b\"><option value=\"m\">metre</option></select> \
        <span><b data-when=\"a\">needed</b><i> = <output name=\"c\">–</output></i></span></p>\
        <ul><li>Add <output name=\"d\"></output>.</li><li>0.5</li><li>5</li></ul></html>";

    fn seen(messages: Vec<Message>) -> Vec<String> {
        messages.iter().map(|message| format!("{}: {}", message.place, message.english)).collect()
    }

    #[test]
    fn each_block_has_its_messages_and_what_has_no_words_has_none() {
        let texts =
            ["page: Salt", "b: an owner", "a: %", "b: metre", "a: needed", "page: Add <1/>.", "page: 0.5"];
        assert_eq!(seen(texts_of(PAGE)), texts);
    }

    fn texts_of(page: &str) -> Vec<Message> {
        super::texts(page).unwrap()
    }

    #[test]
    fn attributes_that_people_read_are_messages() {
        let found = attributes(PAGE).unwrap();
        let said: Vec<_> = found.iter().map(|message| message.said("a \"<1>\" & b").unwrap()).collect();
        assert_eq!(seen(found), ["page: How much?", "a: 99.4", "a: <Purity>"]);
        assert_eq!(said[2], "aria-label=\"a &quot;<1>&quot; &amp; b\"");
    }

    #[test]
    fn a_language_is_named_apart() {
        assert_eq!(seen(languages(PAGE).unwrap()), ["page: English"]);
    }

    #[test]
    fn a_message_is_told_by_what_it_takes_up() {
        for message in texts_of(PAGE) {
            let source = &PAGE[message.span.clone()];
            assert_eq!(message.said(&message.english).unwrap(), source);
        }
    }

    #[test]
    fn a_manifest_has_a_name() {
        let text = "{ \"name\": \"Salt: a\", \"short_name\": \"Salt\" }";
        let [message] = &manifest(text).unwrap()[..] else { panic!() };
        assert_eq!((message.english.as_str(), &text[message.span.clone()]), ("Salt: a", "\"Salt: a\""));
        assert_eq!(message.said("Sel \"b\"").unwrap(), "\"Sel \\\"b\\\"\"");
    }
}
