//! Under which terms does a link put the form before somebody? What is locked, asked, shown, told, allowed.

use crate::controller::Desk;
use crate::renderer::{all, hide};
use crate::views;
use form::Form;
use form::answer::Answer;
use form::text::joined;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Element, HtmlInputElement};

/// What a link says besides the form itself.
#[derive(Default)]
pub struct Terms {
    /// The fields that keep the link's value.
    lock: String,
    /// And these values.
    pub locked: Form,
    /// The results to be found.
    pub ask: String,
    /// The only parts to be shown; all, if empty.
    only: String,
    /// The one host that may hear of answers, and set fields.
    pub tell: String,
    /// What a sandbox allows besides scripts: whoever wrote it knows, the page cannot ask.
    can: String,
}

/// The names that a link's terms have.
pub const TERMS: [&str; 5] = ["lock", "ask", "only", "tell", "can"];

fn listed(list: &str, name: &str) -> bool {
    list.split(',').any(|listed| listed == name)
}

impl Terms {
    /// Takes the terms out of what a link, a file or a kept job holds. A host is one origin, and nobody else: not
    /// everybody who may have put the page into a frame.
    pub fn of(form: &mut Form, is_origin: fn(&str) -> bool) -> Self {
        let [lock, ask, only, tell, can] = TERMS.map(|name| form.text(name).to_string());
        // Nobody's attempt is checked or revealed by what comes from elsewhere.
        form.0.retain(|(name, _)| !TERMS.contains(&name.as_str()) && !name.starts_with("ask."));
        let tell = if is_origin(&tell) { tell } else { String::new() };
        let locked = Form(form.0.iter().filter(|(name, _)| listed(&lock, name)).cloned().collect());
        Self { lock, locked, ask, only, tell, can }
    }

    /// What is to stand in a field: in a locked one what its link says, in another what is handed in.
    pub fn said<'a>(&'a self, name: &str, part: &'a Form) -> Option<&'a str> {
        self.locked.said(name).or(part.said(name))
    }

    /// What goes with a job wherever it goes. Who may hear and what a sandbox allows is a matter of the place.
    pub fn carried(&self) -> impl Iterator<Item = (String, String)> {
        let all = [("lock", &self.lock), ("ask", &self.ask), ("only", &self.only)];
        all.into_iter().filter(|(_, text)| !text.is_empty()).map(|(name, text)| (name.into(), text.clone()))
    }
}

impl Desk {
    /// Is the page in a frame?
    pub fn is_framed(&self) -> bool {
        self.window.parent().ok().flatten().is_some_and(|parent| parent != self.window)
    }

    /// May the page do this here? A sandbox lets it do what its author says in the link, and no more.
    pub fn may(&self, what: &str) -> bool {
        !self.is_sandboxed() || listed(&self.terms.borrow().can, what)
    }

    /// In a sandbox a served page has no origin of its own.
    fn is_sandboxed(&self) -> bool {
        self.window.origin() == "null" && self.has_address()
    }

    /// Says under which terms the form stands.
    pub fn tell_terms(&self, form: &Form, answer: &mut Answer) {
        let view = form.text("view");
        if !view.is_empty() {
            answer.say(&joined(&["view.", view]));
        }
        let terms = self.terms.borrow();
        let locked = !terms.locked.0.is_empty() || !form.text("variant").is_empty();
        let all_of_it = [
            ("framed", self.is_framed()),
            ("locked", locked),
            ("only", !terms.only.is_empty()),
            ("can.print", self.may("print")),
            ("can.download", self.may("download")),
            ("can.keep", self.store.is_there()),
            ("can.copy", self.has_clipboard() && (!self.is_framed() || listed(&terms.can, "copy"))),
        ];
        all_of_it.into_iter().filter(|(_, holds)| *holds).for_each(|(state, _)| answer.say(state));
    }

    /// Hides the parts that the link leaves out.
    pub fn leave_out(&self) -> Result<(), JsValue> {
        let only = &self.terms.borrow().only;
        if only.is_empty() {
            return Ok(());
        }
        for part in all(&self.form, "[data-part]") {
            if !listed(only, &part.get_attribute("data-part").unwrap_or_default()) {
                leave(&part)?;
            }
        }
        for way in all(&self.form, "input[name='at']") {
            let out = !listed(only, &way.get_attribute("value").unwrap_or_default());
            if out && way.unchecked_ref::<HtmlInputElement>().checked() {
                views::at(&self.form, only.split(',').next().unwrap_or_default());
            }
            if out {
                leave(&way.closest("label")?.unwrap_or(way))?;
            }
        }
        Ok(())
    }

