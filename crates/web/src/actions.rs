//! What does a press mean? Each button says by `data-act` which act it is for.

use crate::elements::attribute;
use wasm_bindgen::prelude::*;
use web_sys::{Element, Event};

/// What a button can do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Action {
    Print,
    Now,
    Copy,
    Back,
    Next,
    Clear,
    Save,
    Link,
    Calendar,
    Csv,
    TakeTheirs,
    KeepMine,
    OpenJob,
    DropJob,
    Undo,
    Check,
    Reveal,
    Answers,
    Example,
    Open,
    Json,
    Frame,
    Expand,
    Collapse,
}

/// What each is called.
const ACTIONS: [(&str, Action); 25] = [
    ("print", Action::Print),
    ("now", Action::Now),
    ("copy", Action::Copy),
    ("back", Action::Back),
    ("next", Action::Next),
    ("clear", Action::Clear),
    ("new", Action::Clear),
    ("save", Action::Save),
    ("link", Action::Link),
    ("calendar", Action::Calendar),
    ("csv", Action::Csv),
    ("take-theirs", Action::TakeTheirs),
    ("keep-mine", Action::KeepMine),
    ("open-job", Action::OpenJob),
    ("drop-job", Action::DropJob),
    ("undo", Action::Undo),
    ("check", Action::Check),
    ("reveal", Action::Reveal),
    ("answers", Action::Answers),
    ("example", Action::Example),
    ("open", Action::Open),
    ("json", Action::Json),
    ("frame", Action::Frame),
    ("expand", Action::Expand),
    ("collapse", Action::Collapse),
];

/// What a press means.
pub enum Press {
    /// A link to a filled form.
    Filled(String),
    /// The reader is done.
    Submit,
    /// A button, and what it is for.
    Act(Action, Element),
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
    let act = attribute(&button, "data-act");
    let action = ACTIONS.iter().find(|(name, _)| *name == act);
    Ok(action.map_or(Press::Nothing, |(_, action)| Press::Act(*action, button)))
}
