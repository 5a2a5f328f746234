//! Which part of the page is in view? The reader's view, and one part at a time on a telephone.
//!
//! Both are radio buttons, so they work without this too; the page's style says what each choice hides.

use crate::elements::{all, attribute, first, focus, is_checked, set_attribute, toggle};
use crate::parts::{Parts, leave};
use form::embed_options::listed;
use wasm_bindgen::prelude::*;
use web_sys::{Element, HtmlFormElement, HtmlInputElement};

/// The reader's view.
const VIEW: &str = "input[name='view']";
/// The parts, each by the name that its places have in `data-part`.
const PARTS: &str = "input[name='at']";
const PART: &str = "data-part";

/// What is chosen of a group of radio buttons.
fn chosen(form: &HtmlFormElement, group: &str) -> String {
    all(form, group).into_iter().find(is_checked).map(|one| attribute(&one, "value")).unwrap_or_default()
}

/// Chooses the radio button of this value, if there is one.
fn choose(form: &HtmlFormElement, group: &str, value: &str) {
    for one in &all(form, group) {
        if attribute(one, "value") == value {
            one.unchecked_ref::<HtmlInputElement>().set_checked(true);
        }
    }
}

/// Unfolds what the page's author wants open in the chosen view, folds what is meant for others.
pub fn fold(form: &HtmlFormElement) {
    let view = chosen(form, VIEW);
    for part in &all(form, "details[data-open]") {
        toggle(part, "open", attribute(part, "data-open").split(' ').any(|open| open == view));
    }
}

/// Puts the form back to what the page begins with, all but the reader's view.
pub fn reset(form: &HtmlFormElement, parts: &Parts) {
    let view = chosen(form, VIEW);
    parts.reset();
    choose(form, VIEW, &view);
}

/// Goes to the part that was chosen, and shuts the list of them.
pub fn opened(form: &HtmlFormElement) -> Result<(), JsValue> {
    if let Some(list) = first(form, "details.parts") {
        toggle(&list, "open", false);
    }
    show(form, &chosen(form, PARTS))
}

/// Goes to the next part, or back to the one before.
pub fn walk(form: &HtmlFormElement, back: bool) -> Result<(), JsValue> {
    let parts = all(form, PARTS);
    let at = parts.iter().position(is_checked).unwrap_or(0);
    let to = if back { at.saturating_sub(1) } else { (at + 1).min(parts.len().saturating_sub(1)) };
    parts.get(to).map_or(Ok(()), |part| show(form, &attribute(part, "value")))
}

/// Brings the part into view that holds the goal of a link within the page; gives back the goal.
pub fn reveal(form: &HtmlFormElement, parts: &Parts, link: &str) -> Result<Option<Element>, JsValue> {
    let goal = if link.len() > 1 { parts.reveal(link)? } else { None };
    if let Some(goal) = &goal
        && let Some(place) = goal.closest("[data-part]")?
    {
        choose(form, PARTS, &attribute(&place, PART));
    }
    Ok(goal)
}

/// Chooses the sheet that a button prints, if it names one; else the last one stays.
pub fn paper(form: &HtmlFormElement, sheet: &str) {
    choose(form, "input[name='paper']", sheet);
}

/// Takes away the ways to the parts that the link leaves out, and goes to one that it does not.
pub fn leave_out(form: &HtmlFormElement, only: &str) -> Result<(), JsValue> {
    for way in all(form, PARTS) {
        if listed(only, &attribute(&way, "value")) {
            continue;
        }
        if is_checked(&way) {
            choose(form, PARTS, only.split(',').next().unwrap_or_default());
        }
        leave(&way.closest("label")?.unwrap_or(way));
    }
    Ok(())
}

/// Chooses a part and goes to its beginning.
fn show(form: &HtmlFormElement, name: &str) -> Result<(), JsValue> {
    choose(form, PARTS, name);
    let places = all(form, "[data-part]:not(template)");
    let Some(place) = places.into_iter().find(|place| attribute(place, PART) == name) else {
        return Ok(());
    };
    if place.tag_name() == "DETAILS" {
        toggle(&place, "open", true);
    }
    if let Some(heading) = first(&place, "h2") {
        set_attribute(&heading, "tabindex", "-1");
        focus(&heading)?;
    }
    place.scroll_into_view();
    Ok(())
}
