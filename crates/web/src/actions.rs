//! What does each button do, and which of them can?

use crate::controller::Desk;
use crate::embed::is_locked;
use crate::environment::{local_now, quiet};
use crate::jobs::{job_of, parts};
use crate::renderer::first;
use crate::views;
use form::answer::{Answer, Shown};
use form::text::joined;
use js_sys::Reflect;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Element, Event, HtmlElement, HtmlInputElement};

/// So long a page that does not wait for its printing keeps the answers ready for it.
const PRINTING_MS: i32 = 1_000;

impl Desk {
    /// A press somewhere in the form.
    pub fn clicked(self: &Rc<Self>, event: &Event, target: &Element) -> Result<(), JsValue> {
        if let Some(link) = target.closest("a[href^='#sw1&']")? {
            event.prevent_default();
            return self.open_as_new(&link.get_attribute("href").unwrap_or_default());
        }
        if let Some(link) = target.closest("a[href^='#']")? {
            views::reveal(&self.form, &link.get_attribute("href").unwrap_or_default())?;
        }
        if target.has_attribute("data-ticked") {
            event.prevent_default(); // Locked, and a tick knows no other way to be.
            return Ok(());
        }
        if target.closest("button:not([type]):not([data-act]), [type='submit']")?.is_some() {
            return self.submitted(event); // Before the browser does: a sandbox would only complain.
        }
        let Some(button) = target.closest("[data-act]")? else {
            return Ok(());
        };
        if button.get_attribute("type").as_deref() != Some("button") {
            event.prevent_default(); // It stands for Enter, and does what it says.
        }
        let value = button.get_attribute("value").unwrap_or_default();
        match button.get_attribute("data-act").unwrap_or_default().as_str() {
            "print" => {
                views::paper(&self.form, &button);
                self.exercise.on_paper(value == "answers");
                self.refresh()?;
                let printed = self.window.print();
                // A sandbox may have ignored it, and then nobody says that it is over.
                let desk = self.clone();
                self.later(&self.printing, PRINTING_MS, move || desk.printed_out())?;
                printed
            }
            "now" => {
                let field = first(&self.form, &joined(&["[name='", &value, "']"]));
                if let Some(field) = field.filter(|field| !is_locked(field)) {
                    field.unchecked_ref::<HtmlInputElement>().set_value(&local_now());
                }
                self.leave(&value);
                self.refresh()
            }
            "copy" => self.copy(&value),
            "back" => views::walk(&self.form, true),
            "next" => views::walk(&self.form, false),
            "clear" | "new" => self.begin(&self.blank()),
            "save" => self.give_file(),
            "link" => self.give_link(),
            "calendar" => self.give_calendar(),
            "csv" => self.give_table(),
            "take-theirs" => {
                let job = self.job.borrow().clone();
                self.open_job(&job)
            }
            "keep-mine" => self.keep_mine(),
            "open-job" => job_of(&button).map_or(Ok(()), |job| self.open_job(&job)),
            "drop-job" => job_of(&button).map_or(Ok(()), |job| self.drop_job(&job)),
            "undo" => self.put_back(),
            "check" => self.check(),
            "reveal" => self.reveal(),
            "answers" => self.answers(&value),
            "example" => self.open_as_new(&value),
            "open" => first(&self.form, "input[data-file]").map_or(Ok(()), |file| {
                file.unchecked_ref::<HtmlElement>().click();
                Ok(())
            }),
            "json" => self.give_answer(),
            "frame" => self.give_frame(),
            _ => Ok(()),
        }
    }

    /// Puts the text of the element of this id on the clipboard.
    fn copy(&self, id: &str) -> Result<(), JsValue> {
        if let Some(place) = first(&self.form, &joined(&["#", id])) {
            self.to_clipboard(&place.unchecked_ref::<HtmlElement>().inner_text());
        }
        Ok(())
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

    /// What this page can do here, and what came of the last file, link or print.
    pub fn abilities(&self, answer: &mut Answer) {
        if self.coded.get() {
            answer.say("can.code");
        }
        if answer.holds("schedule") && !answer.holds("fault") {
            answer.say("can.calendar");
        }
        if !self.said_of_file.get().is_empty() {
            answer.say(self.said_of_file.get());
            if self.said_of_file.get().ends_with(".given") {
                answer.say("boxed");
            }
        }
        if let Some((text, when)) = &*self.printed.borrow()
            && parts(&self.typed()).is_ok_and(|now| now != *text)
        {
            answer.say("print.old");
            answer.put("print.when", Shown::moment(*when));
        }
    }
}
