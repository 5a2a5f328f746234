//! What does each button do?

use super::Controller;
use crate::elements::{attribute, fill, name};
use crate::environment::{local, minutes};
use crate::jobs::job_of;
use crate::lock::is_locked;
use crate::pairs;
use crate::transfer::{self, FileOut};
use crate::views;
use form::contract::codes::Sheet;
use form::contract::{Act, Fact};
use form::export::{frame, link};
use form::text::joined;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Element, FileList, HtmlElement};

/// So long a page that does not wait for its printing keeps the answers ready for it.
const PRINTING_MS: i32 = 1_000;

impl Controller {
    /// Does what a button is for, and shows what has come of it.
    pub(super) fn act(self: &Rc<Self>, act: Act, button: &Element) -> Result<(), JsValue> {
        let (value, form) = (attribute(button, "value"), &self.fields.form);
        match act {
            Act::Print => {
                views::paper(form, &value);
                self.exercise.print(value == Sheet::Answers.code());
                self.refresh()?;
                let printed = self.environment.window.print();
                // A sandbox may have ignored it, and then nobody says that it is over.
                let controller = self.clone();
                let over = move || controller.printed_out();
                self.exercise.printing.set(&self.environment.window, PRINTING_MS, over)?;
                return printed;
            }
            Act::Back | Act::Next => return views::walk(form, act == Act::Back),
            Act::Open => {
                if let Some(file) = self.fields.parts.first("input[data-file]") {
                    file.unchecked_ref::<HtmlElement>().click();
                }
                return Ok(());
            }
            Act::Copy => {
                if let Some(place) = self.fields.parts.first(&joined(&["#", &value])) {
                    self.environment.to_clipboard(&place.unchecked_ref::<HtmlElement>().inner_text());
                }
                return Ok(());
            }
            Act::Clear | Act::New => {
                let blank = self.embed.options().blank();
                return self.begin(&blank);
            }
            Act::Example => return self.open_as_new(&value),
            Act::TakeTheirs => {
                let job = self.jobs.job().clone();
                return self.open_job(&job);
            }
            Act::OpenJob => return job_of(button).map_or(Ok(()), |job| self.open_job(&job)),
            Act::DropJob => return job_of(button).map_or(Ok(()), |job| self.drop_job(&job)),
            Act::Undo => return self.undo(),
            Act::KeepMine => {
                self.jobs.keep_mine();
                return self.keep_now();
            }
            Act::Now => {
                let field = self.fields.parts.first(&joined(&["[name='", &value, "']"]));
                if let Some(field) = field.filter(|field| !is_locked(field)) {
                    fill(&field, &local(minutes()))?;
                }
                self.fields.touch(&value);
            }
            Act::Check => self.exercise.check(&self.fields),
            Act::Reveal => self.exercise.reveal(),
            Act::Answers => self.exercise.show_sheet(&value),
            Act::Expand | Act::Collapse => {
                self.fields.parts.open(&value, act == Act::Expand)?;
                self.renderer.forget();
            }
            Act::Link => self.transfer.give_link(&self.link()?, &self.fields, &self.environment)?,
            Act::Frame => self.give_frame()?,
            Act::Save => self.hand_out(&transfer::job_file(&self.typed())?)?,
            Act::Json => self.hand_out(&transfer::answer_file(&self.answer.borrow())?)?,
            Act::Csv => self.hand_out(&transfer::spreadsheet(
                &self.answer.borrow(),
                &self.typed(),
                &self.fields,
                self.environment.number_signs().decimal,
            ))?,
            Act::Calendar => self.hand_out(&self.calendar()?)?,
        }
        self.refresh()
    }

    /// Hands a file out; a sandbox allows none, so there it is shown.
    fn hand_out(&self, file: &FileOut) -> Result<(), JsValue> {
        match self.embed.may("download", &self.environment) {
            true => transfer::hand_out(file, &self.environment),
            false => self.transfer.show(file, &self.fields),
        }
    }

    /// The page's own address with what a link has of the form.
    pub(super) fn link(&self) -> Result<String, JsValue> {
        let given = link::of(self.typed(), &self.fields.defaults.borrow());
        pairs::link(&self.environment.address()?, &given)
    }

    /// The steps ahead, each with the link to go on from; the form alone where there is no address.
    fn calendar(&self) -> Result<FileOut, JsValue> {
        let link = self.link()?;
        let link = match self.environment.is_served() {
            true => link.as_str(),
            false => link.split_once('#').map_or("", |(_, form)| form),
        };
        let title = |step: &_| self.renderer.sentence("template[data-calendar]", step);
        Ok(transfer::calendar(&self.answer.borrow(), title, link, &self.jobs.job(), self.jobs.number()))
    }

    /// Shows the text of a frame with this form, under the options chosen beside the button.
    fn give_frame(&self) -> Result<(), JsValue> {
        let typed = self.typed();
        let given = link::of(typed.clone(), &self.fields.defaults.borrow());
        let questions = self.fields.parts.all("input[name]:not([type=hidden]), select[name]");
        let form = link::of_a_frame(given, &typed, questions.iter().map(name));
        let address = pairs::link(&self.environment.address()?, &form)?;
        let frame = frame::frame(&self.environment.document.title(), &address);
        self.transfer.give_text(Fact::FrameGiven, &frame, &self.fields, &self.environment)
    }

    /// Opens a file that somebody chose or let fall here.
    pub(super) fn take_file(self: &Rc<Self>, files: Option<FileList>) -> Result<(), JsValue> {
        let Some(file) = files.and_then(|files| files.get(0)) else { return Ok(()) };
        let controller = self.clone();
        transfer::read(&file, move |text| match controller.transfer.take(text) {
            Some(form) => controller.begin(&form),
            None => controller.refresh(),
        })
    }
}
