//! What does a form get that its author left out? Labels and descriptions tied to their fields, silent outputs.

use crate::elements::{all, attribute, name, set_attribute};
use form::text::joined;
use web_sys::{Element, HtmlFormElement};

/// What a field is described by: its hint, what was understood, what is wrong. Which attribute names the field, and
/// what stands there in front of its name?
const ABOUT: [(&str, &str, &str); 3] = [
    ("[data-hint]", "data-hint", ""),
    ("output[name^='echo.']", "name", "echo."),
    ("[data-fault]:not(template)", "data-fault", ""),
];

/// Ties what the author has not tied; `number` tells one form's ids from another's.
pub fn wire(forms: &[HtmlFormElement], number: usize) {
    let mut count = 0;
    let mut id = |element: &Element| {
        if element.id().is_empty() {
            count += 1;
            element.set_id(&joined(&["saltwright-", &number.to_string(), "-", &count.to_string()]));
        }
        element.id()
    };
    for form in forms {
        wire_one(form, &mut id);
    }
}

fn wire_one(form: &HtmlFormElement, id: &mut impl FnMut(&Element) -> String) {
    for output in &all(form, "output:not([aria-live])") {
        set_attribute(output, "aria-live", "off");
    }
    let fields = all(form, "input[name]:not([type=hidden]), select[name], textarea[name]");
    let mut about_all = Vec::new();
    for (selector, about, before) in ABOUT {
        for place in all(form, selector) {
            let of = attribute(&place, about);
            about_all.push((of.strip_prefix(before).unwrap_or_default().to_string(), place));
        }
    }
    for field in &fields {
        let name = name(field);
        if !field.has_attribute("aria-describedby") {
            let mut about = String::new();
            for (_, place) in about_all.iter().filter(|(of, _)| *of == name) {
                about = joined(&[&about, if about.is_empty() { "" } else { " " }, &id(place)]);
            }
            if !about.is_empty() {
                set_attribute(field, "aria-describedby", &about);
            }
        }
    }
    // A label that holds no field and names none is of the field that comes next.
    for label in &all(form, "label:not([for])") {
        if !all(label, "input, select, textarea").is_empty() {
            continue;
        }
        let behind = |field: &&Element| label.compare_document_position(field) & FOLLOWING != 0;
        if let Some(field) = fields.iter().find(behind) {
            set_attribute(label, "for", &id(field));
        }
    }
}

/// DOM's own number for "comes after".
const FOLLOWING: u16 = 4;
