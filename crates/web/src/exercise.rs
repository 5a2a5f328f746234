//! How does a form become an exercise? Its number fills it, attempts are checked, and there is a sheet of answers.

use crate::elements::{all, attribute, fill, name, value};
use crate::environment::Timer;
use crate::fields::Fields;
use form::Form;
use form::answer::{Answer, Line, Shown};
use form::contract::codes::Tick;
use form::contract::{Fact, Field, List, RowOutput, is_attempt};
use form::embed_options::EmbedOptions;
use form::exercise::variant;
use form::read::number::Signs;
use form::text::joined;
use std::cell::Cell;
use wasm_bindgen::prelude::*;

/// A sheet of answers is not longer than this.
const LONGEST: u32 = 99;
/// What the number fills in.
const RANGES: &str = "[name][data-range]";

/// How far somebody has got with it.
#[derive(Default)]
pub struct Exercise {
    checked: Cell<bool>,
    revealed: Cell<bool>,
    /// The answers are being printed, on a sheet of their own.
    printed: Cell<bool>,
    /// Ends that where nobody says that the printing is over.
    pub printing: Timer,
    /// So many numbers are on the sheet of answers.
    sheet: Cell<u32>,
}

impl Exercise {
    /// From the beginning.
    pub fn begin(&self) {
        self.checked.set(false);
        self.revealed.set(false);
        self.printed.set(false);
        self.sheet.set(0);
    }

    /// Are the answers on their way to the paper?
    pub fn is_printed(&self) -> bool {
        self.printed.get()
    }

    /// Are the answers about to be printed? Gives back whether they were.
    pub fn print(&self, answers: bool) -> bool {
        self.printed.replace(answers)
    }

    /// Checks the attempts.
    pub fn check(&self, fields: &Fields) {
        self.checked.set(true);
        for field in &fields.parts.all("[name^='try.']") {
            fields.touch(&name(field));
        }
    }

    /// Shows the answers.
    pub fn reveal(&self) {
        self.revealed.set(true);
    }

    /// Shows the answers to the exercises of the first so many numbers.
    pub fn show_sheet(&self, count: &str) {
        self.sheet.set(variant::read(count).unwrap_or(1).min(LONGEST));
    }

    /// Something was typed: what was checked was something else.
    pub fn typed(&self, name: &str) {
        self.sheet.set(0);
        if is_attempt(name) || name == Field::Variant.name() {
            self.checked.set(false);
        }
        if name == Field::Variant.name() {
            self.revealed.set(false);
        }
    }

    /// The results that the form or its link asks for, and how far somebody has got with them. A field for an
    /// attempt asks by being there, unless its author shows it only when it is asked for.
    pub fn asked(&self, fields: &Fields, form: &Form) -> Form {
        // The form's own, and its link's.
        let mut ask = String::new();
        for (_, names) in form.0.iter().filter(|(name, _)| name == Field::Ask.name()) {
            ask = joined(&[&ask, " ", names]);
        }
        for field in &fields.parts.all("[name^='try.']:not([data-when*='ask.'] *)") {
            ask = joined(&[&ask, " ", name(field).strip_prefix("try.").unwrap_or_default()]);
        }
        let mut all_of_it = Form::default();
        all_of_it.say(Field::Ask.name(), &ask);
        let revealed = self.revealed.get() || self.printed.get();
        for (field, flag) in [(Field::AskCheck, self.checked.get()), (Field::AskReveal, revealed)] {
            if flag {
                all_of_it.say(field.name(), Tick::Yes.code());
            }
        }
        // What somebody has unfolded.
        for asked in &all(&fields.form, "details[data-ask][open]") {
            all_of_it.say(&joined(&["ask.", &attribute(asked, "data-ask")]), Tick::Yes.code());
        }
        all_of_it
    }

    /// The number was changed: its figures, or without one those that the page begins with.
    pub fn numbered(&self, fields: &Fields) -> Result<(), JsValue> {
        if number(fields).is_empty() {
            for field in &fields.parts.all("input[data-range][value]:not([type=radio], [type=checkbox])") {
                fill(field, &attribute(field, "value"))?;
            }
        }
        Ok(())
    }

    /// Has it a number, be it wrong?
    pub fn is_numbered(&self, fields: &Fields) -> bool {
        !number(fields).is_empty()
    }

    /// Fills in the figures of the number that stands in the form, but not where a link has settled one. Has it a
    /// number?
    pub fn fill_in(&self, fields: &Fields, options: &EmbedOptions, signs: Signs) -> Result<bool, JsValue> {
        let number = number(fields);
        if number.is_empty() {
            return Ok(false);
        }
        // A number that is none has no figures: nobody is to work with those of another.
        let figures = variant::read(&number).map(|number| figures(number, fields, signs)).unwrap_or_default();
        for field in &fields.parts.all(RANGES) {
            let name = name(field);
            if !options.locks(&name) {
                fill(field, figures.raw(&name))?;
            }
        }
        Ok(true)
    }

    /// The answers to the exercises of the first numbers, a row each.
    pub fn sheet(&self, fields: &Fields, form: &Form, signs: Signs, answer: &mut Answer) {
        let count = self.sheet.get();
        if count == 0 {
            return;
        }
        answer.say(Fact::Answers);
        let row = |number: u32| {
            let mut of_it = form.clone();
            of_it.keep(&|name| name != Field::Ask.name());
            of_it.append(figures(number, fields, signs));
            let mut cells = form::answer(&of_it).outputs;
            cells.push((RowOutput::AnswersVariant.into(), Shown::words(number.to_string())));
            Line { state: None, cells }
        };
        let mut lines = Vec::new();
        for number in 1..=count {
            lines.push(row(number));
        }
        answer.rows.push((List::Answers, lines));
    }
}

/// What has been typed for the number of the exercise, be it wrong; empty where there is none.
fn number(fields: &Fields) -> String {
    let field = fields.parts.first(&joined(&["[name='", Field::Variant.name(), "']"]));
    field.map(|field| value(&field)).unwrap_or_default().trim_ascii().into()
}

/// What stands in the fields that have a range, in the exercise of this number.
fn figures(number: u32, fields: &Fields, signs: Signs) -> Form {
    let mut figures = Form::default();
    for field in &fields.parts.all(RANGES) {
        let name = name(field);
        if let Some(text) = variant::value(number, &name, &attribute(field, "data-range"), signs) {
            figures.say(&name, &text);
        }
    }
    figures
}
