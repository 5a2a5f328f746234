//! What can a script call? `answer`, `attach`, `edition`, in plain objects.

use crate::answer::CONTRACT;
use crate::desk;
use crate::form::Form;
use crate::plain::Plain;
use js_sys::{Array, Object};
use serde::Serialize;
use wasm_bindgen::prelude::*;
use web_sys::HtmlFormElement;

/// Works out the answer to a plain object of names and texts. Touches no page.
#[wasm_bindgen(js_name = answer)]
pub fn answer_object(form: &Object) -> Result<JsValue, JsValue> {
    let answer = crate::answer(&Form::from_pairs(&Object::entries(form)));
    plain(Plain::from(&answer))
}

/// Makes a form answer; once a form, however often it is called.
#[wasm_bindgen]
pub fn attach(form: HtmlFormElement) -> Result<(), JsValue> {
    desk::attach(form)
}

/// Name, version and contract of this build.
#[wasm_bindgen]
pub fn edition() -> Result<JsValue, JsValue> {
    plain(Plain::Map(vec![
        ("name", Plain::Text("saltwright")),
        ("version", Plain::Text(env!("CARGO_PKG_VERSION"))),
        ("contract", Plain::Number(CONTRACT)),
    ]))
}

fn plain(value: Plain) -> Result<JsValue, JsValue> {
    let objects = serde_wasm_bindgen::Serializer::new().serialize_maps_as_objects(true);
    Ok(value.serialize(&objects)?)
}

impl Form {
    /// From anything that yields pairs of name and text, as a form's data does.
    pub(crate) fn from_pairs(pairs: &JsValue) -> Self {
        let text = |pair: &JsValue, i| Array::from(pair).get(i).as_string().unwrap_or_default();
        Self(Array::from(pairs).to_vec().iter().map(|pair| (text(pair, 0), text(pair, 1))).collect())
    }
}
