//! Are the pages translated in full, and how do changed English words reach the translators?

use crate::build;
use crate::build::catalogue::Catalogue;
use crate::build::messages::{self, Message};
use crate::build::translate::MANIFEST;
use anyhow::{Result, ensure};
use polib::catalog::Catalog;
use polib::message::{Message as Entry, MessageFlags, MessageMutView, MessageView};
use std::collections::BTreeSet;

/// An extracted comment: the English that a fuzzy translation was made for.
const WAS: &str = "was: ";

/// How much two texts must share for the translation of one to be offered for the other.
const ALIKE: f64 = 0.6;

/// Brings the messages of the English pages into every `www/words/LANG.po`.
pub fn words() -> Result<()> {
    let found = found()?;
    for mut catalogue in Catalogue::all()? {
        let (file, told) = merged(&catalogue.file, &found);
        catalogue.file = file;
        catalogue.write()?;
        println!("www/words/{}.po: {told}", catalogue.lang);
    }
    Ok(())
}

/// Refuses a page of which anything is not translated, or not any more.
pub fn check() -> Result<()> {
    let found = found()?;
    let mut told = Vec::new();
    for catalogue in Catalogue::all()? {
        let po = format!("www/words/{}.po", catalogue.lang);
        let faults = faults(&catalogue, &found);
        if !faults.is_empty() {
            told.extend(faults);
            told.push(format!("run `cargo xtask words`, then translate in {po}"));
        } else if merged(&catalogue.file, &found).0 != catalogue.file {
            told.push(format!("{po}: places or notes are not those of the pages: run `cargo xtask words`"));
        }
    }
    ensure!(told.is_empty(), "{}", told.join("\n"));
    Ok(())
}

/// A message, and the file it is from.
struct Found {
    file: String,
    message: Message,
}

fn found() -> Result<Vec<Found>> {
    let mut found = Vec::new();
    let mut take = |file: &str, messages: Vec<Message>| {
        found.extend(messages.into_iter().map(|message| Found { file: file.to_string(), message }));
    };
    for (name, page) in build::english()? {
        let mut all = messages::attributes(&page)?;
        all.extend(messages::texts(&page)?);
        all.extend(messages::languages(&page)?);
        all.sort_by_key(|message| message.span.start);
        take(&name, all);
    }
    take(MANIFEST, messages::manifest(&build::manifest()?)?);
    Ok(found)
}

fn faults(catalogue: &Catalogue, found: &[Found]) -> Vec<String> {
    let mut faults = Vec::new();
    for Found { file, message } in found {
        let entry = catalogue.entry(&message.english, &message.place);
        let fault = match (entry, catalogue.said(message)) {
            (_, Err(error)) => error.to_string(),
            (_, Ok(Some(_))) => continue,
            (Some(entry), _) if entry.is_fuzzy() => "fuzzy: the English has changed".to_string(),
            _ => "not translated".to_string(),
        };
        faults.push(format!("{}: {file}#{}: {fault}: {:?}", catalogue.lang, message.place, message.english));
    }
    let english: BTreeSet<_> = found.iter().map(|found| found.message.english.as_str()).collect();
    let gone = catalogue.file.messages().filter(|entry| !english.contains(entry.msgid()));
    faults.extend(gone.map(|entry| format!("{}: on no page any more: {:?}", catalogue.lang, entry.msgid())));
    faults
}

