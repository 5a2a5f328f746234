//! Which pages has the built site, in which languages, and what stands in them?

use scraper::{ElementRef, Html, Selector};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Files that are one page, each with its language; English first.
pub type InEachLanguage = [(&'static str, &'static str); 3];

/// The sheet as the build names it.
pub const SHEETS: InEachLanguage =
    [("en-US", "index.html"), ("fr", "index.fr.html"), ("es", "index.es.html")];

/// The first lesson.
pub const LESSONS: InEachLanguage =
    [("en-US", "first-salt.html"), ("fr", "first-salt.fr.html"), ("es", "first-salt.es.html")];

/// All pages of our own.
pub const PAGES: [InEachLanguage; 2] = [SHEETS, LESSONS];

/// The file of a page in a language.
pub fn in_language(page: InEachLanguage, lang: &str) -> &'static str {
    page.iter().find(|(of, _)| *of == lang).unwrap_or_else(|| panic!("no page in {lang}")).1
}

/// The folder of the built site: `SALTWRIGHT_SITE`, or where `cargo xtask build` leaves it.
pub fn folder() -> PathBuf {
    let given = std::env::var_os("SALTWRIGHT_SITE").map(PathBuf::from);
    let folder = given.unwrap_or_else(|| Path::new(env!("CARGO_MANIFEST_DIR")).join("../target/site"));
    assert!(folder.is_dir(), "there is no {}: run `cargo xtask build` first", folder.display());
    folder
}

/// A built page, read as a browser reads it.
pub struct Page {
    /// What it is called.
    pub file: String,
    /// Its elements and texts.
    pub html: Html,
}

/// The sheet in English, which has every name there is.
pub fn sheet() -> Page {
    Page::read(SHEETS[0].1)
}

impl Page {
    /// The page of this name.
    pub fn read(file: &str) -> Self {
        let text = std::fs::read_to_string(folder().join(file)).unwrap_or_else(|error| {
            panic!("{file}: {error}: run `cargo xtask build` first");
        });
        Self { file: file.into(), html: Html::parse_document(&text) }
    }

    /// The elements that a selector of CSS finds, those in templates too.
    pub fn select(&self, selector: &str) -> Vec<ElementRef<'_>> {
        let selector = Selector::parse(selector).unwrap_or_else(|error| panic!("{selector}: {error}"));
        self.html.select(&selector).collect()
    }

    /// Every value that an attribute has, in the elements that a selector finds.
    pub fn values(&self, selector: &str, attribute: &str) -> BTreeSet<String> {
        let found = self.select(selector).into_iter();
        found.filter_map(|element| element.attr(attribute)).map(String::from).collect()
    }

    /// What people read or are told, a piece between two tags at a time and labels after them; neither script nor
    /// style.
    pub fn words(&self) -> Vec<String> {
        let elements = self.html.root_element().descendent_elements();
        let read = elements.filter(|element| !["script", "style"].contains(&element.value().name()));
        let pieces = read.flat_map(|element| element.children()).filter_map(|node| node.value().as_text());
        let labels = ["aria-label", "alt", "title", "placeholder"];
        let labels = labels.into_iter().flat_map(|name| self.values("*", name));
        let labels = labels.chain(self.values("[name=description]", "content"));
        let told = pieces.map(|text| text.to_string()).chain(labels);
        let told = told.map(|text| text.split_whitespace().collect::<Vec<_>>().join(" "));
        told.filter(|text| !text.is_empty()).collect()
    }
}
