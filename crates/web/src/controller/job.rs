//! How does a job come into the form, and how is it kept?

use super::Controller;
use crate::embed::is_origin;
use crate::pairs::{self, LINK};
use crate::views;
use form::Form;
use form::embed_options::EmbedOptions;
use form::relocalize;
use form::text::joined;
use std::rc::Rc;
use wasm_bindgen::prelude::*;

/// A rest after the last change, before it is kept.
const REST_MS: i32 = 300;

impl Controller {
    /// Begins a job of its own.
    pub(super) fn new_job(&self) {
        self.jobs.begin();
        self.fields.forget();
    }

    /// Opens the link in the page's own address, as a job of its own. Is there one?
    pub(super) fn open_address(self: &Rc<Self>) -> Result<bool, JsValue> {
        let link = self.environment.window.location().hash()?;
        let is_link = link.starts_with(LINK);
        if is_link {
            self.open_as_new(&link)?;
        }
        Ok(is_link)
    }

    /// Opens a link as a job of its own, and keeps it at once: the address need not hold it then.
    pub(super) fn open_as_new(self: &Rc<Self>, link: &str) -> Result<(), JsValue> {
        let form = pairs::of_text(link.strip_prefix(LINK).unwrap_or_default())?;
        self.at_once(|| {
            self.begin(&form)?;
            self.keep_now()
        })
    }

    /// Begins a job of its own with this form; what stood here can be put back.
    pub(super) fn begin(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        self.set_aside()?;
        self.new_job();
        self.fields.untouch();
        self.put(form)
    }

    /// Keeps what is typed, and remembers it to be put back.
    fn set_aside(self: &Rc<Self>) -> Result<(), JsValue> {
        self.keep_now()?;
        self.jobs.set_aside(self.typed());
        Ok(())
    }

    /// Opens a kept job; what stood here can be put back.
    pub(super) fn open_job(self: &Rc<Self>, job: &str) -> Result<(), JsValue> {
        self.set_aside()?;
        let form = self.jobs.read(job)?.unwrap_or_default();
        self.show_job(job, &form)
    }

    /// Puts back what stood here before; pressed twice it undoes itself, so what is typed now is not lost either.
    pub(super) fn undo(self: &Rc<Self>) -> Result<(), JsValue> {
        let Some((job, form)) = self.jobs.take_undo() else { return Ok(()) };
        self.keep_now()?;
        self.jobs.remember(self.jobs.job().clone(), self.typed());
        self.show_job(&job, &form)
    }

    /// Takes up a job, and shows this form of it.
    fn show_job(self: &Rc<Self>, job: &str, form: &Form) -> Result<(), JsValue> {
        self.jobs.go_on(job);
        self.fields.forget();
        self.put(form)
    }

    /// Takes a kept job away; it can be put back.
    pub(super) fn drop_job(self: &Rc<Self>, job: &str) -> Result<(), JsValue> {
        let Some(form) = self.jobs.read(job)? else { return self.refresh() };
        if *self.jobs.job() == job {
            self.new_job();
            let blank = self.embed.options().blank();
            self.put(&blank)?;
        }
        self.jobs.drop(job);
        self.jobs.remember(job.into(), form);
        self.refresh()
    }

    /// Shows nothing but this form, under the options that came with it.
    fn put(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        let settled = self.fields.settled_units();
        let mut form = relocalize::here(form, self.environment.number_signs(), &settled);
        self.renderer.forget();
        self.embed.agree(EmbedOptions::take(&mut form, is_origin), &self.fields);
        self.exercise.begin();
        let host = self.embed.options().tell.clone();
        self.publisher.greet(&host, &self.environment)?;
        self.lock(self.exercise.is_numbered(&self.fields));
        views::reset(&self.fields.form, &self.fields.parts);
        self.set(&form)
    }

    /// Keeps what is typed, after a rest.
    pub(super) fn keep_soon(self: &Rc<Self>) -> Result<(), JsValue> {
        if !self.jobs.keeps {
            return Ok(());
        }
        if self.jobs.is_nowhere() {
            return self.keep_now(); // The address is quick, and at the last moment too late.
        }
        let controller = self.clone();
        self.jobs.keeping.set(&self.environment.window, REST_MS, move || controller.keep_now())
    }

    /// Keeps what is typed: in the page's address too, where nothing else has it.
    pub(super) fn keep_now(self: &Rc<Self>) -> Result<(), JsValue> {
        let mut form = self.typed();
        let Some(changed) = self.jobs.keep(&form)? else { return Ok(()) };
        let mut text = String::new();
        if self.jobs.is_nowhere() {
            form.append(self.embed.options().of_the_place());
            text = pairs::to_text(&form)?;
        }
        self.address(&text)?;
        if changed { self.refresh() } else { Ok(()) }
    }

    /// Puts the form into the page's address, or takes it out again. A page that may not touch its address just
    /// does not have it there.
    fn address(&self, text: &str) -> Result<(), JsValue> {
        let window = &self.environment.window;
        let address = match text {
            "" if window.location().hash()?.starts_with(LINK) => "#".into(),
            "" => return Ok(()),
            text => joined(&[LINK, text]),
        };
        let _ = window.history()?.replace_state_with_url(&JsValue::TRUE, "", Some(&address));
        Ok(())
    }
}