/// The words a translator has, put under the messages there are now; and how many are left to do.
fn merged(old: &Catalog, found: &[Found]) -> (Catalog, String) {
    let mut new = Catalog::new(old.metadata.clone());
    new.preheader.clone_from(&old.preheader);
    let english: BTreeSet<_> = found.iter().map(|found| found.message.english.as_str()).collect();
    let mut gone: Vec<_> =
        old.messages().filter(|entry| entry.is_translated() && !english.contains(entry.msgid())).collect();
    for Found { file, message } in found {
        let Message { english, place, .. } = message;
        let own = old.find_message(Some(place), english, None);
        let context = own.map(|_| place.as_str());
        let source = format!("{file}#{place}");
        if let Some(mut entry) = new.find_message_mut(context, english, None) {
            if !entry.source().split(' ').any(|known| known == source) {
                entry.source_mut().push_str(&format!(" {source}"));
            }
            continue;
        }
        let same = own.or_else(|| old.find_message(None, english, None));
        let near = if same.is_some() { None } else { nearest(&mut gone, english, &source) };
        let mut notes = message.notes.clone();
        let mut entry = Entry::build_singular();
        entry.with_msgid(english.clone()).with_source(source);
        if let Some(context) = context {
            entry.with_msgctxt(context.to_string());
        }
        if let Some(known) = same.or(near) {
            entry.with_msgstr(known.msgstr().unwrap_or_default().to_string());
            entry.with_translator_comments(known.translator_comments().to_string());
            let mut flags = known.flags().clone();
            if known.is_fuzzy() && near.is_none() {
                let was = known.extracted_comments().lines().filter(|line| line.starts_with(WAS));
                notes.extend(was.map(String::from));
            }
            if near.is_some() {
                flags = MessageFlags::new();
                // English that is changed back has its translation back.
                if !known.extracted_comments().lines().any(|line| line.strip_prefix(WAS) == Some(english)) {
                    flags.add_flag("fuzzy");
                    notes.push(format!("{WAS}{}", known.msgid()));
                }
            }
            entry.with_flags(flags);
        }
        entry.with_extracted_comments(notes.join("\n"));
        new.append_or_update(entry.done());
    }
    let fuzzy = new.messages().filter(|entry| entry.is_fuzzy()).count();
    let missing = new.messages().filter(|entry| !entry.is_translated()).count();
    let told = format!("{} messages, {missing} to translate, {fuzzy} fuzzy", new.count());
    (new, told)
}

/// Of the translations whose English is gone, the one most like it, from the same place above all; it is used up.
fn nearest<'a>(
    gone: &mut Vec<&'a dyn MessageView>,
    english: &str,
    source: &str,
) -> Option<&'a dyn MessageView> {
    let likeness = |entry: &dyn MessageView| {
        let same_place = entry.source().split(' ').any(|known| known == source);
        shared(entry.msgid(), english) + if same_place { 0.2 } else { 0.0 }
    };
    let (at, likeness) =
        gone.iter().map(|entry| likeness(*entry)).enumerate().max_by(|a, b| a.1.total_cmp(&b.1))?;
    (likeness >= ALIKE).then(|| gone.remove(at))
}

