//! What can a script call? `answer`, `attach`, `edition`, in plain objects.

use crate::controller;
use crate::pairs::{form_of, object_of};
use crate::to_js::Plain;
use form::answer::CONTRACT;
use js_sys::Object;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::HtmlFormElement;

/// Works out the answer to a plain object of names and texts. Touches no page. Throws only for a value
/// that is no text.
#[wasm_bindgen(js_name = answer, unchecked_return_type = "Answer")]
pub fn answer_object(
    #[wasm_bindgen(unchecked_param_type = "Record<string, string>")] form: &Object,
) -> Result<JsValue, JsValue> {
    let answer = form::answer(&form_of(&Object::entries(form))?);
    Ok(Plain::from(&answer).to_script())
}

/// A form that answers.
#[wasm_bindgen]
pub struct Desk(Rc<controller::Desk>);

#[wasm_bindgen]
impl Desk {
    /// The form as typed: an object of names and texts.
    #[wasm_bindgen(unchecked_return_type = "Record<string, string>")]
    pub fn form(&self) -> Result<Object, JsValue> {
        object_of(&self.0.typed())
    }

    /// Fills in an object of names and texts; what it does not name stays. Throws only for a value that is no text.
    pub fn set(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Record<string, string>")] part: &Object,
    ) -> Result<(), JsValue> {
        self.0.set(&form_of(&Object::entries(part))?)
    }

    /// Stops answering; what stands on the page stays.
    pub fn detach(&self) -> Result<(), JsValue> {
        self.0.detach()
    }
}

/// Makes a form answer; once a form, however often it is called.
#[wasm_bindgen]
pub fn attach(form: HtmlFormElement) -> Result<Desk, JsValue> {
    controller::attach(form).map(Desk)
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
