//! How does a job leave this page and come back? As a file, a link, a code on paper, a calendar, a table.

use crate::elements::{all, content, first, set_attribute};
use crate::environment::{Environment, local, minutes, once, when};
use crate::fields::Fields;
use crate::pairs;
use form::Form;
use form::answer::{Answer, Shown};
use form::contract::{Fact, List, Output, OutputId, RowOutput, State};
use form::export::csv::{self, Cells, table};
use form::export::ics::{self, Entry};
use form::export::job_file::{JobFile, MAKE};
use form::export::qr;
use form::read::moment;
use form::text::joined;
use js_sys::{Array, JSON, Object, Reflect};
use std::cell::{Cell, RefCell};
use wasm_bindgen::prelude::*;
use web_sys::{Blob, BlobPropertyBag, File, HtmlElement, Url};

/// A longer link is a burden to whoever has to pass it on: the file is offered.
const LONGEST_LINK: usize = 1_800;

/// What came of the last file, link or print of a form.
#[derive(Default)]
pub struct Transfer {
    /// What is to be said of the last file or link.
    message: Cell<Option<Fact>>,
    /// Is the link drawn for paper?
    qr_drawn: Cell<bool>,
    /// What was printed last, and when.
    printed: RefCell<Option<(String, i64)>>,
}

impl Transfer {
    /// Shows a text to be copied, and copies it where that may be.
    pub fn give_text(
        &self,
        message: Fact,
        text: &str,
        fields: &Fields,
        environment: &Environment,
    ) -> Result<(), JsValue> {
        self.message.set(Some(message));
        environment.to_clipboard(text);
        fields.show_text(text)
    }

    /// Gives a link, unless it is too long.
    pub fn give_link(&self, link: &str, fields: &Fields, environment: &Environment) -> Result<(), JsValue> {
        if link.len() > LONGEST_LINK {
            self.message.set(Some(Fact::LinkLong));
            return Ok(());
        }
        self.give_text(Fact::LinkGiven, link, fields, environment)
    }

    /// Shows a file's text where a sandbox allows no file.
    pub fn show(&self, (_, _, text): &FileOut, fields: &Fields) -> Result<(), JsValue> {
        self.message.set(Some(Fact::LinkGiven));
        fields.show_text(text)
    }

    /// The make and the form of a file that came here; says what came of it.
    pub fn take(&self, text: &str) -> Option<Form> {
        let opened = opened(text);
        self.message.set(Some(match &opened {
            None => Fact::FileWrong,
            Some((make, _)) if *make > f64::from(MAKE) => Fact::FileNewer,
            Some(_) => Fact::FileOpen,
        }));
        opened.map(|(_, form)| form)
    }

    /// Draws the link for whoever holds the paper, nothing where there is none or it is too long; remembers what is
    /// printed.
    pub fn print(&self, fields: &Fields, link: Option<&str>, typed: &Form) -> Result<(), JsValue> {
        let drawn = link.and_then(qr::code);
        if let Some((width, path)) = &drawn {
            let width = width.to_string();
            for place in &all(&fields.form, "svg[data-code]") {
                set_attribute(place, "viewBox", &joined(&["0 0 ", &width, " ", &width]));
                for line in &all(place, "path") {
                    set_attribute(line, "d", path);
                }
            }
        }
        self.qr_drawn.set(drawn.is_some());
        *self.printed.borrow_mut() = Some((pairs::by_name(typed)?, minutes()));
        Ok(())
    }

    /// Says what can be handed out, and what came of the last file, link or print.
    pub fn tell(&self, typed: &Form, answer: &mut Answer) {
        if self.qr_drawn.get() {
            answer.say(Fact::CanCode);
        }
        if answer.is(Fact::Schedule) && !answer.is(Fact::Fault) {
            answer.say(Fact::CanCalendar);
        }
        if let Some(message) = self.message.get() {
            answer.say(message);
            if matches!(message, Fact::LinkGiven | Fact::FrameGiven) {
                answer.say(Fact::Boxed);
            }
        }
        if let Some((text, when)) = &*self.printed.borrow()
            && pairs::by_name(typed).is_ok_and(|now| now != *text)
        {
            answer.say(Fact::PrintOld);
            answer.put(Output::PrintWhen, Shown::moment(*when));
        }
    }
}

/// A file's name, its kind, and what is in it.
pub type FileOut = (&'static str, &'static str, String);

/// Hands a file out.
pub fn hand_out((name, kind, text): &FileOut, environment: &Environment) -> Result<(), JsValue> {
    let bag = BlobPropertyBag::new();
    bag.set_type(kind);
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &bag)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let anchor = environment.document.create_element("a")?;
    set_attribute(&anchor, "href", &address);
    set_attribute(&anchor, "download", name);
    anchor.unchecked_ref::<HtmlElement>().click();
    Url::revoke_object_url(&address)
}

/// The answer as a file for scripts.
pub fn answer_file(answer: &Answer) -> Result<FileOut, JsValue> {
    let answer = pairs::plain(&answer.for_others())?;
    let text = JSON::stringify_with_replacer_and_space(&answer, &JsValue::NULL, &2.into())?;
    Ok(("saltwright-answer.json", "application/json", text.into()))
}

