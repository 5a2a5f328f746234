//! Is what stands in a field its author's or a link's to say, and how is it held there?

use crate::elements::{all, attribute, is_checked, is_choice, toggle, value};
use web_sys::Element;

/// Whatever is locked by a link or a number has one of these.
pub const HELD: &str = "[data-locked], [data-ticked]";

/// May nobody type here? What is hidden is its author's.
pub fn is_locked(field: &Element) -> bool {
    let hidden = field.get_attribute("type").as_deref() == Some("hidden");
    let option = || field.tag_name() == "SELECT" && !all(field, "option[data-locked]").is_empty();
    hidden
        || ["readonly", "data-locked", "data-ticked"].iter().any(|mark| field.has_attribute(mark))
        || option()
}

/// A text that can't be typed over; of a choice, the others can't be chosen. What the author has locked or disabled
/// stays so.
pub fn hold(field: &Element, held: bool) {
    if field.tag_name() == "SELECT" {
        let chosen = value(field);
        for option in &all(field, "option") {
            let other = attribute(option, "value") != chosen;
            set(option, "disabled", held && other);
        }
    } else if is_choice(field) {
        let other = !is_checked(field);
        set(field, "disabled", held && other);
        // A tick can't be made to stay by an attribute: see the press on it.
        toggle(field, "data-ticked", held && !other);
    } else {
        set(field, "readonly", held);
    }
}

fn set(element: &Element, attribute: &str, on: bool) {
    let ours = element.has_attribute("data-locked");
    if if on { !element.has_attribute(attribute) } else { ours } {
        toggle(element, "data-locked", on);
        toggle(element, attribute, on);
    }
}
