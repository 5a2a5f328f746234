//! What does a press mean? Each button says by `data-act` which act it is for.

use crate::elements::attribute;
use form::contract::Act;
use wasm_bindgen::prelude::*;
use web_sys::{Element, Event};

/// What a press means.
pub enum Press {
    /// A link to a filled form.
    Filled(String),
    /// The reader is done.
    Submit,
    /// A button, and what it is for.
    Act(Act, Element),
    /// Nothing of ours.
    Nothing,
}

/// A press on an element.
pub fn press(event: &Event, target: &Element) -> Result<Press, JsValue> {
    if let Some(link) = target.closest("a[href^='#sw1&']")? {
        event.prevent_default();
        return Ok(Press::Filled(attribute(&link, "href")));
    }
    if target.has_attribute("data-ticked") {
        event.prevent_default(); // Locked, and a tick knows no other way to be.
        return Ok(Press::Nothing);
    }
    if target.closest("button:not([type]):not([data-act]), [type='submit']")?.is_some() {
        return Ok(Press::Submit); // Before the browser does: a sandbox would only complain.
    }
    let Some(button) = target.closest("[data-act]")? else { return Ok(Press::Nothing) };
    if button.get_attribute("type").as_deref() != Some("button") {
        event.prevent_default(); // It stands for Enter, and does what it says.
    }
    let act = Act::find(&attribute(&button, "data-act"));
    Ok(act.map_or(Press::Nothing, |act| Press::Act(act, button)))
}
