//! How does a form become an exercise? Its number fills it, attempts are checked, and there is a sheet of answers.

use crate::controller::Desk;
use crate::renderer::{all, first};
use form::Form;
use form::answer::{Answer, Line, Shown};
use form::exercise::variant;
use form::text::joined;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::HtmlInputElement;

/// How far somebody has got with it.
#[derive(Default)]
pub struct Exercise {
    checked: Cell<bool>,
    revealed: Cell<bool>,
    /// The answers are being printed, on a sheet of their own.
    printed: Cell<bool>,
    /// So many numbers are on the sheet of answers.
    sheet: Cell<u32>,
}

/// A sheet of answers is not longer than this.
const LONGEST: u32 = 99;

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

    /// Are the answers about to be printed?
    pub fn on_paper(&self, answers: bool) {
        self.printed.set(answers);
    }

    /// Something was typed: what was checked was something else.
    pub fn typed(&self, name: &str) {
        self.sheet.set(0);
        if name.starts_with("try.") || name == "variant" {
            self.checked.set(false);
        }
        if name == "variant" {
            self.revealed.set(false);
        }
    }
}

impl Desk {
    /// The paper has been printed, or will not be.
    pub fn printed_out(self: &Rc<Self>) -> Result<(), JsValue> {
        if !self.exercise.is_printed() {
            return Ok(());
        }
        self.exercise.on_paper(false);
        self.refresh()
    }

    /// Checks the attempts.
    pub fn check(self: &Rc<Self>) -> Result<(), JsValue> {
        self.exercise.checked.set(true);
        for field in all(&self.form, "[name^='try.']") {
            self.leave(&field.get_attribute("name").unwrap_or_default());
        }
        self.refresh()
    }

    /// Shows the answers.
    pub fn reveal(self: &Rc<Self>) -> Result<(), JsValue> {
        self.exercise.revealed.set(true);
        self.refresh()
    }

    /// Shows the answers to the exercises of the first so many numbers.
    pub fn answers(self: &Rc<Self>, count: &str) -> Result<(), JsValue> {
        self.exercise.sheet.set(variant::read(count).unwrap_or(1).min(LONGEST));
        self.refresh()
    }

    /// The results that the form or its link asks for, and how far somebody has got with them. A field for an
    /// attempt asks by being there, unless its author shows it only when it is asked for.
    pub fn asked(&self, form: &Form) -> Vec<(String, String)> {
        // The form's own, and its link's.
        let mut ask = String::new();
        for (_, names) in form.0.iter().filter(|(name, _)| name == "ask") {
            ask = joined(&[&ask, " ", names]);
        }
        for field in all(&self.form, "[name^='try.']:not([data-when*='ask.'] *)") {
            let name = field.get_attribute("name").unwrap_or_default();
            ask = joined(&[&ask, " ", name.strip_prefix("try.").unwrap_or_default()]);
        }
        let Exercise { checked, revealed, printed, .. } = &self.exercise;
        let mut all_of_it = vec![("ask".to_string(), ask)];
        for (name, flag) in [("ask.check", checked.get()), ("ask.reveal", revealed.get() || printed.get())] {
            if flag {
                all_of_it.push((name.into(), "yes".into()));
            }
        }
        all_of_it
    }

    /// The number of the exercise, if it has one.
    pub fn variant(&self) -> Option<u32> {
        let field = first(&self.form, "[name='variant']")?;
        variant::read(&js_sys::Reflect::get(&field, &"value".into()).ok()?.as_string()?)
    }

    /// Has a number been typed, be it wrong?
    pub fn is_numbered(&self) -> bool {
        !self.typed().text("variant").is_empty()
    }

    /// What stands in the fields that have a range, in the exercise of this number.
    fn figures(&self, number: u32) -> Vec<(String, String)> {
        let signs = Form(self.signs.clone()).signs();
        let figure = |field: web_sys::Element| {
            let name = field.get_attribute("name")?;
            let text = variant::value(number, &name, &field.get_attribute("data-range")?, signs)?;
            Some((name, text))
        };
        all(&self.form, "[name][data-range]").into_iter().filter_map(figure).collect()
    }

    /// The number was changed: its figures, or without one those that the page begins with.
    pub fn numbered(&self) -> Result<(), JsValue> {
        if !self.is_numbered() {
            for field in all(&self.form, "input[data-range][value]") {
                let begun = field.get_attribute("value").unwrap_or_default();
                field.unchecked_into::<HtmlInputElement>().set_value(&begun);
            }
        }
        self.fill_in()
    }

    /// Fills in the figures of the number that stands in the form.
    pub fn fill_in(&self) -> Result<(), JsValue> {
        if !self.is_numbered() {
            return self.lock();
        }
        // A number that is none has no figures: nobody is to work with those of another.
        let figures = self.variant().map(|number| self.figures(number)).unwrap_or_default();
        let terms = self.terms.borrow();
        for field in all(&self.form, "[name][data-range]") {
            let name = field.get_attribute("name").unwrap_or_default();
            if terms.locked.0.iter().any(|(locked, _)| *locked == name) {
                continue;
            }
            let text = figures.iter().find(|(n, _)| *n == name).map_or("", |(_, text)| text);
            let field = field.unchecked_into::<HtmlInputElement>();
            match field.type_().as_str() {
                "radio" | "checkbox" => field.set_checked(field.value() == text),
                _ => drop(js_sys::Reflect::set(&field, &"value".into(), &text.into())?),
            }
        }
        drop(terms);
        self.lock()
    }

    /// The answers to the exercises of the first numbers, a row each.
    pub fn sheet(&self, form: &Form, answer: &mut Answer) {
        let count = self.exercise.sheet.get();
        if count == 0 {
            return;
        }
        answer.say("answers");
        let row = |number: u32| {
            let mut of_it = form.clone();
            of_it.0.retain(|(name, _)| name != "ask");
            of_it.0.extend(self.figures(number));
            let mut cells = form::answer(&of_it).outputs;
            cells.push(("variant".into(), Shown::words(number.to_string())));
            Line { state: "", cells }
        };
        answer.rows.push(("answers", (1..=count).map(row).collect()));
    }
}
