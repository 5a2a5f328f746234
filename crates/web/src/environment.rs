//! What does only the browser know? The time and its zone, the page's signs, its address, what may be done here.

use crate::elements::{attribute, name};
use form::Form;
use form::contract::Field;
use form::read::moment;
use form::read::number::Signs;
use form::utc_of;
use js_sys::{Function, Reflect};
use std::cell::Cell;
use wasm_bindgen::prelude::*;
use web_sys::{Document, Element, HtmlFormElement, HtmlInputElement, Window};

/// One page in one browser.
pub struct Environment {
    pub window: Window,
    pub document: Document,
    /// The page's signs for decimals and groups, in the form's own names for them.
    pub signs: Form,
}

impl Environment {
    /// Around a form.
    pub fn of(form: &HtmlFormElement) -> Result<Self, JsValue> {
        let document = form.owner_document().ok_or("no document")?;
        let window = document.default_view().ok_or("no window")?;
        Ok(Self { window, document, signs: signs(form) })
    }

    /// The page's signs, to read and write numbers by.
    pub fn number_signs(&self) -> Signs {
        self.signs.signs()
    }

    /// Is the page in a frame?
    pub fn is_framed(&self) -> bool {
        self.window.parent().ok().flatten().is_some_and(|parent| parent != self.window)
    }

    /// In a sandbox a served page has no origin of its own.
    pub fn is_sandboxed(&self) -> bool {
        self.window.origin() == "null" && self.is_served()
    }

    /// Has the page an address that others can open?
    pub fn is_served(&self) -> bool {
        self.window.location().protocol().is_ok_and(|protocol| protocol.starts_with("http"))
    }

    /// The page's own address, without what stands behind `#`.
    pub fn address(&self) -> Result<String, JsValue> {
        let href = self.window.location().href()?;
        Ok(href.split_once('#').map_or(href.as_str(), |(page, _)| page).into())
    }

    /// What has the focus.
    pub fn focused(&self) -> String {
        self.document.active_element().map(|at| name(&at)).unwrap_or_default()
    }

    /// Is there a clipboard? Only a page by https, from disk or of this machine has one.
    pub fn has_clipboard(&self) -> bool {
        Reflect::has(&self.window.navigator(), &"clipboard".into()).unwrap_or(false)
    }

    /// Puts a text on the clipboard, if there is one and it may.
    pub fn to_clipboard(&self, text: &str) {
        if self.has_clipboard() {
            // A browser may refuse; the text stands on the page as well.
            quiet(&self.window.navigator().clipboard().write_text(text).into());
        }
    }

    /// The time now, and of each moment among these fields: a zone is known to the browser alone.
    pub fn moments(&self, fields: &[Element]) -> Form {
        let mut all_of_it = Form::default();
        all_of_it.say(Field::Now.name(), &local(minutes()));
        all_of_it.say(&utc_of(Field::Now.name()), &minutes().to_string());
        for field in fields {
            let field = field.unchecked_ref::<HtmlInputElement>();
            let minutes = js_sys::Date::parse(&field.value()) / 60_000.0;
            if minutes.is_finite() {
                all_of_it.say(&utc_of(&field.name()), &(minutes as i64).to_string());
            }
        }
        all_of_it
    }
}

/// Something that will be done after a while.
#[derive(Default)]
pub struct Timer(Cell<i32>);

impl Timer {
    /// Does it after so many milliseconds; what was waiting is dropped.
    pub fn set(
        &self,
        window: &Window,
        ms: i32,
        act: impl FnOnce() -> Result<(), JsValue> + 'static,
    ) -> Result<(), JsValue> {
        self.stop(window);
        let act = once(move |_| act());
        self.0.set(window.set_timeout_with_callback_and_timeout_and_arguments_0(&act, ms)?);
        Ok(())
    }

    /// Drops what was waiting.
    pub fn stop(&self, window: &Window) {
        window.clear_timeout_with_handle(self.0.get());
    }
}

/// Minutes of elapsed time by this device's clock.
pub fn minutes() -> i64 {
    (js_sys::Date::now() / 60_000.0) as i64
}

/// What this place's clock shows then, as `datetime-local` has it.
pub fn local(minutes: i64) -> String {
    let then = js_sys::Date::new(&(minutes as f64 * 60_000.0).into());
    moment::write(minutes - then.get_timezone_offset() as i64)
}

/// The language round an element, as a formatter takes it.
pub fn language(element: &Element) -> js_sys::Array {
    let lang = element.closest("[lang]").ok().flatten().map(|element| attribute(&element, "lang"));
    js_sys::Array::from_iter(lang.map(JsValue::from))
}

/// The page's signs for decimals and groups, asked of the browser once.
fn signs(form: &HtmlFormElement) -> Form {
    let format = js_sys::Intl::NumberFormat::new(&language(form), &js_sys::Object::new());
    let text = |part: &JsValue, key: &str| Reflect::get(part, &key.into()).ok()?.as_string();
    let find = |number: f64, kind: &str| {
        let parts = format.format_to_parts(number);
        let part = parts.iter().find(|part| text(part, "type").as_deref() == Some(kind))?;
        text(&part, "value")
    };
    let mut signs = Form::default();
    for (name, kind) in [(Field::SignDecimal.name(), "decimal"), (Field::SignGroup.name(), "group")] {
        if let Some(sign) = find(1_234_567.5, kind) {
            signs.say(name, &sign);
        }
    }
    // Some languages leave four digits together.
    if find(1_234.0, "group").is_none() {
        signs.say(Field::SignGrouped.name(), "5");
    }
    signs
}

/// What a browser may call.
type Done = Result<(), JsValue>;

/// Something to be done once. What is never done holds nothing: it goes with the browser's next clearing up.
pub fn once(act: impl FnOnce(JsValue) -> Done + 'static) -> Function {
    // In a box: its wrapping is a copy of itself for every shape of what is done.
    let act: Box<dyn FnOnce(JsValue) -> Done> = Box::new(act);
    Closure::once(act).into_js_value().unchecked_into()
}

/// Something to be done each time, for as long as somebody may call it.
pub fn always(act: impl Fn(JsValue) -> Done + 'static) -> Function {
    Closure::<dyn Fn(JsValue) -> Done>::new(act).into_js_value().unchecked_into()
}

/// Calls a method of a promise: what is to be done with it once it is there, or has failed.
pub fn when(promise: &JsValue, method: &str, act: Function) -> Done {
    let method = Reflect::get(promise, &method.into())?;
    method.unchecked_ref::<Function>().call1(promise, &act).map(drop)
}

/// Lets a promise fail without a word on the console.
pub fn quiet(promise: &JsValue) {
    let _ = when(promise, "catch", once(|_| Ok(())));
}
