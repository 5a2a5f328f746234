//! How are elements of a page found, and what stands on one?

use js_sys::Reflect;
use wasm_bindgen::prelude::*;
use web_sys::{DocumentFragment, Element, HtmlTemplateElement, Node};

/// What holds an answer of a person.
pub const FIELDS: &str = "input[name], select[name], textarea[name]";

/// Elements within a node that match, in their order; none for a selector that means nothing.
pub fn all(within: &Node, selector: &str) -> Vec<Element> {
    let list = match within.dyn_ref::<Element>() {
        Some(element) => element.query_selector_all(selector),
        None => within.unchecked_ref::<DocumentFragment>().query_selector_all(selector),
    };
    let mut found = Vec::new();
    if let Ok(list) = list {
        for i in 0..list.length() {
            found.extend(list.get(i).map(JsCast::unchecked_into::<Element>));
        }
    }
    found
}

/// The first of them.
pub fn first(within: &Node, selector: &str) -> Option<Element> {
    all(within, selector).into_iter().next()
}

/// What a template holds.
pub fn content(template: &Element) -> Option<DocumentFragment> {
    Some(template.dyn_ref::<HtmlTemplateElement>()?.content())
}

/// The text of an attribute; empty when it is not there.
pub fn attribute(element: &Element, name: &str) -> String {
    element.get_attribute(name).unwrap_or_default()
}

/// What it is called by `name`.
pub fn name(element: &Element) -> String {
    attribute(element, "name")
}

/// Where an event happened.
pub fn target(event: &web_sys::Event) -> Option<Element> {
    event.target()?.dyn_into().ok()
}

/// What stands in a field now.
pub fn value(field: &Element) -> String {
    Reflect::get(field, &"value".into()).ok().and_then(|value| value.as_string()).unwrap_or_default()
}

/// Is it one of several to choose from, or a tick?
pub fn is_choice(field: &Element) -> bool {
    matches!(field.get_attribute("type").as_deref(), Some("radio" | "checkbox"))
}

/// Puts a text into a field; chooses the one that has it for its value.
pub fn fill(field: &Element, text: &str) -> Result<(), JsValue> {
    let (key, value) = match is_choice(field) {
        true => ("checked", JsValue::from(field.get_attribute("value").as_deref() == Some(text))),
        false => ("value", text.into()),
    };
    Reflect::set(field, &key.into(), &value).map(drop)
}

/// Is it chosen, or ticked?
pub fn is_checked(field: &Element) -> bool {
    field.unchecked_ref::<web_sys::HtmlInputElement>().checked()
}

/// Writes a text where another stands.
pub fn set_text(element: &Element, text: &str) {
    if element.text_content().as_deref() != Some(text) {
        element.set_text_content(Some(text));
    }
}

/// Writes an attribute. None of ours has a name that a browser could refuse.
pub fn set_attribute(element: &Element, attribute: &str, text: &str) {
    let _ = element.set_attribute(attribute, text);
}

/// Hides an element, or shows it.
pub fn hide(element: &Element, hidden: bool) {
    toggle(element, "hidden", hidden);
}

/// Sets an attribute that has no text, or takes it away.
pub fn toggle(element: &Element, attribute: &str, on: bool) {
    if element.has_attribute(attribute) != on {
        let _ = element.toggle_attribute_with_force(attribute, on);
    }
}

/// Gives an element the focus, if it takes it.
pub fn focus(element: &Element) -> Result<(), JsValue> {
    element.unchecked_ref::<web_sys::HtmlElement>().focus()
}
