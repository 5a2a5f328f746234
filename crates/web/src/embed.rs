//! On what terms does a page stand where it is embedded, and what may it do there?

use crate::elements::{FIELDS, name};
use crate::environment::Environment;
use crate::fields::Fields;
use crate::lock::{HELD, hold};
use crate::views;
use form::Form;
use form::answer::Answer;
use form::contract::codes::View;
use form::contract::{Fact, Field};
use form::embed_options::{EmbedOptions, listed};
use std::cell::{Ref, RefCell};
use wasm_bindgen::prelude::*;

/// The options under which a form stands.
#[derive(Default)]
pub struct Embed {
    options: RefCell<EmbedOptions>,
}

impl Embed {
    /// The options.
    pub fn options(&self) -> Ref<'_, EmbedOptions> {
        self.options.borrow()
    }

    /// Puts the form under the options that came with another one.
    pub fn agree(&self, mut options: EmbedOptions, fields: &Fields) {
        fields.parts.take_in();
        // Who may hear, and what a sandbox allows, is as it was where another job comes into the same place.
        let before = self.options.take();
        for (new, old) in [(&mut options.tell, before.tell), (&mut options.can, before.can)] {
            if new.is_empty() {
                *new = old;
            }
        }
        *self.options.borrow_mut() = options;
    }

    /// May the page do this here? A sandbox lets it do what its author says in the link, and no more.
    pub fn may(&self, what: &str, environment: &Environment) -> bool {
        !environment.is_sandboxed() || listed(&self.options().can, what)
    }

    /// Says on what terms the form stands, and whether jobs are kept here.
    pub fn tell(&self, form: &Form, environment: &Environment, keeps: bool, answer: &mut Answer) {
        let view = form.text(Field::View.name());
        View::ALL.iter().filter(|one| one.code() == view).for_each(|view| answer.say(*view));
        let options = self.options();
        let framed = environment.is_framed();
        for (state, holds) in [
            (Fact::Framed, framed),
            (Fact::Locked, !options.locked.0.is_empty() || !form.text(Field::Variant.name()).is_empty()),
            (Fact::Only, !options.only.is_empty()),
            (Fact::CanPrint, self.may("print", environment)),
            (Fact::CanDownload, self.may("download", environment)),
            (Fact::CanKeep, keeps),
            (Fact::CanCopy, environment.has_clipboard() && (!framed || listed(&options.can, "copy"))),
        ] {
            if holds {
                answer.say(state);
            }
        }
    }

    /// Hides the parts that the link leaves out.
    pub fn leave_out(&self, fields: &Fields) -> Result<(), JsValue> {
        let only = &self.options().only;
        if only.is_empty() {
            return Ok(());
        }
        fields.parts.leave_out(only)?;
        views::leave_out(&fields.form, only)
    }

    /// Locks what the link and the number of the exercise have settled; what they no longer settle is free again.
    pub fn lock(&self, fields: &Fields, numbered: bool) {
        let options = self.options();
        if !numbered && options.locked.0.is_empty() && fields.parts.first(HELD).is_none() {
            return;
        }
        for field in &fields.parts.all(FIELDS) {
            hold(field, options.locks(&name(field)) || numbered && field.has_attribute("data-range"));
        }
    }
}

/// Is this the whole of an origin, such as `https://host`?
pub fn is_origin(text: &str) -> bool {
    web_sys::Url::new(text).is_ok_and(|url| url.origin() == text)
}
