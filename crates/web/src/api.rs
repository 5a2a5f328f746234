//! What can a script call? `answer`, `attach`, `edition`, in plain objects.

use crate::controller;
use crate::pairs::{of_object, plain};
use form::contract::CONTRACT;
use js_sys::Object;
use serde::Serialize;
use std::rc::Rc;
use tsify::Tsify;
use wasm_bindgen::prelude::*;
use web_sys::HtmlFormElement;

/// Works out the answer to a plain object of names and texts. Touches no page. Throws only for a value
/// that is no text.
#[wasm_bindgen(js_name = answer, unchecked_return_type = "Answer")]
pub fn answer_object(
    #[wasm_bindgen(unchecked_param_type = "Record<string, string>")] form: &Object,
) -> Result<JsValue, JsValue> {
    plain(&form::answer(&of_object(form)?))
}

/// A form that answers.
#[wasm_bindgen]
pub struct Controller(Rc<controller::Controller>);

#[wasm_bindgen]
impl Controller {
    /// The form as typed: an object of names and texts, those of closed parts too.
    #[wasm_bindgen(unchecked_return_type = "Record<string, string>")]
    pub fn form(&self) -> Result<JsValue, JsValue> {
        plain(&self.0.typed())
    }

    /// Fills in an object of names and texts; what it does not name stays. Throws only for a value that is no text.
    pub fn set(
        &self,
        #[wasm_bindgen(unchecked_param_type = "Record<string, string>")] part: &Object,
    ) -> Result<(), JsValue> {
        self.0.set(&of_object(part)?)
    }

    /// Stops answering; what stands on the page stays.
    pub fn detach(&self) -> Result<(), JsValue> {
        self.0.detach()
    }
}

/// Makes a form answer; once a form, however often it is called.
#[wasm_bindgen]
pub fn attach(form: HtmlFormElement) -> Result<Controller, JsValue> {
    controller::attach(form).map(Controller)
}

/// Which build this is.
#[derive(Serialize, Tsify)]
pub struct Edition {
    /// The package's name.
    name: &'static str,
    /// The package's version.
    version: &'static str,
    /// The contract between form and code; the form says it as `data-saltwright`.
    contract: u32,
}

/// Name, version and contract of this build.
#[wasm_bindgen(unchecked_return_type = "Edition")]
pub fn edition() -> Result<JsValue, JsValue> {
    plain(&Edition { name: "saltwright", version: env!("CARGO_PKG_VERSION"), contract: CONTRACT })
}