/// The job as a file.
pub fn job_file(form: &Form) -> Result<FileOut, JsValue> {
    Ok(("saltwright.json", "application/json", json(form)?))
}

fn json(form: &Form) -> Result<String, JsValue> {
    Ok(JSON::stringify(&pairs::plain(&JobFile::new(form, minutes()))?)?.into())
}

/// The steps ahead as a calendar, each with the link to go on from; the job itself where there is no address.
pub fn calendar(
    answer: &Answer,
    title: impl Fn(&Answer) -> Option<String>,
    link: &str,
    job: &str,
    number: u64,
) -> FileOut {
    let mut entries: Vec<Entry> = Vec::new();
    for line in answer.lines(List::Steps) {
        let Some((_, when)) = line.cells.iter().find(|(cell, _)| *cell == RowOutput::StepsWhen.into()) else {
            continue;
        };
        let Some(state) = line.state else { continue };
        let mut step = Answer::default();
        step.say(state);
        entries.push(Entry {
            id: state.name(),
            at: local(moment::read(&when.text).unwrap_or_default()),
            title: title(&step).unwrap_or_default(),
        });
    }
    // The how-manieth of its kind: past steps are gone from the list, so counted from the end.
    for at in 0..entries.len() {
        let later = entries[at + 1..].iter().filter(|entry| entry.id == entries[at].id).count();
        entries[at].id = joined(&[job, ".", &entries[at].id, ".", &later.to_string()]);
    }
    let text = ics::calendar(&entries, link, &moment::write(minutes()), number);
    ("saltwright.ics", "text/calendar", text)
}

/// What was typed, what came of it and what is to be done, as a table.
pub fn spreadsheet(answer: &Answer, typed: &Form, fields: &Fields, decimal: char) -> FileOut {
    let words = first(&fields.form, "template[data-table]").and_then(|words| content(&words));
    let word = |name: &str| {
        let word = words.as_ref().and_then(|words| first(words, &joined(&["[data-word='", name, "']"])));
        word.and_then(|word| word.text_content()).unwrap_or(name.into())
    };
    let (step, name, value, unit, when) =
        (word("step"), word("name"), word("value"), word("unit"), word("when"));
    let (said, result, ahead) = (word("typed"), word("result"), word("ahead"));
    let mut rows: Vec<Cells> = vec![[&step, &name, &value, &unit, &when]];
    rows.extend(csv::typed(typed, &said));
    for (output, shown) in &answer.outputs {
        if let OutputId::Result(output) = output
            && !shown.text.is_empty()
        {
            rows.push([&result, output.name(), &shown.text, shown.unit.unwrap_or_default(), ""]);
        }
    }
    let mut names = Vec::new();
    for line in answer.lines(List::Steps) {
        names.push(line.state.map_or(String::new(), State::name));
    }
    for (line, name) in answer.lines(List::Steps).iter().zip(&names) {
        let when = line.cells.first().map_or("", |(_, when)| &when.text);
        rows.push([&ahead, name, "", "", when]);
    }
    let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).collect();
    ("saltwright.csv", "text/csv", table(&rows, decimal))
}

/// Reads a file that somebody chose or let fall here.
pub fn read(file: &File, then: impl FnOnce(&str) -> Result<(), JsValue> + 'static) -> Result<(), JsValue> {
    let read = once(move |text| then(&text.as_string().unwrap_or_default()));
    when(&file.text(), "then", read)
}

/// The make of a job file and the form in it, or in a table; `None` for any other file.
fn opened(text: &str) -> Option<(f64, Form)> {
    let Ok(file) = JSON::parse(text) else { return Some((f64::from(MAKE), csv::form_of(text)?)) };
    let get = |name: &str| Reflect::get(&file, &name.into()).ok();
    let make = get("saltwright")?.as_f64()?;
    let form = get("form")?;
    Some((make, pairs::of_object(form.dyn_ref::<Object>()?).ok()?))
}

#[cfg(all(test, target_family = "wasm"))]
mod tests {
    use super::*;
    use crate::pairs::{by_name, of_text, to_text};
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
                "surface.approval-by",
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
            assert_eq!(of_text(&to_text(&form).unwrap()).unwrap(), form, "link");
            assert_eq!(sorted(&of_text(&by_name(&form).unwrap()).unwrap()), sorted(&form), "kept");
            let (make, again) = opened(&json(&form).unwrap()).unwrap();
            assert_eq!((make, again), (f64::from(MAKE), form.clone()), "file");
            if form.0.is_empty() {
                continue;
            }
            for decimal in ['.', ','] {
                let rows = csv::typed(&form, "typed");
                let head: Cells = ["step", "name", "value", "unit", "when"];
                let result: Cells = ["result", "basic.mass", "177", "kg", ""];
                let rows: Vec<Cells> = [head].into_iter().chain(rows).chain([result]).collect();
                let rows: Vec<&[&str]> = rows.iter().map(|row| &row[..]).collect();
                let (_, again) = opened(&table(&rows, decimal)).unwrap();
                assert_eq!(sorted(&again), sorted(&form), "table");
            }
        }
    }
}
