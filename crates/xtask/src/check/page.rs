//! What is wrong with a page that somebody wrote?

use super::words;
use anyhow::{Context, Result, bail};
use form::contract::lint::{Element, Finding, Known, findings};
use scraper::{ElementRef, Html, Node, Selector};
use std::fs;

/// Prints the findings in a file; an error where there are any.
pub fn check(file: &str) -> Result<()> {
    let html = fs::read_to_string(file).with_context(|| format!("{file} can't be read"))?;
    let lines = lines(&html, &Known::of_the_contract())?;
    for line in &lines {
        println!("{file}:{line}");
    }
    match lines.len() {
        0 => println!("{file}: nothing to put right"),
        count => bail!("{file}: {count} to put right"),
    }
    Ok(())
}

/// A line a finding: where, element, what is wrong and what to do.
pub fn lines(html: &str, known: &Known) -> Result<Vec<String>> {
    let forms = forms(html);
    if forms.is_empty() {
        bail!("there is no form with data-saltwright in it");
    }
    let mut lines = Vec::new();
    for elements in &forms {
        for Finding { place, kind } in findings(known, elements) {
            let element = &elements[place];
            let line = line_of(html, element).map_or(String::new(), |line| format!("{line}: "));
            lines.push(format!("{line}{}: {}", called(element), words(&kind)));
        }
    }
    Ok(lines)
}

/// An element as its author knows it.
fn called(element: &Element) -> String {
    let named =
        ["name", "data-when", "data-fault", "data-each", "data-act", "data-mark", "data-shape", "value"];
    let first = named.iter().find_map(|name| Some(format!(" {name}=\"{}\"", element.attribute(name)?)));
    format!("<{}{}>", element.tag, first.unwrap_or_default())
}

/// The line that it stands in, where no other element in the file has the same attributes.
fn line_of(html: &str, element: &Element) -> Option<usize> {
    let (name, value) = element.attributes.iter().max_by_key(|(_, value)| value.len())?;
    let written = [format!("{name}=\"{value}\""), format!("{name}='{value}'"), format!("{name}={value}")];
    let tag = format!("<{}", element.tag);
    let has_it = |line: &str| line.contains(&tag) && written.iter().any(|written| line.contains(written));
    let mut lines = html.lines().enumerate().filter(|(_, line)| has_it(line));
    let (at, _) = lines.next()?;
    lines.next().is_none().then_some(at + 1)
}

/// The elements of each form of ours.
pub fn forms(html: &str) -> Vec<Vec<Element>> {
    let page = Html::parse_document(html);
    let Ok(ours) = Selector::parse("form[data-saltwright]") else { return Vec::new() };
    let forms = page.select(&ours).map(|form| {
        let mut elements = Vec::new();
        collect(form, None, &mut elements);
        elements
    });
    forms.collect()
}

fn collect(within: ElementRef, parent: Option<usize>, elements: &mut Vec<Element>) {
    // What is in a template hangs under a node of its own.
    let children = within.children().flat_map(|child| match child.value() {
        Node::Fragment => child.children().collect::<Vec<_>>(),
        _ => vec![child],
    });
    for child in children.filter_map(ElementRef::wrap) {
        let place = elements.len();
        elements.push(Element {
            tag: child.value().name().into(),
            attributes: child.value().attrs().map(|(name, value)| (name.into(), value.into())).collect(),
            parent,
            has_words: child.text().any(|text| !text.trim().is_empty()),
        });
        collect(child, Some(place), elements);
    }
}
