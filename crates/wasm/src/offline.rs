//! How is a served page found again without its server?

use crate::beside::quiet;
use wasm_bindgen::prelude::*;
use web_sys::{RegistrationOptions, Window};

/// Lets a served page be found again without its server; nothing of it for a page from disk or in a frame.
pub fn serve(window: &Window) -> Result<(), JsValue> {
    let document = window.document().ok_or("no document")?;
    let served =
        window.location().protocol()?.starts_with("http") && window.parent()?.as_ref() == Some(window);
    let Some(worker) = document.query_selector("[data-worker]")?.filter(|_| served) else { return Ok(()) };
    if let Some(head) = document.query_selector("head")? {
        let link = document.create_element("link")?;
        link.set_attribute("rel", "manifest")?;
        link.set_attribute("href", &worker.get_attribute("data-manifest").unwrap_or_default())?;
        head.append_child(&link)?;
    }
    if js_sys::Reflect::has(&window.navigator(), &"serviceWorker".into())? {
        let address = worker.get_attribute("data-worker").unwrap_or_default();
        // For this page alone: the folder may hold others.
        let own = RegistrationOptions::new();
        own.set_scope(&window.location().pathname()?);
        quiet(&window.navigator().service_worker().register_with_options(&address, &own).into());
    }
    Ok(())
}
