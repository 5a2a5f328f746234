//! How does a form cross, as pairs of name and text? From a form's data or a script's object; to and from a link.

use form::Form;
use form::text::joined;
use js_sys::{Array, Object};
use serde::Serialize;
use wasm_bindgen::prelude::*;
use web_sys::UrlSearchParams;

/// How a link to a filled form begins.
pub const LINK: &str = "#sw1&";

/// A number's meaning would hang on who turned it into text.
fn refused() -> JsValue {
    js_sys::Error::new("every value must be a text").into()
}

/// Anything of ours as a script has it: plain objects, lists and texts.
pub fn plain(value: &impl Serialize) -> Result<JsValue, JsValue> {
    Ok(value.serialize(&serde_wasm_bindgen::Serializer::json_compatible())?)
}

/// From anything that yields pairs of name and text, as a form's data does. What is no text is refused.
pub fn form_of(pairs: &JsValue) -> Result<Form, JsValue> {
    let text = |pair: &Array, i| pair.get(i).as_string().ok_or_else(refused);
    let mut form = Form::default();
    for pair in Array::from(pairs).to_vec() {
        let pair = pair.unchecked_ref::<Array>();
        form.say(&text(pair, 0)?, &text(pair, 1)?);
    }
    Ok(form)
}

/// From a script's object of names and texts.
pub fn of_object(object: &Object) -> Result<Form, JsValue> {
    form_of(&Object::entries(object))
}

fn params(form: &Form) -> Result<UrlSearchParams, JsValue> {
    let pairs = UrlSearchParams::new()?;
    for (name, text) in form.0.iter().filter(|(_, text)| !text.is_empty()) {
        pairs.append(name, text);
    }
    Ok(pairs)
}

/// What a form holds, as a link has it behind its beginning.
pub fn to_text(form: &Form) -> Result<String, JsValue> {
    Ok(params(form)?.to_string().into())
}

/// The same by name: the same form is the same text, whichever of its parts are open.
pub fn by_name(form: &Form) -> Result<String, JsValue> {
    let pairs = params(form)?;
    pairs.sort()?;
    Ok(pairs.to_string().into())
}

/// The form that such a text holds.
pub fn of_text(text: &str) -> Result<Form, JsValue> {
    form_of(&UrlSearchParams::new_with_str(text)?.into())
}

/// The link to a page with the form in it.
pub fn link(page: &str, form: &Form) -> Result<String, JsValue> {
    Ok(joined(&[page, LINK, &to_text(form)?]))
}
