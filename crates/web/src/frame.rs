//! Which text puts this page into another one?

use crate::controller::{Desk, LINK};
use crate::embed::TERMS;
use crate::jobs::parts;
use crate::renderer::all;
use form::text::joined;
use std::rc::Rc;
use wasm_bindgen::prelude::*;

impl Desk {
    /// Shows the text of a frame with this form, under the terms chosen beside the button.
    pub fn give_frame(self: &Rc<Self>) -> Result<(), JsValue> {
        let typed = self.typed();
        let mut form = self.given()?;
        form.0.retain(|(name, _)| !TERMS.contains(&name.as_str()));
        let mut lock = String::new();
        if typed.text("give.lock") == "yes" {
            for name in self.filled() {
                lock = joined(&[&lock, if lock.is_empty() { "" } else { "," }, &name]);
            }
        }
        let terms = [
            ("view", typed.text("view")),
            ("lock", &lock),
            ("ask", typed.text("give.ask")),
            ("only", typed.text("give.only")),
            ("can", "print,download"),
        ];
        form.0.extend(terms.map(|(name, text)| (name.to_string(), text.to_string())));
        let title = in_attribute(&self.window.document().ok_or("no document")?.title());
        let address = in_attribute(&joined(&[&self.page()?, LINK, &parts(&form)?]));
        let text = joined(&[
            "<iframe title=\"",
            &title,
            "\" src=\"",
            &address,
            "\" width=\"100%\" height=\"640\" loading=\"lazy\" sandbox=\"allow-scripts allow-forms allow-downloads \
             allow-modals allow-popups\"></iframe>",
        ]);
        self.said_of_file.set("frame.given");
        self.to_clipboard(&text);
        self.show_text(&text);
        self.refresh()
    }

    /// The questions that are seen here and answered.
    fn filled(&self) -> Vec<String> {
        let typed = self.typed();
        let mut names: Vec<String> = Vec::new();
        for field in all(&self.form, "input[name]:not([type=hidden]), select[name]") {
            let name = field.get_attribute("name").unwrap_or_default();
            let own = !form::contract::names::is_field(&name)
                || matches!(name.as_str(), "view" | "at" | "paper" | "show")
                || ["give.", "link.", "job.", "try."].iter().any(|begin| name.starts_with(begin));
            if !own && !typed.text(&name).is_empty() && !names.contains(&name) {
                names.push(name);
            }
        }
        names
    }
}

/// A text as HTML has it between quotation marks.
fn in_attribute(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '"' => out.push_str("&quot;"),
            c => out.push(c),
        }
    }
    out
}