/// The share of words that stand in both texts: 1 for the same ones, 0 for none.
fn shared(a: &str, b: &str) -> f64 {
    let (a, mut b): (Vec<_>, Vec<_>) = (a.split(' ').collect(), b.split(' ').collect());
    let all = a.len() + b.len();
    let mut both = 0;
    for word in a {
        if let Some(at) = b.iter().position(|other| *other == word) {
            b.swap_remove(at);
            both += 2;
        }
    }
    f64::from(both) / all as f64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::build::{markup, translate};

    const HEAD: &str = "msgid \"\"\nmsgstr \"Language: fr\\n\"\n";

    fn catalogue(entries: &str) -> Catalogue {
        Catalogue::of("fr", &format!("{HEAD}\n{entries}"))
    }

    fn page(page: &str) -> Vec<Found> {
        let messages = messages::texts(page).unwrap();
        messages.into_iter().map(|message| Found { file: "a.html".to_string(), message }).collect()
    }

    #[test]
    fn what_is_not_translated_is_refused_with_its_place() {
        let found = page("<p id=\"x\">Add <b>salt</b>.</p>");
        let good = "msgid \"Add <1>salt</1>.\"\nmsgstr \"<1>Sel</1>.\"\n";
        assert!(faults(&catalogue(good), &found).is_empty());
        let none = good.replace("<1>Sel</1>.", "");
        let fuzzy = format!("#, fuzzy\n{good}");
        let bare = good.replace("<1>Sel</1>", "Sel");
        for (entries, fault) in
            [("", "not translated"), (&none, "not translated"), (&fuzzy, "fuzzy"), (&bare, "placeholders")]
        {
            let [told] = &faults(&catalogue(entries), &found)[..] else { panic!("{entries}") };
            assert!(told.starts_with("fr: a.html#x: ") && told.contains(fault), "{told}");
            assert!(told.contains("Add <1>salt</1>."), "{told}");
        }
        let gone = format!("{good}\nmsgid \"Old\"\nmsgstr \"Vieux\"\n");
        assert_eq!(faults(&catalogue(&gone), &found), ["fr: on no page any more: \"Old\""]);
    }

    #[test]
    fn merging_keeps_what_fits_and_offers_what_is_near() {
        let old = catalogue(
            "# Mine.\nmsgid \"Kept\"\nmsgstr \"Gardé\"\n\n\
             msgctxt \"y\"\nmsgid \"Kept\"\nmsgstr \"Gardée\"\n\n\
             msgid \"Add salt to the pool today.\"\nmsgstr \"Mettez du sel.\"\n\n\
             msgid \"Something else\"\nmsgstr \"Autre chose\"\n",
        );
        let found = page(
            "<p>Kept</p><p id=\"y\">Kept</p><p>Kept</p><p>Add salt to the pool <b>now</b>.</p><p id=\"z\">Far from <i>any</i></p>",
        );
        let (new, told) = merged(&old.file, &found);
        assert_eq!(told, "4 messages, 1 to translate, 1 fuzzy");
        let seen = |context, english| new.find_message(context, english, None).unwrap();
        let kept = seen(None, "Kept");
        assert_eq!((kept.msgstr(), kept.translator_comments()), (Ok("Gardé"), "Mine."));
        assert_eq!(kept.source(), "a.html#page");
        assert_eq!(seen(Some("y"), "Kept").msgstr(), Ok("Gardée"));
        let near = seen(None, "Add salt to the pool <1>now</1>.");
        assert!(near.is_fuzzy() && near.msgstr() == Ok("Mettez du sel."));
        assert_eq!(near.extracted_comments(), "1: b\nwas: Add salt to the pool today.");
        let far = seen(None, "Far from <1>any</1>");
        assert!((far.msgstr(), far.source()) == (Ok(""), "a.html#z"));
        assert!(merged(&new, &found).0 == new, "a second time changes nothing");
        let (back, _) = merged(&new, &page("<p>Add salt to the pool today.</p>"));
        let entry = back.messages().next().unwrap();
        assert!(!entry.is_fuzzy() && entry.msgstr() == Ok("Mettez du sel."));
    }

    /// Whatever the words, the tags are those of the English page.
    #[test]
    fn our_pages_have_the_same_tags_in_every_language() {
        let english = build::english().unwrap();
        let catalogues = Catalogue::all().unwrap();
        let all = translate::all(&english, &build::manifest().unwrap(), &catalogues).unwrap();
        let tags = |page: &str| {
            let mut tags: Vec<_> = markup::elements(&markup::parse(page).unwrap())
                .map(|element| {
                    (
                        element.name.clone(),
                        element.get("name").map(String::from),
                        element.get("data-when").map(String::from),
                    )
                })
                .collect();
            tags.sort();
            tags
        };
        for (name, page) in all.iter().filter(|(name, _)| name.ends_with(".html")) {
            let stem = name.split('.').next().unwrap();
            let (_, english) = all.iter().find(|(name, _)| *name == format!("{stem}.html")).unwrap();
            assert!(tags(page) == tags(english), "{name}");
        }
        assert!(english.len() > 1);
    }

    /// A sentence that is the same in both was forgotten; sources keep their titles.
    #[test]
    fn every_sentence_is_in_the_catalogues_own_language() {
        const SOURCES: [&str; 7] =
            ["H₂Cy⁻", "Geochimica", "Truesdell", "Wahman", "Kell", "PHREEQC", "O’Brien"];
        for Catalogue { lang, file } in Catalogue::all().unwrap() {
            for entry in file.messages().filter(|entry| entry.msgstr() == Ok(entry.msgid())) {
                let word = |word: &&str| word.chars().filter(|c| c.is_alphabetic()).count() > 2;
                let words = entry.msgid().split(' ').filter(word).count();
                let source = SOURCES.iter().any(|name| entry.msgid().contains(name));
                assert!(words < 4 || source, "{lang}: {}", entry.msgid());
            }
        }
    }

    #[test]
    fn no_language_promises_what_nobody_can() {
        for Catalogue { lang, file } in Catalogue::all().unwrap() {
            for entry in file.messages() {
                let said = entry.msgstr().unwrap().to_lowercase();
                let mut words = said.split(|c: char| !c.is_alphabetic());
                let promise = [
                    "sûr",
                    "sûre",
                    "sûrs",
                    "sûres",
                    "garanti",
                    "seguro",
                    "segura",
                    "garantizado",
                    "garantizada",
                ];
                assert!(!words.any(|word| promise.contains(&word)), "{lang}: {said}");
                for words in ["sans danger", "sans risque", "sin riesgo", "sin peligro"] {
                    assert!(!said.contains(words), "{lang}: {said}");
                }
            }
        }
    }
}
