//! Where does a desk keep its jobs? On this device, and in the page's own address where that can't be.

use crate::controller::{Desk, LINK};
use crate::embed::{Terms, is_origin};
use crate::environment::minutes;
use crate::pairs;
use crate::renderer::all;
use crate::views;
use form::Form;
use form::answer::{Answer, Line, Shown};
use form::job_journal::{self, NotKept};
use form::relocalize;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Element, StorageEvent};

/// A rest after the last change, before it is kept.
const REST_MS: i32 = 300;

/// How the job in hand is kept.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Kept {
    /// Nothing to keep yet.
    #[default]
    NotYet,
    /// On this device, at this minute.
    Here(u64),
    /// The store fails or is full: only the address has it.
    Nowhere,
    /// Another tab has kept a newer one.
    Other,
}

impl Desk {
    /// Does the page want its jobs kept?
    pub fn keeps(&self) -> bool {
        self.form.has_attribute("data-keep")
    }

    /// Begins a job of its own.
    pub fn new_job(&self) {
        self.take_up((js_sys::Date::now() as u64).to_string());
        self.number.set(0);
        self.kept.set(Kept::NotYet);
        self.strange.borrow_mut().clear();
    }

    fn take_up(&self, job: String) {
        if self.keeps() {
            job_journal::take_up(&self.store, &job);
        }
        *self.job.borrow_mut() = job;
    }

    /// Goes on with the job that was in hand.
    pub fn open_last(self: &Rc<Self>) -> Result<(), JsValue> {
        match job_journal::in_hand(&self.store).filter(|_| self.keeps()) {
            Some(job) => self.open_job(&job),
            None => {
                self.new_job();
                Ok(())
            }
        }
    }

    /// Opens the link that the page itself was opened with, if it is one, as a job of its own.
    pub fn open_address(self: &Rc<Self>) -> Result<(), JsValue> {
        let link = self.window.location().hash()?;
        if link.starts_with(LINK) {
            self.open_as_new(&link)?;
        }
        Ok(())
    }

    /// Opens a link as a job of its own, and keeps it at once: the address need not hold it then.
    pub fn open_as_new(self: &Rc<Self>, link: &str) -> Result<(), JsValue> {
        let parts = link.strip_prefix(LINK).unwrap_or_default();
        self.at_once(|| {
            self.begin(&form_of(parts)?)?;
            self.keep_now()
        })
    }

    /// Begins a job of its own with this form; what stood here can be put back.
    pub fn begin(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        self.set_aside()?;
        self.new_job();
        self.left.borrow_mut().clear();
        self.put(form)
    }

    /// The units that the page has settled.
    fn settled(&self) -> Vec<(String, String)> {
        let unit = |field: Element| {
            Some((field.get_attribute("name")?, field.get_attribute("value")?))
                .filter(|(name, _)| name.ends_with(".unit"))
        };
        all(&self.form, "input[type=hidden][name]").into_iter().filter_map(unit).collect()
    }

    /// Shows nothing but this form, under the terms that came with it.
    fn put(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        let mut form = relocalize::here(form, Form(self.signs.clone()).signs(), &self.settled());
        self.agree(Terms::of(&mut form, is_origin))?;
        views::reset(&self.form);
        self.set(&form)
    }

    /// Keeps what is typed, and remembers it to be put back.
    fn set_aside(self: &Rc<Self>) -> Result<(), JsValue> {
        self.keep_now()?;
        let (job, form) = (self.job.borrow().clone(), self.typed());
        *self.before.borrow_mut() = (!form.is_blank()).then_some((job, form));
        Ok(())
    }

    /// Opens a kept job; what stood here can be put back.
    pub fn open_job(self: &Rc<Self>, job: &str) -> Result<(), JsValue> {
        self.set_aside()?;
        let kept = job_journal::read(&self.store, job);
        self.show_job(job, &form_of(kept.as_ref().map_or("", |kept| &kept.form))?)
    }

    /// Puts back what stood here before; pressed twice it undoes itself, so what is typed now is not lost either.
    pub fn put_back(self: &Rc<Self>) -> Result<(), JsValue> {
        let Some((job, form)) = self.before.borrow_mut().take() else { return Ok(()) };
        self.keep_now()?;
        *self.before.borrow_mut() = Some((self.job.borrow().clone(), self.typed()));
        self.show_job(&job, &form)
    }

    /// Takes up a job, and shows this form of it.
    fn show_job(self: &Rc<Self>, job: &str, form: &Form) -> Result<(), JsValue> {
        self.new_job();
        self.take_up(job.into());
        self.number.set(job_journal::read(&self.store, job).map_or(0, |kept| kept.number));
        self.put(form)
    }

    /// Takes a kept job away; it can be put back.
    pub fn drop_job(self: &Rc<Self>, job: &str) -> Result<(), JsValue> {
        let Some(kept) = job_journal::read(&self.store, job) else { return self.refresh() };
        let form = form_of(&kept.form)?;
        if *self.job.borrow() == job {
            self.new_job();
            self.put(&self.blank())?;
        }
        job_journal::drop(&self.store, job);
        *self.before.borrow_mut() = Some((job.into(), form));
        self.refresh()
    }