    /// Puts the form under new terms.
    pub fn agree(self: &Rc<Self>, mut terms: Terms) -> Result<(), JsValue> {
        self.pen.forget();
        for part in all(&self.form, "[data-left-out]") {
            part.toggle_attribute_with_force("data-left-out", false)?;
            hide(&part, false);
        }
        // Who may hear, and what a sandbox allows, is as it was where another job comes into the same place.
        let before = self.terms.take();
        for (new, old) in [(&mut terms.tell, before.tell), (&mut terms.can, before.can)] {
            if new.is_empty() {
                *new = old;
            }
        }
        *self.terms.borrow_mut() = terms;
        self.exercise.begin();
        self.begin_telling()?;
        self.lock()
    }

    /// A blank form under the same terms.
    pub fn blank(&self) -> Form {
        let terms = self.terms.borrow();
        Form(terms.locked.0.iter().cloned().chain(terms.carried()).collect())
    }

    /// What goes into the page's address besides the form: the place stays what it is when it is read again.
    pub fn of_the_place(&self) -> Vec<(String, String)> {
        let terms = self.terms.borrow();
        [("tell", &terms.tell), ("can", &terms.can)].map(|(name, text)| (name.into(), text.clone())).into()
    }

    /// Locks what the link and the number of the exercise have settled; what they no longer settle is free again.
    pub fn lock(&self) -> Result<(), JsValue> {
        let terms = self.terms.borrow();
        let numbered = self.is_numbered();
        if !numbered
            && terms.locked.0.is_empty()
            && all(&self.form, "[data-locked], [data-ticked]").is_empty()
        {
            return Ok(());
        }
        for field in all(&self.form, "input[name], select[name], textarea[name]") {
            let name = field.get_attribute("name").unwrap_or_default();
            let settled = terms.locked.0.iter().any(|(locked, _)| *locked == name)
                || numbered && field.has_attribute("data-range");
            set_lock(&field, settled)?;
        }
        Ok(())
    }
}

/// Is this the whole of an origin, such as `https://host`?
pub(crate) fn is_origin(text: &str) -> bool {
    web_sys::Url::new(text).is_ok_and(|url| url.origin() == text)
}

/// Hides what the link leaves out, and remembers that it was not the author who did.
fn leave(part: &Element) -> Result<(), JsValue> {
    if !part.has_attribute("hidden") {
        part.set_attribute("data-left-out", "")?;
        hide(part, true);
    }
    Ok(())
}

/// A text that can't be typed over; of a choice, the others can't be chosen. What the author has locked or disabled
/// stays so.
fn set_lock(field: &Element, settled: bool) -> Result<(), JsValue> {
    let kind = field.get_attribute("type").unwrap_or_default();
    let set = |element: &Element, attribute: &str, on: bool| -> Result<(), JsValue> {
        if on && !element.has_attribute(attribute) {
            element.set_attribute("data-locked", "")?;
            element.set_attribute(attribute, "")?;
        } else if !on && element.has_attribute("data-locked") {
            element.remove_attribute("data-locked")?;
            element.remove_attribute(attribute)?;
        }
        Ok(())
    };
    if field.tag_name() == "SELECT" {
        let chosen = js_sys::Reflect::get(field, &"value".into())?.as_string().unwrap_or_default();
        for option in all(field, "option") {
            let other = option.get_attribute("value").unwrap_or_default() != chosen;
            set(&option, "disabled", settled && other)?;
        }
    } else if kind == "radio" || kind == "checkbox" {
        let other = !field.unchecked_ref::<HtmlInputElement>().checked();
        set(field, "disabled", settled && other)?;
        // A tick can't be made to stay by an attribute: see the press on it.
        field.toggle_attribute_with_force("data-ticked", settled && !other)?;
    } else {
        set(field, "readonly", settled)?;
    }
    Ok(())
}

/// Is what stands in a field its author's, or a link's, to say? What is hidden is its author's.
pub fn is_locked(field: &Element) -> bool {
    let hidden = field.get_attribute("type").as_deref() == Some("hidden");
    let option = || field.tag_name() == "SELECT" && !all(field, "option[data-locked]").is_empty();
    hidden
        || ["readonly", "data-locked", "data-ticked"].iter().any(|mark| field.has_attribute(mark))
        || option()
}
