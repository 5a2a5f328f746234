//! How does a job leave this page and come back? As a file, a link, a code on paper, a calendar, a table.

use crate::controller::{Desk, LINK};
use crate::environment::{local, minutes};
use crate::jobs::parts;
use crate::pairs;
use crate::renderer::{all, first};
use crate::to_js::Plain;
use form::Form;
use form::answer::Answer;
use form::export::csv::{self, Cells, table};
use form::export::ics::{self, Entry};
use form::export::qr;
use form::read::moment;
use form::text::joined;
use js_sys::{Array, JSON, Object, Reflect};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Blob, BlobPropertyBag, File, HtmlElement, HtmlTextAreaElement, Url};

/// A job file of this make.
const MAKE: f64 = 1.0;
/// A longer link is a burden to whoever has to pass it on: the file is offered.
const LONGEST_LINK: usize = 1_800;

impl Desk {
    /// What a link has of the form: not what the page begins with anyway, and nothing about a person unless that is
    /// ticked.
    pub fn given(&self) -> Result<Form, JsValue> {
        let mut form = self.typed();
        let named = form.text("link.job") == "yes";
        let begun = self.begun.borrow();
        form.0.retain(|(name, text)| {
            let begun = begun.0.iter().any(|(n, t)| n == name && t == text);
            let own =
                matches!(name.as_str(), "at" | "paper" | "view" | "link.job") || name.starts_with("give.");
            let person = ["job.", "surface.who", "over."].iter().any(|begin| name.starts_with(begin));
            !own && !begun && (named || !person)
        });
        Ok(form)
    }

    /// The page's own address.
    pub fn page(&self) -> Result<String, JsValue> {
        let href = self.window.location().href()?;
        Ok(href.split_once('#').map_or(href.as_str(), |(page, _)| page).into())
    }

    /// The page's own address with the form in it.
    pub fn link(&self) -> Result<String, JsValue> {
        Ok(joined(&[&self.page()?, LINK, &parts(&self.given()?)?]))
    }

    /// Has the page an address that others can open?
    pub fn has_address(&self) -> bool {
        self.window.location().protocol().is_ok_and(|protocol| protocol.starts_with("http"))
    }

    /// Shows the link, and copies it where that may be.
    pub fn give_link(self: &Rc<Self>) -> Result<(), JsValue> {
        let link = self.link()?;
        if link.len() > LONGEST_LINK {
            self.said_of_file.set("link.long");
        } else {
            self.said_of_file.set("link.given");
            self.to_clipboard(&link);
            self.show_text(&link);
        }
        self.refresh()
    }

    /// In a box, to be copied by hand.
    pub fn show_text(&self, text: &str) {
        if let Some(place) = first(&self.form, "textarea[data-box]") {
            place.unchecked_ref::<HtmlTextAreaElement>().set_value(text);
        }
    }

