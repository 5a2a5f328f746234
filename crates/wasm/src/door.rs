//! What can a script call? `answer`, `attach`, `edition`, in plain objects.

use crate::answer::CONTRACT;
use crate::desk;
use crate::form::Form;
use crate::plain::Plain;
use js_sys::{Array, Object, Reflect};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::HtmlFormElement;

/// Works out the answer to a plain object of names and texts. Touches no page. Throws only for a value
/// that is no text.
#[wasm_bindgen(js_name = answer, unchecked_return_type = "Answer")]
pub fn answer_object(
    #[wasm_bindgen(unchecked_param_type = "Record<string, string>")] form: &Object,
) -> Result<JsValue, JsValue> {
    let answer = crate::answer(&Form::from_pairs(&Object::entries(form))?);
    Ok(Plain::from(&answer).to_script())
}

/// A form that answers.
#[wasm_bindgen]
pub struct Desk(Rc<desk::Desk>);

#[wasm_bindgen]
impl Desk {
    /// The form as typed: an object of names and texts.
    #[wasm_bindgen(unchecked_return_type = "Record<string, string>")]
    pub fn form(&self) -> Result<Object, JsValue> {
        self.0.typed().to_object()
    }

    /// Fills in an object of names and texts; what it does not name stays. Throws only for a value that is no text.
    pub fn set(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Record<string, string>")] part: &Object,
    ) -> Result<(), JsValue> {
        self.0.set(&Form::from_pairs(&Object::entries(part))?)
    }

    /// Stops answering; what stands on the page stays.
    pub fn detach(&self) -> Result<(), JsValue> {
        self.0.detach()
    }
}

/// Makes a form answer; once a form, however often it is called.
#[wasm_bindgen]
pub fn attach(form: HtmlFormElement) -> Result<Desk, JsValue> {
    desk::attach(form).map(Desk)
}

/// Name, version and contract of this build.
#[wasm_bindgen(unchecked_return_type = "Edition")]
pub fn edition() -> JsValue {
    Plain::Thing(vec![
        ("name", Plain::Text("saltwright")),
        ("version", Plain::Text(env!("CARGO_PKG_VERSION"))),
        ("contract", Plain::Number(CONTRACT)),
    ])
    .to_script()
}

/// `edition`'s type, beside what makes it.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = "
/** Which build this is. */
export interface Edition {
    /** The package's name. */
    name: string;
    /** The package's version. */
    version: string;
    /** The contract between form and code; the form says it as `data-saltwright`. */
    contract: number;
}
";

/// A number's meaning would hang on who turned it into text.
fn refused() -> JsValue {
    js_sys::Error::new("every value must be a text").into()
}

impl Form {
    /// As an object of names and texts.
    pub(crate) fn to_object(&self) -> Result<Object, JsValue> {
        let object = Object::new();
        for (name, text) in &self.0 {
            Reflect::set(&object, &name.into(), &text.into())?;
        }
        Ok(object)
    }

    /// From anything that yields pairs of name and text, as a form's data does. What is no text is
    /// refused: a number's meaning would hang on who turned it into text.
    pub(crate) fn from_pairs(pairs: &JsValue) -> Result<Self, JsValue> {
        let text = |pair: &Array, i| pair.get(i).as_string().ok_or_else(refused);
        let mut form = Self::default();
        for pair in Array::from(pairs).to_vec() {
            let pair = pair.unchecked_ref::<Array>();
            form.0.push((text(pair, 0)?, text(pair, 1)?));
        }
        Ok(form)
    }
}
