//! Where are jobs kept, which is in hand, and what can be put back? On this device, as far as it has a store.

use crate::elements::first;
use crate::environment::{Timer, minutes};
use crate::local_storage::Device;
use crate::pairs;
use form::Form;
use form::answer::{Answer, Line, Shown};
use form::contract::{Fact, Field, List, Output, RowFact, RowOutput};
use form::job_journal::{self, NotKept};
use form::text::joined;
use std::cell::{Cell, Ref, RefCell};
use wasm_bindgen::prelude::*;
use web_sys::{Element, HtmlFormElement, StorageEvent, Window};

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

/// The jobs of one form.
pub struct Jobs {
    store: Device,
    /// Does the page want them kept?
    pub keeps: bool,
    /// The one in hand, the number of its last write, and how it is kept.
    job: RefCell<String>,
    number: Cell<u64>,
    kept: Cell<Kept>,
    /// What was typed before it was cleared or replaced, and in which job.
    undo: RefCell<Option<(String, Form)>>,
    /// A rest after the last change, before it is kept.
    pub keeping: Timer,
}

impl Jobs {
    /// Of a form.
    pub fn of(form: &HtmlFormElement, window: &Window) -> Self {
        Self {
            store: Device::of(window, &form.id()),
            keeps: form.has_attribute("data-keep"),
            job: RefCell::default(),
            number: Cell::default(),
            kept: Cell::default(),
            undo: RefCell::default(),
            keeping: Timer::default(),
        }
    }

    /// Is there a store at all?
    pub fn has_store(&self) -> bool {
        self.store.is_there()
    }

    /// Has only the address what is typed?
    pub fn is_nowhere(&self) -> bool {
        self.kept.get() == Kept::Nowhere
    }

    /// The job in hand.
    pub fn job(&self) -> Ref<'_, String> {
        self.job.borrow()
    }

    /// How often it has been written.
    pub fn number(&self) -> u64 {
        self.number.get()
    }

    /// Begins a job of its own.
    pub fn begin(&self) {
        self.take_up(&(js_sys::Date::now() as u64).to_string());
        self.number.set(0);
    }

    /// Goes on with a job.
    pub fn go_on(&self, job: &str) {
        self.take_up(job);
        self.number.set(self.stored_number());
    }

    fn take_up(&self, job: &str) {
        if self.keeps {
            job_journal::take_up(&self.store, job);
        }
        *self.job.borrow_mut() = job.into();
        self.kept.set(Kept::NotYet);
    }

    fn stored_number(&self) -> u64 {
        job_journal::read(&self.store, &self.job()).map_or(0, |kept| kept.number)
    }

    /// The job that was in hand at the last visit.
    pub fn last(&self) -> Option<String> {
        job_journal::in_hand(&self.store).filter(|_| self.keeps)
    }

    /// A job as it was kept, if it was.
    pub fn read(&self, job: &str) -> Result<Option<Form>, JsValue> {
        job_journal::read(&self.store, job).map(|kept| pairs::of_text(&kept.form)).transpose()
    }

    /// Keeps what is typed, if there is anything to keep. Is it kept in another way than before?
    pub fn keep(&self, form: &Form) -> Result<Option<bool>, JsValue> {
        let (before, job, now) = (self.kept.get(), self.job(), minutes() as u64);
        // While a form is being attached no job is in hand yet.
        if !self.keeps || job.is_empty() || form.is_blank() && self.number.get() == 0 {
            return Ok(None);
        }
        let text = pairs::by_name(form)?;
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
        Ok(Some(kept != before))
    }

    /// Remembers what is typed, if anything is, to be put back.
    pub fn set_aside(&self, form: Form) {
        let job = self.job().clone();
        *self.undo.borrow_mut() = (!form.is_blank() && !job.is_empty()).then_some((job, form));
    }

    /// What stood here before.
    pub fn take_undo(&self) -> Option<(String, Form)> {
        self.undo.take()
    }

    /// Remembers a job to be put back, be it blank.
    pub fn remember(&self, job: String, form: Form) {
        *self.undo.borrow_mut() = Some((job, form));
    }

    /// Takes a kept job away.
    pub fn drop(&self, job: &str) {
        job_journal::drop(&self.store, job);
    }

    /// Another tab has written: is it this job, and newer?
    pub fn others_wrote(&self, event: &StorageEvent) -> bool {
        let Some(key) = event.key() else { return false };
        let ours = self.store.own(&key).is_some_and(|key| job_journal::is_of(key, &self.job()));
        let newer = ours && self.stored_number() > self.number.get();
        if newer {
            self.kept.set(Kept::Other);
        }
        newer
    }

    /// What is kept next is written over what the other tab has kept.
    pub fn keep_mine(&self) {
        self.number.set(self.stored_number().max(self.number.get()));
        self.kept.set(Kept::NotYet);
    }

    /// Says how the job is kept, whether one can be put back, and which others there are.
    pub fn tell(&self, answer: &mut Answer) {
        if self.undo.borrow().is_some() {
            answer.say(Fact::CanUndo);
        }
        match self.kept.get() {
            _ if !self.keeps => return,
            Kept::NotYet => {}
            Kept::Here(at) => {
                answer.say(Fact::KeptYes);
                answer.put(Output::KeptWhen, Shown::moment(at as i64));
            }
            Kept::Nowhere => answer.say(Fact::KeptNo),
            Kept::Other => answer.say(Fact::KeptOther),
        }
        let mut lines = Vec::new();
        for (job, kept) in job_journal::jobs(&self.store) {
            let own = *self.job() == job;
            let name = pairs::of_text(&kept.form).unwrap_or_default().text(Field::JobName.name()).to_string();
            let mut cells = vec![
                (RowOutput::JobsJob.into(), Shown::words(job)),
                (RowOutput::JobsSaved.into(), Shown::moment(kept.saved as i64)),
            ];
            if !name.is_empty() {
                cells.push((RowOutput::JobsCalled.into(), Shown::words(name)));
            }
            lines.push(Line {
                state: Some(if own { RowFact::JobOwn } else { RowFact::JobOther }.into()),
                cells,
            });
        }
        if lines.len() > 1 {
            answer.say(Fact::Jobs);
        }
        answer.rows.push((List::Jobs, lines));
    }
}

/// The job that the row with a button tells of.
pub fn job_of(button: &Element) -> Option<String> {
    let row = button.closest("[data-row]").ok()??;
    first(&row, &joined(&["output[name='", RowOutput::JobsJob.in_list(), "']"]))?.text_content()
}
