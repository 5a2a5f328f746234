//! What does only the browser know? The time, its zone, the page's signs, and what somebody has unfolded.

use crate::controller::Desk;
use crate::renderer::all;
use form::read::moment;
use form::text::joined;
use wasm_bindgen::prelude::*;
use web_sys::{HtmlFormElement, HtmlInputElement};

impl Desk {
    /// What only the browser knows: the time zone of each moment, and what somebody has unfolded.
    pub fn beside(&self) -> Vec<(String, String)> {
        let utc = minutes().to_string();
        let mut all_of_it = vec![("now".to_string(), local_now()), ("utc.now".to_string(), utc)];
        for field in all(&self.form, "input[type='datetime-local']") {
            let field = field.unchecked_ref::<HtmlInputElement>();
            let minutes = js_sys::Date::parse(&field.value()) / 60_000.0;
            if minutes.is_finite() {
                all_of_it.push((joined(&["utc.", &field.name()]), (minutes as i64).to_string()));
            }
        }
        for asked in all(&self.form, "details[data-ask][open]") {
            let name = asked.get_attribute("data-ask").unwrap_or_default();
            all_of_it.push((joined(&["ask.", &name]), "yes".into()));
        }
        all_of_it
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

/// What it shows now.
pub fn local_now() -> String {
    local(minutes())
}

/// The page's signs for decimals and groups, asked of the browser once.
pub fn signs(form: &HtmlFormElement) -> Vec<(String, String)> {
    let lang = form.closest("[lang]").ok().flatten().and_then(|e| e.get_attribute("lang"));
    let languages = js_sys::Array::from_iter(lang.map(JsValue::from));
    let format = js_sys::Intl::NumberFormat::new(&languages, &js_sys::Object::new());
    let text = |part: &JsValue, key: &str| js_sys::Reflect::get(part, &key.into()).ok()?.as_string();
    let parts = format.format_to_parts(1_234_567.5);
    let sign = |name: &str, kind: &str| {
        let part = parts.iter().find(|p| text(p, "type").as_deref() == Some(kind))?;
        Some((name.to_string(), text(&part, "value")?))
    };
    let mut signs: Vec<_> =
        [sign("sign.decimal", "decimal"), sign("sign.group", "group")].into_iter().flatten().collect();
    // Some languages leave four digits together.
    let four = format.format_to_parts(1_234.0);
    if !four.iter().any(|part| text(&part, "type").as_deref() == Some("group")) {
        signs.push(("sign.grouped".into(), "5".into()));
    }
    signs
}

/// Lets a promise fail without a word on the console.
pub fn quiet(promise: &JsValue) {
    let refused = Closure::once(|_: JsValue| ()).into_js_value();
    let _ = js_sys::Reflect::get(promise, &"catch".into())
        .and_then(|catch| catch.unchecked_ref::<js_sys::Function>().call1(promise, &refused));
}
