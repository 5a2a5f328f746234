//! What does a file of words, `www/words/LANG.po`, say?

use super::messages::Message;
use crate::shell;
use anyhow::{Context, Result, bail};
use polib::catalog::Catalog;
use polib::message::MessageView;
use polib::po_file;
use std::fs;
use std::path::{Path, PathBuf};

/// One language.
pub struct Catalogue {
    /// As pages and files carry it.
    pub lang: String,
    pub file: Catalog,
}

impl Catalogue {
    /// All there are, in the order of their names: a new file is a new language.
    pub fn all() -> Result<Vec<Self>> {
        let mut files = Vec::new();
        for entry in fs::read_dir(folder()).context("www/words")? {
            files.push(entry?.path());
        }
        files.sort();
        files
            .iter()
            .filter(|path| path.extension().is_some_and(|kind| kind == "po"))
            .map(|path| Self::read(path))
            .collect()
    }

    fn read(path: &Path) -> Result<Self> {
        let lang = path.file_stem().context("a name")?.to_string_lossy().into_owned();
        let file = po_file::parse(path).map_err(|error| anyhow::anyhow!("{}: {error}", path.display()))?;
        Ok(Self { lang, file })
    }

    #[cfg(test)]
    pub fn of(lang: &str, words: &str) -> Self {
        let file = po_file::parse_from_reader(words.as_bytes()).expect("a PO file");
        Self { lang: lang.to_string(), file }
    }

    pub fn write(&self) -> Result<()> {
        let path = folder().join(format!("{}.po", self.lang));
        po_file::write_to_file(&self.file, &path).with_context(|| path.display().to_string())
    }

    /// What stands for it here, and nowhere else; or else what stands for it everywhere.
    pub fn entry(&self, english: &str, place: &str) -> Option<&dyn MessageView> {
        let here = self.file.find_message(Some(place), english, None);
        here.or_else(|| self.file.find_message(None, english, None))
    }

    /// The source that says a message in this language; none yet if nobody has translated it, or has looked at it
    /// again since the English changed.
    pub fn said(&self, message: &Message) -> Result<Option<String>> {
        let Some(entry) = self.entry(&message.english, &message.place) else { return Ok(None) };
        if !entry.is_translated() || entry.is_fuzzy() {
            return Ok(None);
        }
        let Ok(words) = entry.msgstr() else { bail!("a message with plural forms: {:?}", message.english) };
        message.said(words).map(Some)
    }

    /// The name of a file of this language: `index.html`, `index.fr.html`.
    pub fn name(&self, name: &str) -> String {
        let (stem, kind) = name.rsplit_once('.').unwrap_or((name, ""));
        format!("{stem}.{}.{kind}", self.lang)
    }
}

fn folder() -> PathBuf {
    shell::root().join("www/words")
}
