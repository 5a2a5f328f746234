//! How does an English page become one in another language?
//!
//! Words come from its catalogue; language, links and manifest follow by rule; the rest stays byte for byte. What
//! nobody has translated yet stays English, and `cargo xtask test` refuses it.

use super::catalogue::Catalogue;
use super::markup::{self, Node};
use super::messages::{self, Message};

use anyhow::{Context, Result};
use std::ops::Range;

/// What a browser keeps an installed page by.
pub const MANIFEST: &str = "saltwright.webmanifest";

/// The pages and the manifest in every language, by name.
pub fn all(
    pages: &[(String, String)],
    manifest: &str,
    languages: &[Catalogue],
) -> Result<Vec<(String, String)>> {
    let names: Vec<&str> = pages.iter().map(|(name, _)| name.as_str()).collect();
    let mut all = Vec::new();
    for (name, english) in pages {
        let english = with_languages(english, languages).with_context(|| name.clone())?;
        for language in languages {
            let name = language.name(name);
            let page = page(&english, language, &names).with_context(|| name.clone())?;
            all.push((name, page));
        }
        all.push((name.clone(), english));
    }
    for language in languages {
        all.push((language.name(MANIFEST), in_language(manifest, language)?));
    }
    all.push((MANIFEST.to_string(), manifest.to_string()));
    Ok(all)
}

/// The page in another language; `pages` are those that have one.
fn page(page: &str, catalogue: &Catalogue, pages: &[&str]) -> Result<String> {
    let mut parts = said(&messages::attributes(page)?, catalogue)?;
    parts.extend(by_rule(&markup::parse(page)?, catalogue, pages));
    parts.sort_by_key(|(span, _)| span.start);
    let page = markup::replaced(page, parts);
    let parts = said(&messages::texts(&page)?, catalogue)?;
    Ok(markup::replaced(&page, parts))
}

/// The manifest in another language.
fn in_language(manifest: &str, catalogue: &Catalogue) -> Result<String> {
    let words = markup::replaced(manifest, said(&messages::manifest(manifest)?, catalogue)?);
    let start = format!("\"start_url\": \"{}\"", catalogue.name("index.html"));
    Ok(words.replace("\"start_url\": \"./\"", &start))
}

/// The page with its link to itself, the one with `hreflang`, once for each language.
fn with_languages(page: &str, languages: &[Catalogue]) -> Result<String> {
    let mut parts = Vec::new();
    for element in
        markup::elements(&markup::parse(page)?).filter(|element| messages::is_own_language(element))
    {
        let span = element.open.start..element.close.end;
        let mut links = vec![page[span.clone()].to_string()];
        let href = element.get("href").context("a link with hreflang needs an href")?;
        for language in languages {
            let english = &page[element.open.end..element.close.start];
            let named = language.entry(english, "page").and_then(|entry| entry.msgstr().ok());
            let (href, lang) = (language.name(href), &language.lang);
            let name = markup::text(named.filter(|name| !name.is_empty()).unwrap_or(lang));
            links.push(format!("<a href=\"{href}\" hreflang=\"{lang}\" lang=\"{lang}\">{name}</a>"));
        }
        parts.push((span, links.join(" ")));
    }
    Ok(markup::replaced(page, parts))
}

fn said(messages: &[Message], catalogue: &Catalogue) -> Result<Vec<(Range<usize>, String)>> {
    let mut parts = Vec::new();
    for message in messages {
        let said = catalogue.said(message).with_context(|| message.english.clone())?;
        parts.extend(said.map(|said| (message.span.clone(), said)));
    }
    Ok(parts)
}

