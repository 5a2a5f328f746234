//! Which part of the page is in view? The reader's view, and one part at a time on a telephone.
//!
//! Both are radio buttons, so they work without this too; the page's style says what each choice hides.

use crate::renderer::{all, first};
use wasm_bindgen::prelude::*;
use web_sys::{Element, HtmlElement, HtmlFormElement, HtmlInputElement};

/// The reader's view.
const VIEW: &str = "input[name='view']:checked";
/// The parts, each by the name that its places have in `data-part`.
const PARTS: &str = "input[name='at']";

/// Unfolds what the page's author wants open in the chosen view, folds what is meant for others.
pub fn fold(form: &HtmlFormElement) {
    let view = first(form, VIEW).and_then(|e| e.get_attribute("value")).unwrap_or_default();
    for part in all(form, "details[data-open]") {
        let open = part.get_attribute("data-open").unwrap_or_default().split(' ').any(|v| v == view);
        let _ = part.toggle_attribute_with_force("open", open);
    }
}

/// Puts the form back to what the page begins with, all but the reader's view.
pub fn reset(form: &HtmlFormElement) {
    let view = first(form, VIEW).and_then(|e| e.get_attribute("value"));
    form.reset();
    choose(form, "input[name='view']", &view.unwrap_or_default());
}

/// Chooses the part of this name, if there is one.
pub fn at(form: &HtmlFormElement, part: &str) {
    choose(form, PARTS, part);
}

/// Goes to the part that was chosen, and shuts the list of them.
pub fn opened(form: &HtmlFormElement) -> Result<(), JsValue> {
    if let Some(list) = first(form, "details.parts") {
        list.toggle_attribute_with_force("open", false)?;
    }
    first(form, "input[name='at']:checked").map_or(Ok(()), |part| show(form, &part))
}

/// Goes to the next part, or back to the one before.
pub fn walk(form: &HtmlFormElement, back: bool) -> Result<(), JsValue> {
    let parts = all(form, PARTS);
    let at = parts.iter().position(|part| part.unchecked_ref::<HtmlInputElement>().checked()).unwrap_or(0);
    let to = if back { at.saturating_sub(1) } else { (at + 1).min(parts.len().saturating_sub(1)) };
    parts.get(to).map_or(Ok(()), |part| show(form, part))
}

/// Brings the part into view that holds the goal of a link within the page.
pub fn reveal(form: &HtmlFormElement, link: &str) -> Result<(), JsValue> {
    let Some(goal) = first(form, link) else { return Ok(()) };
    if let Some(place) = goal.closest("[data-part]")? {
        choose(form, PARTS, &place.get_attribute("data-part").unwrap_or_default());
    }
    Ok(())
}

/// Chooses the sheet that a button prints, if it names one; else the last one stays.
pub fn paper(form: &HtmlFormElement, button: &Element) {
    choose(form, "input[name='paper']", &button.get_attribute("value").unwrap_or_default());
}

/// Chooses the radio button of this value, if there is one.
fn choose(form: &HtmlFormElement, group: &str, value: &str) {
    for one in all(form, group) {
        if one.get_attribute("value").as_deref() == Some(value) {
            one.unchecked_ref::<HtmlInputElement>().set_checked(true);
        }
    }
}

/// Chooses a part and goes to its beginning.
fn show(form: &HtmlFormElement, part: &Element) -> Result<(), JsValue> {
    let name = part.get_attribute("value").unwrap_or_default();
    choose(form, PARTS, &name);
    let Some(place) =
        all(form, "[data-part]").into_iter().find(|e| e.get_attribute("data-part").as_ref() == Some(&name))
    else {
        return Ok(());
    };
    if place.tag_name() == "DETAILS" {
        place.toggle_attribute_with_force("open", true)?;
    }
    if let Some(heading) = first(&place, "h2") {
        heading.set_attribute("tabindex", "-1")?;
        heading.unchecked_ref::<HtmlElement>().focus()?;
    }
    place.scroll_into_view();
    Ok(())
}
