//! What stands in a form's fields, how is a text put there, and which of their faults may be shown?

use crate::elements::{FIELDS, all, attribute, content, fill, first, name, set_attribute};
use crate::environment::Timer;
use crate::lock::is_locked;
use crate::pairs;
use crate::parts::Parts;
use form::Form;
use form::answer::Answer;
use form::contract::LINES;
use form::embed_options::{EmbedOptions, is_option};
use form::relocalize::hangs_on_signs;
use std::cell::RefCell;
use wasm_bindgen::prelude::*;
use web_sys::{Document, DocumentFragment, Element, FormData, HtmlFormElement};

/// What of a line of the log has its number in it, where the template says N.
const NUMBERED: [&str; 7] = ["name", "value", "id", "for", "aria-describedby", "data-when", "data-fault"];

/// The fields of one form, those of closed parts too.
pub struct Fields {
    pub form: HtmlFormElement,
    pub parts: Parts,
    /// What the page itself begins with.
    pub defaults: RefCell<Form>,
    /// What came with a link or a file and has no field here: kept, and passed on.
    unknown: RefCell<Form>,
    /// Fields once left: their faults may be shown.
    touched: RefCell<Vec<String>>,
    /// Fields whose faults are shown.
    faulty: RefCell<Vec<String>>,
    /// The field that has the focus, or had it last.
    at: RefCell<String>,
    /// From leaving a field to showing what is wrong with it.
    pub leaving: Timer,
}

impl Fields {
    /// Of a form.
    pub fn of(form: &HtmlFormElement, document: &Document) -> Result<Self, JsValue> {
        Ok(Self {
            form: form.clone(),
            parts: Parts::of(form, document)?,
            defaults: RefCell::default(),
            unknown: RefCell::default(),
            touched: RefCell::default(),
            faulty: RefCell::default(),
            at: RefCell::default(),
            leaving: Timer::default(),
        })
    }

    /// The form as typed, what came with it that has no field here, and the options it stands under.
    pub fn typed(&self, options: &EmbedOptions, signs: &Form) -> Form {
        let mut form = Form::default();
        for part in self.parts.forms() {
            let data = FormData::new_with_form(&part).and_then(|data| pairs::form_of(&data));
            form.append(data.unwrap_or_default());
        }
        form.append(self.unknown.borrow().clone());
        form.append(options.of_a_job());
        if hangs_on_signs(&form) {
            form.append(signs.clone());
        }
        form
    }

    /// Puts texts into the fields of their names, but into a locked one only what its link says; a name that the
    /// page has no field for is kept, and passed on. Gives back the names of what was filled.
    pub fn set(&self, form: &Form, options: &EmbedOptions) -> Result<Vec<String>, JsValue> {
        let nothing = Form::default();
        self.lines(form)?;
        let (mut there, mut filled) = (Vec::new(), Vec::new());
        for field in &self.parts.all(FIELDS) {
            let name = name(field);
            let given = if is_locked(field) { &nothing } else { form };
            if let Some(text) = options.value(&name, given) {
                fill(field, text)?;
                self.touch(&name);
                filled.push(name.clone());
            }
            there.push(name);
        }
        let mut unknown = self.unknown.borrow_mut();
        unknown.keep(&|name| form.said(name).is_none());
        // Who may hear, and what is locked, is for the link to say.
        let mut new = form.clone();
        new.keep(&|name| !is_option(name) && !there.iter().any(|there| there == name));
        unknown.append(new);
        Ok(filled)
    }

    /// Another job is about to stand here.
    pub fn forget(&self) {
        self.unknown.borrow_mut().0.clear();
    }

    /// So many lines of the log that there is always one to fill in, each a copy of the page's template for one.
    pub fn lines(&self, form: &Form) -> Result<(), JsValue> {
        let count = usize::from((form.lines_used() + 1).min(*LINES.end()));
        let Some(template) = self.parts.first("template[data-lines]") else { return Ok(()) };
        let (Some(line), Some(parent)) = (content(&template), template.parent_node()) else {
            return Ok(());
        };
        let there = self.parts.all("[data-line]");
        there.iter().skip(count).for_each(Element::remove);
        for n in there.len() + 1..=count {
            let n = n.to_string();
            let copy = line.clone_node_with_deep(true)?;
            for element in &all(&copy, "*") {
                for attribute in NUMBERED {
                    if let Some(value) = element.get_attribute(attribute) {
                        set_attribute(element, attribute, &value.replace('N', &n));
                    }
                }
                if element.has_attribute("data-n") {
                    element.set_text_content(Some(&n));
                }
            }
            if let Some(first) = copy.unchecked_ref::<DocumentFragment>().children().item(0) {
                set_attribute(&first, "data-line", &n);
            }
            parent.insert_before(&copy, Some(&template))?;
        }
        Ok(())
    }

    /// The units that the page has settled.
    pub fn settled_units(&self) -> Vec<(String, String)> {
        let mut units = Vec::new();
        for field in &self.parts.all("input[type=hidden][name$='.unit'][value]") {
            units.push((name(field), attribute(field, "value")));
        }
        units
    }

    /// A field was left: its faults may be shown.
    pub fn touch(&self, name: &str) {
        let mut touched = self.touched.borrow_mut();
        if !touched.iter().any(|n| n == name) {
            touched.push(name.into());
        }
    }

    /// The focus has gone from a field to another one, or to none.
    pub fn leave(&self, name: &str, next: String) {
        self.touch(name);
        *self.at.borrow_mut() = next;
    }

    /// Nothing has been left yet.
    pub fn untouch(&self) {
        self.touched.borrow_mut().clear();
    }

    /// Something is typed. A fault that stands is followed key by key; a new one waits until the field is left.
    pub fn type_in(&self, name: &str) {
        // Another unit makes another figure: as if it had been typed.
        if let Some(figure) = name.strip_suffix(".unit") {
            self.touch(figure);
        }
        if !self.faulty.borrow().iter().any(|faulty| faulty == name) {
            self.touched.borrow_mut().retain(|touched| touched != name);
        }
    }

    /// Holds each fault back until its field is left; is that field being typed in?
    pub fn hold_back(&self, answer: &mut Answer, focused: &str) -> bool {
        let (touched, at) = (self.touched.borrow(), self.at.borrow());
        let mut typing = false;
        answer.faults.retain(|fault| {
            // A number is not at fault while its unit is being chosen.
            let name = fault.field.name();
            let choosing = fault.field.unit().is_some_and(|unit| unit.name() == *at);
            let shown = touched.contains(&name) && !choosing;
            typing |= !shown && (choosing || focused == name);
            shown
        });
        let mut faulty = self.faulty.borrow_mut();
        faulty.clear();
        for fault in &answer.faults {
            faulty.push(fault.field.name());
        }
        typing
    }

    /// Shows a text in a box, to be copied by hand.
    pub fn show_text(&self, text: &str) -> Result<(), JsValue> {
        first(&self.form, "textarea[data-box]").map_or(Ok(()), |place| fill(&place, text))
    }
}