/// Language, links to pages that have one in it, and the manifest.
fn by_rule(nodes: &[Node], catalogue: &Catalogue, pages: &[&str]) -> Vec<(Range<usize>, String)> {
    let english =
        markup::elements(nodes).find(|element| element.name == "html").and_then(|html| html.get("lang"));
    let mut parts = Vec::new();
    for element in markup::elements(nodes).filter(|element| !messages::is_own_language(element)) {
        for attribute in &element.attributes {
            let value = &attribute.value;
            let (name, part) =
                value.split_once('#').map_or((value.as_str(), None), |(name, part)| (name, Some(part)));
            let new = match attribute.name.as_str() {
                "lang" if Some(value.as_str()) == english => catalogue.lang.clone(),
                "data-manifest" => catalogue.name(value),
                "href" if pages.contains(&name) => {
                    catalogue.name(name) + &part.map_or(String::new(), |part| format!("#{part}"))
                }
                _ => continue,
            };
            parts.push((attribute.span.clone(), markup::attribute(&attribute.name, &new)));
        }
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<!DOCTYPE html>\n<html  lang=\"en-US\">\n<a href=\"index.html\" hreflang=\"en\" lang=\"en\">English</a>\n\
        <form lang='en-US' data-manifest=\"saltwright.webmanifest\"><p title=\"Salt\">Add <b>salt</b>\n now.</p>\n\
        <p>Add <b>salt</b> now.</p><i lang=\"la\">sal</i>\
        <a href=\"first-salt.html#a\">5</a><a href=\"names.html\">6</a></form></html>";

    const WORDS: &str = "msgid \"\"\nmsgstr \"Language: fr\\n\"\n\nmsgid \"English\"\nmsgstr \"français\"\n\n\
        msgid \"Salt\"\nmsgstr \"Sel\"\n\nmsgid \"Add <1>salt</1> now.\"\nmsgstr \"<1>Sel</1> à mettre.\"\n";

    fn translated(words: &str) -> Result<Vec<(String, String)>> {
        let pages = ["index.html", "first-salt.html"].map(|name| (name.to_string(), PAGE.to_string()));
        all(&pages, "{ \"name\": \"Salt\", \"start_url\": \"./\" }", &[Catalogue::of("fr", words)])
    }

    #[test]
    fn a_page_has_its_words_its_language_and_its_links_and_else_stays_as_it_was() {
        let all = translated(WORDS).unwrap();
        let links = "<a href=\"index.html\" hreflang=\"en\" lang=\"en\">English</a> \
                     <a href=\"index.fr.html\" hreflang=\"fr\" lang=\"fr\">français</a>";
        let rest = "<p title=\"Sel\"><b>Sel</b> à mettre.</p>\n<p><b>Sel</b> à mettre.</p><i lang=\"la\">sal</i>\
                    <a href=\"first-salt.fr.html#a\">5</a><a href=\"names.html\">6</a></form></html>";
        let manifest = "data-manifest=\"saltwright.fr.webmanifest\"";
        let french =
            format!("<!DOCTYPE html>\n<html  lang=\"fr\">\n{links}\n<form lang=\"fr\" {manifest}>{rest}");
        assert_eq!(all[0], ("index.fr.html".to_string(), french));
        assert!(all[1].1.contains(links) && all[1].1.contains("title=\"Salt\""), "{}", all[1].1);
        let manifest = "{ \"name\": \"Sel\", \"start_url\": \"index.fr.html\" }";
        assert_eq!(all[4], ("saltwright.fr.webmanifest".to_string(), manifest.to_string()));
        assert_eq!(all.len(), 6);
    }

    #[test]
    fn words_that_nobody_has_looked_at_stay_english() {
        for words in [
            WORDS.replace("msgid \"Salt\"", "#, fuzzy\nmsgid \"Salt\""),
            WORDS.replace("\"Sel\"", "\"\""),
            WORDS.replace("msgid \"Salt\"", "msgctxt \"elsewhere\"\nmsgid \"Salt\""),
        ] {
            assert!(translated(&words).unwrap()[0].1.contains("title=\"Salt\""), "{words}");
        }
        let here = WORDS.to_string() + "\nmsgctxt \"page\"\nmsgid \"Salt\"\nmsgstr \"Le sel\"\n";
        assert!(translated(&here).unwrap()[0].1.contains("title=\"Le sel\""));
    }

    #[test]
    fn a_translation_without_its_placeholders_builds_no_page() {
        let error = translated(&WORDS.replace("<1>Sel</1> à", "Sel à")).unwrap_err();
        assert!(format!("{error:#}").contains("index.fr.html: Add <1>salt</1> now."), "{error:#}");
    }
}
