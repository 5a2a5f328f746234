//! Where on a form is an answer written, and what stands there already?
//!
//! To look for the places costs more than to write what is new: they are looked for once, and again when the form
//! is reset or somebody else has put elements into it or taken some out.

use crate::elements::{all, attribute};
use form::answer::{Answer, Shown};
use web_sys::{Element, HtmlCollection, HtmlFormElement};

/// One form's places for an answer.
pub struct Bindings {
    elements: HtmlCollection,
    /// So many elements the form had after it was written.
    count: u32,
    /// The outputs outside rows and messages.
    pub outputs: Vec<Binding>,
    /// What waits for states outside rows.
    pub waiting: Vec<Binding>,
    /// The answer that was written.
    pub written: Option<Answer>,
}

/// One element.
pub struct Binding {
    pub element: Element,
    /// An output's name, or what is waited for.
    pub name: String,
    /// What was written there last, be it nothing.
    pub shown: Option<Option<Shown>>,
}

impl Bindings {
    /// Looks for them.
    pub fn find(form: &HtmlFormElement) -> Self {
        Self {
            elements: form.get_elements_by_tag_name("*"),
            count: 0,
            outputs: named(form, "output[name]:not([data-fault] *, [data-row] *)", "name"),
            waiting: named(form, "[data-when]:not([data-row], [data-row] *)", "data-when"),
            written: None,
        }
    }

    /// Is everything where it was?
    pub fn hold(&self) -> bool {
        self.elements.length() == self.count
    }

    /// Remembers that an answer stands here.
    pub fn remember(&mut self, answer: Answer) {
        self.count = self.elements.length();
        self.written = Some(answer);
    }
}

fn named(form: &HtmlFormElement, selector: &str, by: &str) -> Vec<Binding> {
    let mut found = Vec::new();
    for element in all(form, selector) {
        let name = attribute(&element, by);
        found.push(Binding { element, name, shown: None });
    }
    found
}

/// What stands in the drawing of the pool.
pub fn drawn(answer: &Answer) -> Vec<Option<&Shown>> {
    let mut row = Vec::new();
    for (name, _) in &answer.shapes {
        row.push(answer.output(name));
    }
    row
}
