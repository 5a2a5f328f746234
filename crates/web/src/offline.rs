//! How is a served page found again without its server?

use crate::elements::{attribute, set_attribute};
use crate::environment::{Environment, quiet};
use js_sys::{Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use web_sys::{RegistrationOptions, Window};

/// Who may vouch for a script's address under the page's policy: this name, once.
const VOUCHER: &str = "saltwright";

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(thread_local_v2, js_name = trustedTypes)]
    static TRUST: Option<Trust>;
    type Trust;
    #[wasm_bindgen(method, catch, js_name = createPolicy)]
    fn voucher(this: &Trust, name: &str, rules: &Object) -> Result<Voucher, JsValue>;
    type Voucher;
    #[wasm_bindgen(method, catch, js_name = createScriptURL)]
    fn vouch(this: &Voucher, address: &JsValue) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(js_namespace = ["navigator", "serviceWorker"])]
    fn register(address: &JsValue, options: &RegistrationOptions) -> Promise;
}

/// Lets a served page be found again without its server; nothing of it for a page from disk or in a frame.
pub fn serve(environment: &Environment) -> Result<(), JsValue> {
    let (window, document) = (&environment.window, &environment.document);
    let served = environment.is_served() && !environment.is_framed();
    let Some(worker) = document.query_selector("[data-worker]")?.filter(|_| served) else { return Ok(()) };
    if let Some(head) = document.query_selector("head")? {
        let link = document.create_element("link")?;
        set_attribute(&link, "rel", "manifest");
        set_attribute(&link, "href", &attribute(&worker, "data-manifest"));
        head.append_child(&link)?;
    }
    if Reflect::has(&window.navigator(), &"serviceWorker".into())? {
        let address = vouched(window, attribute(&worker, "data-worker").into())?;
        // For this page alone: the folder may hold others.
        let own = RegistrationOptions::new();
        own.set_scope(&window.location().pathname()?);
        quiet(&register(&address, &own));
    }
    Ok(())
}

/// The address as a browser with Trusted Types takes it; as it is where there are none.
fn vouched(window: &Window, address: JsValue) -> Result<JsValue, JsValue> {
    TRUST.with(|trust| {
        let Some(trust) = trust else { return Ok(address) };
        let rules = Object::new();
        // `String` gives back what it is given: the address is the page's own.
        Reflect::set(&rules, &"createScriptURL".into(), &Reflect::get(window, &"String".into())?)?;
        trust.voucher(VOUCHER, &rules)?.vouch(&address)
    })
}
