//! Which elements has a page, and where in its source does each stand?
//!
//! The source itself is kept: whoever changes a part of it leaves the rest byte for byte.

use anyhow::{Context, Result, bail, ensure};
use html5gum::emitters::default::DefaultEmitter;
use html5gum::{Token, Tokenizer};
use std::ops::Range;

/// Elements without an end tag.
const VOID: [&str; 10] = ["area", "br", "col", "embed", "hr", "img", "input", "link", "meta", "wbr"];

pub enum Node {
    Text {
        words: String,
        span: Range<usize>,
    },
    Element(Element),
    /// A comment or the doctype.
    Other(Range<usize>),
}

pub struct Element {
    pub name: String,
    pub attributes: Vec<Attribute>,
    pub children: Vec<Node>,
    /// Its start tag.
    pub open: Range<usize>,
    /// Its end tag; empty for an element that has none.
    pub close: Range<usize>,
}

pub struct Attribute {
    pub name: String,
    pub value: String,
    /// Name, sign and quotes too.
    pub span: Range<usize>,
}

impl Node {
    pub fn element(&self) -> Option<&Element> {
        if let Self::Element(element) = self { Some(element) } else { None }
    }

    pub fn span(&self) -> Range<usize> {
        match self {
            Self::Text { span, .. } | Self::Other(span) => span.clone(),
            Self::Element(element) => element.open.start..element.close.end,
        }
    }
}

impl Element {
    pub fn get(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|attribute| attribute.name == name).map(|found| found.value.as_str())
    }
}

/// The elements of a page that closes each of them.
pub fn parse(page: &str) -> Result<Vec<Node>> {
    let mut emitter = DefaultEmitter::<usize>::new_with_span();
    emitter.naively_switch_states(true);
    let (mut open, mut nodes, mut end) = (Vec::new(), Vec::<Node>::new(), 0);
    for token in Tokenizer::new_with_emitter(page, emitter) {
        let Ok(token) = token;
        let line = || format!("line {}", page[..end].lines().count());
        match token {
            Token::String(string) => {
                let words = String::from_utf8(string.value.0)?;
                match nodes.last_mut() {
                    Some(Node::Text { words: before, .. }) => before.push_str(&words),
                    _ => nodes.push(Node::Text { words, span: end..end }),
                }
                continue;
            }
            Token::Error(error) => bail!("{}: {}", line(), error.value),
            Token::StartTag(tag) => {
                ends(&mut nodes, tag.span.start);
                end = tag.span.end;
                let name = String::from_utf8(tag.name.0)?;
                let mut attributes = Vec::new();
                for (name, value) in tag.attributes {
                    let (name, span) = (String::from_utf8(name.0)?, value.span.start..value.span.end);
                    attributes.push(Attribute { name, value: String::from_utf8(value.value.0)?, span });
                }
                attributes.sort_by_key(|attribute| attribute.span.start);
                let whole = tag.self_closing || VOID.contains(&name.as_str());
                let span = tag.span.start..tag.span.end;
                let element = Element { name, attributes, children: Vec::new(), open: span, close: end..end };
                if whole {
                    nodes.push(Node::Element(element));
                } else {
                    open.push((element, std::mem::take(&mut nodes)));
                }
            }
            Token::EndTag(tag) => {
                ends(&mut nodes, tag.span.start);
                let (mut element, before) = open.pop().with_context(line)?;
                ensure!(
                    tag.name == element.name.as_bytes().to_vec(),
                    "{}: <{}> is not closed",
                    line(),
                    element.name
                );
                end = tag.span.end;
                element.close = tag.span.start..tag.span.end;
                element.children = std::mem::replace(&mut nodes, before);
                nodes.push(Node::Element(element));
            }
            Token::Comment(token) => {
                ends(&mut nodes, token.span.start);
                end = token.span.end;
                nodes.push(Node::Other(token.span.start..token.span.end));
            }
            Token::Doctype(token) => {
                end = token.span.end;
                nodes.push(Node::Other(token.span.start..token.span.end));
            }
        }
    }
    ends(&mut nodes, page.len());
    if let Some((element, _)) = open.pop() {
        bail!("<{}> is not closed", element.name);
    }
    Ok(nodes)
}

/// Every element, those within others too, in order.
pub fn elements(nodes: &[Node]) -> impl Iterator<Item = &Element> {
    fn add<'a>(nodes: &'a [Node], all: &mut Vec<&'a Element>) {
        for element in nodes.iter().filter_map(Node::element) {
            all.push(element);
            add(&element.children, all);
        }
    }
    let mut all = Vec::new();
    add(nodes, &mut all);
    all.into_iter()
}

fn ends(nodes: &mut [Node], at: usize) {
    if let Some(Node::Text { span, .. }) = nodes.last_mut() {
        span.end = at;
    }
}

/// The page with some of its parts replaced; they stand in order.
pub fn replaced(page: &str, parts: impl IntoIterator<Item = (Range<usize>, String)>) -> String {
    let (mut out, mut at) = (String::new(), 0);
    for (span, new) in parts {
        out += &page[at..span.start];
        out += &new;
        at = span.end;
    }
    out + &page[at..]
}

/// White space that HTML folds; a space that holds words together is not.
pub fn is_space(c: char) -> bool {
    matches!(c, ' ' | '\n' | '\t')
}

pub fn attribute(name: &str, value: &str) -> String {
    format!("{name}=\"{}\"", value.replace('&', "&amp;").replace('"', "&quot;"))
}

pub fn text(words: &str) -> String {
    words.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<!DOCTYPE html>\n<p class=a id=\"é\" hidden>é &lt; <br>\n<b>&amp;</b> ü<!-- ö --> ä</p><svg><path d=\"\"/></svg>\n";

    #[test]
    fn every_node_knows_its_source() {
        let nodes = parse(PAGE).unwrap();
        assert_eq!(nodes.iter().map(|node| &PAGE[node.span()]).collect::<String>(), PAGE);
        let p = elements(&nodes).next().unwrap();
        let inner = &PAGE[p.open.end..p.close.start];
        assert_eq!(p.children.iter().map(|node| &PAGE[node.span()]).collect::<String>(), inner);
        let attributes: Vec<_> = p.attributes.iter().map(|attribute| &PAGE[attribute.span.clone()]).collect();
        assert_eq!(attributes[1..], ["id=\"é\"", "hidden"]);
        assert_eq!(
            elements(&nodes).map(|element| element.name.as_str()).collect::<Vec<_>>(),
            ["p", "br", "b", "svg", "path"]
        );
        let words =
            |node: &Node| if let Node::Text { words, .. } = node { words.clone() } else { String::new() };
        assert_eq!(p.children.iter().map(words).collect::<String>(), "é < \n ü ä");
    }

    #[test]
    fn an_element_that_is_not_closed_is_refused_with_its_line() {
        for wrong in ["<p>\n<b>a</p>", "<p>", "a\n</p>", "<p a=\"1\" a=\"2\"></p>"] {
            assert!(parse(wrong).is_err(), "{wrong}");
        }
        let error = parse("<p>\n<b>a</p>").err().unwrap().to_string();
        assert!(error.contains("line 2") && error.contains("<b>"), "{error}");
    }

    #[test]
    fn the_rest_stays_when_a_part_is_replaced() {
        assert_eq!(replaced("aébc", [(1..3, "x".to_string()), (4..4, "y".to_string())]), "axbyc");
    }
}