    /// Hands a text out as a file; a sandbox allows none, so there it is shown.
    fn hand_out(self: &Rc<Self>, name: &str, kind: &str, text: &str) -> Result<(), JsValue> {
        if !self.may("download") {
            self.said_of_file.set("link.given");
            self.show_text(text);
            return self.refresh();
        }
        let bag = BlobPropertyBag::new();
        bag.set_type(kind);
        let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &bag)?;
        let address = Url::create_object_url_with_blob(&blob)?;
        let anchor = self.window.document().ok_or("no document")?.create_element("a")?;
        anchor.set_attribute("href", &address)?;
        anchor.set_attribute("download", name)?;
        anchor.unchecked_ref::<HtmlElement>().click();
        Url::revoke_object_url(&address)
    }

    /// The answer as a file for scripts.
    pub fn give_answer(self: &Rc<Self>) -> Result<(), JsValue> {
        let answer = Plain::from(&self.answer.borrow().for_others()).to_script();
        let text: String =
            JSON::stringify_with_replacer_and_space(&answer, &JsValue::NULL, &2.into())?.into();
        self.hand_out("saltwright-answer.json", "application/json", &text)
    }

    /// The job as a file.
    pub fn give_file(self: &Rc<Self>) -> Result<(), JsValue> {
        self.hand_out("saltwright.json", "application/json", &file_of(&self.typed())?)
    }

    /// Opens a file that somebody chose or let fall here.
    pub fn take_file(self: &Rc<Self>, file: &File) -> Result<(), JsValue> {
        let desk = self.clone();
        let read = move |text: JsValue| desk.take_text(&text.as_string().unwrap_or_default());
        let text = file.text();
        Reflect::get(&text, &"then".into())?
            .unchecked_ref::<js_sys::Function>()
            .call1(&text, &Closure::once(read).into_js_value())?;
        Ok(())
    }

    fn take_text(self: &Rc<Self>, text: &str) -> Result<(), JsValue> {
        let Some((make, form)) = opened(text) else {
            self.said_of_file.set("file.wrong");
            return self.refresh();
        };
        self.said_of_file.set(if make > MAKE { "file.newer" } else { "file.open" });
        self.begin(&form)
    }

    /// The steps ahead as a calendar, each with the link to go on from; the job itself where there is no address.
    pub fn give_calendar(self: &Rc<Self>) -> Result<(), JsValue> {
        let answer = self.answer.borrow().clone();
        let job = self.job.borrow().clone();
        let mut entries: Vec<Entry> = Vec::new();
        for line in answer.rows.iter().filter(|(list, _)| *list == "steps").flat_map(|(_, lines)| lines) {
            let Some((_, when)) = line.cells.iter().find(|(name, _)| name == "when") else { continue };
            let step = Answer { states: vec![line.state.into()], ..Answer::default() };
            let title = self.pen.sentence("template[data-calendar]", &step).unwrap_or_default();
            // The how-manieth of its kind: past steps are gone from the list, so counted from the end.
            entries.push(Entry {
                id: line.state.into(),
                at: local(moment::read(&when.text).unwrap_or_default()),
                title,
            });
        }
        for at in 0..entries.len() {
            let later = entries[at + 1..].iter().filter(|entry| entry.id == entries[at].id).count();
            entries[at].id = joined(&[&job, ".", &entries[at].id, ".", &later.to_string()]);
        }
        let link = self.link()?;
        let link = if self.has_address() {
            link.as_str()
        } else {
            link.split_once('#').map_or("", |(_, form)| form)
        };
        let text = ics::calendar(&entries, link, &moment::write(minutes()), self.number.get());
        self.hand_out("saltwright.ics", "text/calendar", &text)
    }

    /// What was typed, what came of it and what is to be done, as a table.
    pub fn give_table(self: &Rc<Self>) -> Result<(), JsValue> {
        let answer = self.answer.borrow().clone();
        let word = |name: &str| {
            let words = first(&self.form, "template[data-table]").and_then(crate::renderer::content);
            let word = words.and_then(|words| first(&words, &joined(&["[data-word='", name, "']"])));
            word.and_then(|word| word.text_content()).unwrap_or(name.into())
        };
        let heads = ["step", "name", "value", "unit", "when"].map(word);
        let (typed, result, ahead) = (word("typed"), word("result"), word("ahead"));
        let form = self.typed();
        let mut rows: Vec<Cells> = vec![[&heads[0], &heads[1], &heads[2], &heads[3], &heads[4]]];
        rows.extend(csv::typed(&form, &typed));
        for (name, shown) in
            answer.outputs.iter().filter(|(name, shown)| !name.starts_with("echo.") && !shown.text.is_empty())
        {
            rows.push([&result, name, &shown.text, shown.unit.unwrap_or_default(), ""]);
        }
        for line in answer.rows.iter().filter(|(list, _)| *list == "steps").flat_map(|(_, lines)| lines) {
            let when = line.cells.first().map_or("", |(_, when)| &when.text);
            rows.push([&ahead, line.state, "", "", when]);
        }
        let decimal = self.signs.first().and_then(|(_, sign)| sign.chars().next()).unwrap_or('.');
        let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).collect();
        self.hand_out("saltwright.csv", "text/csv", &table(&rows, decimal))
    }

    /// Draws the link for whoever holds the paper; nothing where there is no address, or it is too long.
    pub fn draw_code(self: &Rc<Self>) -> Result<(), JsValue> {
        let drawn = match self.has_address() {
            true => qr::code(&self.link()?),
            false => None,
        };
        for place in all(&self.form, "svg[data-code]") {
            let Some((width, path)) = &drawn else { continue };
            let width = width.to_string();
            place.set_attribute("viewBox", &joined(&["0 0 ", &width, " ", &width]))?;
            for line in all(&place, "path") {
                line.set_attribute("d", path)?;
            }
        }
        self.coded.set(drawn.is_some());
        *self.printed.borrow_mut() = Some((parts(&self.typed())?, minutes()));
        self.refresh()
    }
}

