//! Which names on the page does this edition not know? Told while a page is made, never to its visitors.

use crate::renderer::{all, content, first};
use form::contract::names::{self, is_listed};
use form::text::joined;
use js_sys::{Array, Reflect};
use wasm_bindgen::prelude::*;
use web_sys::{HtmlFormElement, Node, Window};

/// Whoever has the page on disk or on this machine is making it.
fn is_being_made(window: &Window) -> Result<bool, JsValue> {
    let place = window.location();
    let host = place.hostname()?;
    let here = host == "localhost" || host == "127.0.0.1" || host == "[::1]";
    Ok(here || place.protocol()? == "file:")
}

/// Tells of each element with an unknown name: in a box in front of the form where the page is being made, on the
/// console elsewhere.
pub fn tell(form: &HtmlFormElement, window: &Window) -> Result<(), JsValue> {
    let mut found = Vec::new();
    look(form, &mut found)?;
    if found.is_empty() {
        return Ok(());
    }
    let mut lines = String::new();
    for line in &found {
        lines = joined(&[&lines, "? ", line, "\n"]);
    }
    if is_being_made(window)? {
        let place = match first(form, "[data-mismatch]") {
            Some(place) => place,
            None => {
                let place = window.document().ok_or("no document")?.create_element("pre")?;
                place.set_attribute("data-mismatch", "")?;
                form.insert_before(&place, form.first_child().as_ref())?;
                place
            }
        };
        place.set_text_content(Some(&lines));
        return Ok(());
    }
    let console = Reflect::get(window, &"console".into())?;
    let warn = Reflect::get(&console, &"warn".into())?;
    warn.unchecked_ref::<js_sys::Function>().apply(&console, &Array::of1(&lines.into())).map(drop)
}

/// Who calls what by a name, in which attribute, and is it known?
type Called = (&'static str, &'static str, fn(&str) -> bool);

const CALLED: [Called; 7] = [
    ("output[name]", "name", |name| {
        names::is_output(name) || names::is_cell(name) || is_listed(names::IN_FAULTS, name)
    }),
    // A field of the author's own, which is kept, has no dot.
    ("input[name], select[name], textarea[name]", "name", |name| is_own(name) || names::is_field(name)),
    ("[data-when]", "data-when", |state| {
        let state = state.strip_prefix('!').unwrap_or(state);
        state.is_empty() || names::is_state(state) || state == "ready"
    }),
    ("[data-fault]", "data-fault", names::is_fault),
    ("[data-each]", "data-each", |name| is_listed(names::ROWS, name)),
    ("[data-act]", "data-act", |name| is_listed(names::ACTS, name)),
    ("[data-mark]", "data-mark", |name| is_listed(names::MARKS, name)),
];

/// All that a form, and every template in it, calls by a name.
fn look(within: &Node, found: &mut Vec<String>) -> Result<(), JsValue> {
    for (selector, attribute, known) in CALLED {
        for element in all(within, selector) {
            let called = element.get_attribute(attribute).unwrap_or_default();
            for wrong in called.split(' ').filter(|word| !known(word)) {
                let tag = element.tag_name().to_ascii_lowercase();
                // In a message an output says whatever its message needs.
                if tag != "output" || element.closest("[data-fault]")?.is_none() {
                    found.push(joined(&["<", &tag, " ", attribute, "=\"", wrong, "\">"]));
                }
            }
        }
    }
    for template in all(within, "template") {
        if let Some(inner) = content(template) {
            look(&inner, found)?;
        }
    }
    Ok(())
}

fn is_own(name: &str) -> bool {
    !name.bytes().any(|b| b == b'.')
}
