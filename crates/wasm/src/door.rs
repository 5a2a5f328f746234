//! What can a script call? `answer`, `attach`, `edition`, in plain objects.

use crate::answer::{self, CONTRACT};
use crate::dom;
use crate::form::Form;
use js_sys::{Array, Object};
use serde::Serialize;
use wasm_bindgen::prelude::*;
use web_sys::HtmlFormElement;

/// Works out the answer to a plain object of names and texts. Touches no page.
#[wasm_bindgen(js_name = answer)]
pub fn answer_object(form: &Object) -> Result<JsValue, JsValue> {
    plain(&answer::answer(&Form::from_entries(
        Object::entries(form).into_iter(),
    )))
}

/// Makes a form answer; once a form, however often it is called.
#[wasm_bindgen]
pub fn attach(form: HtmlFormElement) -> Result<(), JsValue> {
    dom::attach(form)
}

/// Name, version and contract of this build.
#[wasm_bindgen]
pub fn edition() -> Result<JsValue, JsValue> {
    #[derive(Serialize)]
    struct Edition {
        name: &'static str,
        version: &'static str,
        contract: u32,
    }
    plain(&Edition {
        name: "saltwright",
        version: env!("CARGO_PKG_VERSION"),
        contract: CONTRACT,
    })
}

fn plain(value: &impl Serialize) -> Result<JsValue, JsValue> {
    let objects = serde_wasm_bindgen::Serializer::new().serialize_maps_as_objects(true);
    Ok(value.serialize(&objects)?)
}

impl Form {
    /// From pairs of name and text, as `Object.entries` and a form's data give them.
    pub(crate) fn from_entries(entries: impl Iterator<Item = JsValue>) -> Self {
        let text = |pair: &Array, i| pair.get(i).as_string().unwrap_or_default();
        Self(
            entries
                .map(|pair| Array::from(&pair))
                .map(|p| (text(&p, 0), text(&p, 1)))
                .collect(),
        )
    }
}