/// A job file.
fn file_of(form: &Form) -> Result<String, JsValue> {
    let file = Object::new();
    let fields: [(&str, JsValue); 4] = [
        ("saltwright", MAKE.into()),
        ("edition", env!("CARGO_PKG_VERSION").into()),
        ("saved", moment::write(minutes()).into()),
        ("form", pairs::object_of(form)?.into()),
    ];
    for (name, value) in fields {
        Reflect::set(&file, &name.into(), &value)?;
    }
    Ok(JSON::stringify(&file)?.into())
}

/// The make of a job file and the form in it, or in a table; `None` for any other file.
fn opened(text: &str) -> Option<(f64, Form)> {
    let Ok(file) = JSON::parse(text) else { return Some((MAKE, csv::form_of(text)?)) };
    let get = |name: &str| Reflect::get(&file, &name.into()).ok();
    let make = get("saltwright")?.as_f64()?;
    let form = get("form")?;
    let form = form.dyn_ref::<Object>()?;
    Some((make, pairs::form_of(&Object::entries(form)).ok()?))
}

#[cfg(all(test, target_family = "wasm"))]
mod tests {
    use super::*;
    use crate::jobs::form_of;
    use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

    wasm_bindgen_test_configure!(run_in_browser);

    /// One or more of every general category of Unicode, and what our formats are made of.
    const LETTERS: &[char] = &[
        'A',
        'ß',
        'ǅ',
        'ʰ',
        '漢',
        '\u{301}',
        '\u{93e}',
        '\u{20dd}',
        '٣',
        'Ⅷ',
        '½',
        '_',
        '—',
        '(',
        ')',
        '«',
        '»',
        '!',
        '+',
        '€',
        '^',
        '☃',
        '\u{a0}',
        '\u{2028}',
        '\u{2029}',
        '\t',
        '\u{202e}',
        '\u{e000}',
        '\u{378}',
        '\0',
        '\r',
        '\n',
        '𝄞',
        '"',
        '\'',
        ',',
        ';',
        '=',
        '-',
        '@',
        '&',
        '%',
        '#',
        '\\',
        '<',
        ' ',
        '0',
        '.',
        '\u{feff}',
        '\u{10ffff}',
    ];

    struct Draw(u64);

    impl Draw {
        fn below(&mut self, end: usize) -> usize {
            self.0 ^= self.0 << 13;
            self.0 ^= self.0 >> 7;
            self.0 ^= self.0 << 17;
            (self.0 >> 33) as usize % end
        }

        fn form(&mut self) -> Form {
            let mut form = Form::default();
            for name in [
                "pool.volume",
                "job.name",
                "surface.who",
                "a.strange-name",
                "log.3.mass",
                "salt.now",
                "ünbekannt",
            ] {
                let text: String = (0..self.below(12)).map(|_| LETTERS[self.below(LETTERS.len())]).collect();
                if !text.is_empty() && self.below(4) > 0 {
                    form.0.push((name.into(), text));
                }
            }
            for (name, unit) in
                [("pool.volume.unit", "[gal_us]"), ("log.3.mass.unit", "{bag}"), ("bag.size.unit", "kg")]
            {
                if self.below(2) > 0 {
                    form.0.push((name.into(), unit.into()));
                }
            }
            form
        }
    }

    fn sorted(form: &Form) -> Vec<(String, String)> {
        let mut pairs = form.0.clone();
        pairs.sort();
        pairs
    }

    #[wasm_bindgen_test]
    fn a_form_comes_back_from_link_file_and_table_as_it_left() {
        let mut draw = Draw(7);
        for _ in 0..3_000 {
            let form = draw.form();
            assert_eq!(form_of(&parts(&form).unwrap()).unwrap(), form, "link");
            let (make, again) = opened(&file_of(&form).unwrap()).unwrap();
            assert_eq!((make, again), (MAKE, form.clone()), "file");
            if form.0.is_empty() {
                continue;
            }
            for decimal in ['.', ','] {
                let rows = csv::typed(&form, "typed");
                let head: Cells = ["step", "name", "value", "unit", "when"];
                let result: Cells = ["result", "dose.mass", "177", "kg", ""];
                let rows: Vec<Cells> = [head].into_iter().chain(rows).chain([result]).collect();
                let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).collect();
                let (_, again) = opened(&table(&rows, decimal)).unwrap();
                assert_eq!(sorted(&again), sorted(&form), "table");
            }
        }
    }
}