    /// Keeps what is typed, after a rest.
    pub fn keep_soon(self: &Rc<Self>) -> Result<(), JsValue> {
        if !self.keeps() {
            return Ok(());
        }
        if self.kept.get() == Kept::Nowhere {
            return self.keep_now(); // The address is quick, and at the last moment too late.
        }
        let desk = self.clone();
        self.later(&self.keeping, REST_MS, move || desk.keep_now())
    }

    /// Keeps what is typed.
    pub fn keep_now(self: &Rc<Self>) -> Result<(), JsValue> {
        let form = self.typed();
        if !self.keeps() || form.is_blank() && self.number.get() == 0 {
            return Ok(());
        }
        let text = parts(&form)?;
        let (before, job, now) = (self.kept.get(), self.job.borrow().clone(), minutes() as u64);
        let known = self.number.get();
        let kept = match job_journal::write(&self.store, &job, &text, now, known) {
            // Nothing new: as it was kept last.
            Ok(number) if number == known => {
                job_journal::read(&self.store, &job).map_or(before, |kept| Kept::Here(kept.saved))
            }
            Ok(number) => {
                self.number.set(number);
                Kept::Here(now)
            }
            Err(NotKept::Newer) => Kept::Other,
            Err(NotKept::NoStore) => Kept::Nowhere,
        };
        self.kept.set(kept);
        let address = match kept {
            Kept::Nowhere => parts(&Form(form.0.into_iter().chain(self.of_the_place()).collect()))?,
            _ => String::new(),
        };
        self.address(&address)?;
        if kept == before { Ok(()) } else { self.refresh() }
    }

    /// Another tab has written: is it this job, and newer?
    pub fn others_wrote(self: &Rc<Self>, event: &StorageEvent) -> Result<(), JsValue> {
        let job = self.job.borrow().clone();
        let newer =
            || job_journal::read(&self.store, &job).is_some_and(|kept| kept.number > self.number.get());
        if event
            .key()
            .is_some_and(|key| self.store.own(&key).is_some_and(|key| job_journal::is_of(key, &job)))
            && newer()
        {
            self.kept.set(Kept::Other);
            return self.refresh();
        }
        Ok(())
    }

    /// Writes over what the other tab has kept.
    pub fn keep_mine(self: &Rc<Self>) -> Result<(), JsValue> {
        let theirs = job_journal::read(&self.store, &self.job.borrow()).map_or(0, |kept| kept.number);
        self.number.set(theirs.max(self.number.get()));
        self.kept.set(Kept::NotYet);
        self.keep_now()
    }

    /// Puts the form into the page's address, or takes it out again. A page that may not touch its address just
    /// does not have it there.
    fn address(&self, text: &str) -> Result<(), JsValue> {
        let there = self.window.location().hash()?;
        let address = match text {
            "" if there.starts_with(LINK) => "#".into(),
            "" => return Ok(()),
            text => form::text::joined(&[LINK, text]),
        };
        let _ = self.window.history()?.replace_state_with_url(&JsValue::TRUE, "", Some(&address));
        Ok(())
    }

    /// Says how the job is kept, and which others there are.
    pub fn tell(&self, answer: &mut Answer) {
        match self.kept.get() {
            _ if !self.keeps() => return,
            Kept::NotYet => {}
            Kept::Here(at) => {
                answer.say("kept.yes");
                answer.put("kept.when", Shown::moment(at as i64));
            }
            Kept::Nowhere => answer.say("kept.no"),
            Kept::Other => answer.say("kept.other"),
        }
        let mut lines = Vec::new();
        for (job, kept) in job_journal::jobs(&self.store) {
            let own = *self.job.borrow() == job;
            let name = form_of(&kept.form).unwrap_or_default().text("job.name").to_string();
            let mut cells =
                vec![("job".into(), Shown::words(job)), ("saved".into(), Shown::moment(kept.saved as i64))];
            if !name.is_empty() {
                cells.push(("called".into(), Shown::words(name)));
            }
            lines.push(Line { state: if own { "job.own" } else { "job.other" }, cells });
        }
        if lines.len() > 1 {
            answer.say("jobs");
        }
        answer.rows.push(("jobs", lines));
    }
}

/// What a form holds, as a link has it.
pub fn parts(form: &Form) -> Result<String, JsValue> {
    let parts = web_sys::UrlSearchParams::new()?;
    for (name, text) in form.0.iter().filter(|(_, text)| !text.is_empty()) {
        parts.append(name, text);
    }
    Ok(parts.to_string().into())
}

/// The form that such a text holds.
pub fn form_of(parts: &str) -> Result<Form, JsValue> {
    pairs::form_of(&web_sys::UrlSearchParams::new_with_str(parts)?.into())
}

/// The job that the row with a button tells of.
pub fn job_of(button: &Element) -> Option<String> {
    let row = button.closest("[data-row]").ok()??;
    crate::renderer::first(&row, "output[name='job']")?.text_content()
}
