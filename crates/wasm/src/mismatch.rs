//! Which names on the page does this edition not know? Told while a page is made, never to its visitors.

use crate::answer::joined;
use crate::dom::{all, content, first};
use crate::names::{self, is_listed};
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

/// All that a form, and every template in it, calls by a name.
fn look(within: &Node, found: &mut Vec<String>) -> Result<(), JsValue> {
    for element in all(within, "*") {
        let get = |attribute: &str| element.get_attribute(attribute);
        let mut wrong = |attribute: &str, value: &str| {
            let tag = element.tag_name().to_ascii_lowercase();
            found.push(joined(&["<", &tag, " ", attribute, "=\"", value, "\">"]));
        };
        let tag = element.tag_name();
        if let Some(name) = get("name") {
            let in_words = element.closest("[data-fault]")?.is_some();
            let known = match tag.as_str() {
                "OUTPUT" => {
                    names::is_output(&name)
                        || names::is_cell(&name)
                        || is_listed(names::IN_FAULTS, &name)
                        || in_words
                }
                // A field of the author's own, which is kept, has no dot.
                "INPUT" | "SELECT" | "TEXTAREA" => is_own(&name) || names::is_field(&name),
                _ => true,
            };
            if !known {
                wrong("name", &name);
            }
        }
        for state in get("data-when").unwrap_or_default().split(' ') {
            let state = state.strip_prefix('!').unwrap_or(state);
            if !state.is_empty() && !names::is_state(state) && state != "ready" {
                wrong("data-when", state);
            }
        }
        if let Some(place) = get("data-fault").filter(|place| !names::is_fault(place)) {
            wrong("data-fault", &place);
        }
        for (attribute, list) in
            [("data-each", names::ROWS), ("data-act", names::ACTS), ("data-mark", names::MARKS)]
        {
            if let Some(name) = get(attribute).filter(|name| !is_listed(list, name)) {
                wrong(attribute, &name);
            }
        }
        if let Some(inner) = content(element.clone()) {
            look(&inner, found)?;
        }
    }
    Ok(())
}

fn is_own(name: &str) -> bool {
    !name.bytes().any(|b| b == b'.')
}
