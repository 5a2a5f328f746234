//! How does a form cross, as pairs of name and text?

use form::Form;
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::prelude::*;

/// A number's meaning would hang on who turned it into text.
fn refused() -> JsValue {
    js_sys::Error::new("every value must be a text").into()
}

/// As an object of names and texts.
pub fn object_of(form: &Form) -> Result<Object, JsValue> {
    let object = Object::new();
    for (name, text) in &form.0 {
        Reflect::set(&object, &name.into(), &text.into())?;
    }
    Ok(object)
}

/// From anything that yields pairs of name and text, as a form's data does. What is no text is refused.
pub fn form_of(pairs: &JsValue) -> Result<Form, JsValue> {
    let text = |pair: &Array, i| pair.get(i).as_string().ok_or_else(refused);
    let mut form = Form::default();
    for pair in Array::from(pairs).to_vec() {
        let pair = pair.unchecked_ref::<Array>();
        form.0.push((text(pair, 0)?, text(pair, 1)?));
    }
    Ok(form)
}
