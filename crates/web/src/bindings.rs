//! Where on a form is an answer written, and what stands there already?
//!
//! To look for the places costs more than to write what is new: they are looked for once, and again when the form
//! is reset or somebody else has put elements into it or taken some out.

use crate::elements::{all, attribute, name};
use form::answer::{Answer, Shown};
use form::contract::{OutputId, State};
use web_sys::{Element, HtmlCollection, HtmlFormElement};

/// One form's places for an answer.
pub struct Bindings {
    elements: HtmlCollection,
    /// So many elements the form had after it was written.
    count: u32,
    /// The outputs outside rows and messages.
    pub outputs: Vec<Place>,
    /// What waits for states outside rows.
    pub waiting: Vec<Waiting>,
    /// The answer that was written.
    pub written: Option<Answer>,
}

/// An output.
pub struct Place {
    pub element: Element,
    /// What it shows; nothing for a name that is no output.
    pub output: Option<OutputId>,
    /// What was written there last, be it nothing.
    pub shown: Option<Option<Shown>>,
}

/// What waits for states.
pub struct Waiting {
    pub element: Element,
    pub when: When,
}

/// What `data-when` says: which states, and does each have to hold? A name that is no state never holds.
pub struct When(Vec<(Option<State>, bool)>);

impl When {
    /// Of its text.
    pub fn of(text: &str) -> Self {
        let mut states = Vec::new();
        for word in text.split(' ') {
            let name = word.strip_prefix('!');
            states.push((State::find(name.unwrap_or(word)), name.is_none()));
        }
        Self(states)
    }

    /// Is all of it so?
    pub fn fits(&self, holds: impl Fn(State) -> bool) -> bool {
        self.0.iter().all(|(state, wanted)| state.is_some_and(&holds) == *wanted)
    }
}

impl Bindings {
    /// Looks for them.
    pub fn find(form: &HtmlFormElement) -> Self {
        let (mut outputs, mut waiting) = (Vec::new(), Vec::new());
        for element in all(form, "output[name]:not([data-fault] *, [data-row] *)") {
            let output = OutputId::find(&name(&element));
            outputs.push(Place { element, output, shown: None });
        }
        for element in all(form, "[data-when]:not([data-row], [data-row] *)") {
            let when = When::of(&attribute(&element, "data-when"));
            waiting.push(Waiting { element, when });
        }
        let elements = form.get_elements_by_tag_name("*");
        Self { elements, count: 0, outputs, waiting, written: None }
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

/// What stands in the drawing of the pool.
pub fn drawn(answer: &Answer) -> Vec<Option<&Shown>> {
    let mut row = Vec::new();
    for (part, _) in &answer.shapes {
        row.push(part.label().and_then(|output| answer.shown(output)));
    }
    row
}
