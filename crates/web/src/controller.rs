//! Who listens to the page? One desk a form: what was typed, left, cleared, linked and said.

use crate::aria;
use crate::embed::{TERMS, Terms, is_locked};
use crate::environment::signs;
use crate::exercise::Exercise;
use crate::jobs::Kept;
use crate::local_storage::Device;
use crate::offline;
use crate::page_lint;
use crate::pairs;
use crate::renderer::{Pen, all, first};
use crate::views;
use form::Form;
use form::answer;
use form::answer::Answer;
use form::contract::fields::LINES;
use form::relocalize::hangs_on_signs;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{
    AbortController, AddEventListenerOptions, Element, Event, FocusEvent, HtmlElement, HtmlFormElement,
    HtmlInputElement, Window,
};

/// From leaving a field to showing what is wrong with it: time for a press to end.
const LEAVING_MS: i32 = 250;
/// How a link to a filled form begins.
pub const LINK: &str = "#sw1&";
/// What is said of an answer to who hears the page.
pub const SENTENCE: &str = "template[data-say]";

thread_local! {
    static DESKS: RefCell<Vec<Rc<Desk>>> = const { RefCell::new(Vec::new()) };
    /// So many forms have been attached; each has its own number.
    static COUNT: Cell<usize> = const { Cell::new(0) };
}

/// One form and what has to be remembered about it.
pub struct Desk {
    pub form: HtmlFormElement,
    pub window: Window,
    pub pen: Pen,
    /// The page's signs, in the form's own names for them.
    pub signs: Vec<(String, String)>,
    /// The device's own store, which job is in hand, the number of its last write, and how it is kept.
    pub store: Device,
    pub job: RefCell<String>,
    pub number: Cell<u64>,
    pub kept: Cell<Kept>,
    pub keeping: Cell<i32>,
    /// Under which terms a link has put the form here; how far an exercise has got.
    pub terms: RefCell<Terms>,
    pub exercise: Exercise,
    /// What was told last, and is something about to be told?
    pub told: RefCell<Answer>,
    pub telling: Cell<bool>,
    /// Is much about to be done, and to be shown at its end?
    pub held: Cell<bool>,
    /// Has a host been told that the form is there?
    pub hosted: Cell<bool>,
    /// Ends all listening.
    ending: AbortController,
    /// What the page itself begins with.
    pub begun: RefCell<Form>,
    /// What came with a link or a file and has no field here: kept, and passed on.
    pub strange: RefCell<Vec<(String, String)>>,
    /// What is to be said of the last file or link.
    pub said_of_file: Cell<&'static str>,
    /// Is the link drawn for paper? What was printed last, and when?
    pub coded: Cell<bool>,
    pub printed: RefCell<Option<(String, i64)>>,
    /// The answer that stands on the page.
    pub answer: RefCell<Answer>,
    /// Fields once left: their faults may be shown.
    pub left: RefCell<Vec<String>>,
    /// Fields whose faults are shown.
    faulty: RefCell<Vec<String>>,
    /// The field that has the focus, or had it last.
    pub at: RefCell<String>,
    /// What was typed before it was cleared or replaced, and in which job.
    pub before: RefCell<Option<(String, Form)>>,
    /// Where the sentence is spoken, and when, and which was last.
    pub status: Option<Element>,
    pub speaking: Cell<i32>,
    leaving: Cell<i32>,
    pub printing: Cell<i32>,
    pub said: RefCell<String>,
}

/// Makes `form` answer on every change; idempotent.
pub fn attach(form: HtmlFormElement) -> Result<Rc<Desk>, JsValue> {
    if let Some(desk) = DESKS.with_borrow(|all| all.iter().find(|desk| desk.form == form).cloned()) {
        return Ok(desk);
    }
    let number = COUNT.get() + 1;
    COUNT.set(number);
    let window = web_sys::window().ok_or("no window")?;
    page_lint::tell(&form, &window)?;
    aria::wire(&form, number)?;
    let mut status = None;
    if first(&form, SENTENCE).is_some() {
        let region = window.document().ok_or("no document")?.create_element("p")?;
        region.set_attribute("role", "status")?;
        form.append_child(&region)?;
        status = Some(region);
    }
    let signs = signs(&form);
    let desk = Rc::new(Desk {
        pen: Pen::new(form.clone(), Form(signs.clone()).signs()),
        signs,
        store: Device::of(&window, &form.id()),
        terms: RefCell::default(),
        exercise: Exercise::default(),
        told: RefCell::default(),
        telling: Cell::new(false),
        held: Cell::new(false),
        hosted: Cell::new(false),
        ending: AbortController::new()?,
        job: RefCell::default(),
        number: Cell::new(0),
        kept: Cell::default(),
        keeping: Cell::new(0),
        begun: RefCell::default(),
        strange: RefCell::default(),
        said_of_file: Cell::new(""),
        coded: Cell::new(false),
        printed: RefCell::default(),
        answer: RefCell::default(),
        form,
        window,
        left: RefCell::default(),
        faulty: RefCell::default(),
        at: RefCell::default(),
        before: RefCell::default(),
        status,
        speaking: Cell::new(0),
        leaving: Cell::new(0),
        printing: Cell::new(0),
        said: RefCell::default(),
    });
    for kind in ["input", "change", "focusout", "click", "submit", "reset", "toggle", "dragover", "drop"] {
        desk.on(&desk.form, kind, Desk::happened)?;
    }
    // A telephone may end a page that is out of sight without another word.
    for kind in ["pagehide", "visibilitychange"] {
        desk.on(&desk.window, kind, |desk, _| desk.keep_now())?;
    }
    desk.on(&desk.window, "storage", |desk, event| desk.others_wrote(event.unchecked_ref()))?;
    desk.on(&desk.window, "message", |desk, event| desk.heard(event.unchecked_ref()))?;
    desk.on(&desk.window, "beforeprint", |desk, _| desk.draw_code())?;
    desk.on(&desk.window, "afterprint", |desk, _| desk.printed_out())?;
    desk.on(&desk.window, "hashchange", |desk, _| match desk.window.history()?.state()?.is_truthy() {
        true => desk.refresh(), // An address of our own, gone back to: what is typed now is newer.
        false => desk.open_address().and_then(|()| desk.refresh()), // A place in the page keeps it too.
    })?;
    DESKS.with_borrow_mut(|all| all.push(desk.clone()));
    desk.at_once(|| {
        if desk.keeps() {
            desk.form.reset(); // What a browser put back by itself is kept here, and newer.
            *desk.begun.borrow_mut() = desk.typed();
        }
        match desk.window.location().hash()?.starts_with(LINK) {
            true => {
                desk.new_job();
                desk.open_address()?
            }
            false => desk.open_last()?,
        }
        desk.fill_in()?;
        offline::serve(&desk.window)
    })?;
    Ok(desk)
}

impl Desk {
    fn on(
        self: &Rc<Self>,
        target: &web_sys::EventTarget,
        kind: &str,
        act: fn(&Rc<Self>, &Event) -> Result<(), JsValue>,
    ) -> Result<(), JsValue> {
        let desk = self.clone();
        let listen =
            Closure::<dyn Fn(Event) -> Result<(), JsValue>>::new(move |event: Event| act(&desk, &event))
                .into_js_value(); // The form keeps it, until listening ends.
        // What is unfolded says so to itself alone, unless it is caught on its way there.
        let how = AddEventListenerOptions::new();
        how.set_capture(kind == "toggle");
        how.set_signal(&self.ending.signal());
        target.add_event_listener_with_callback_and_add_event_listener_options(
            kind,
            listen.unchecked_ref(),
            &how,
        )
    }

    fn happened(self: &Rc<Self>, event: &Event) -> Result<(), JsValue> {
        let Some(target) = event.target().and_then(|t| t.dyn_into::<Element>().ok()) else {
            return Ok(());
        };
        let name = target.get_attribute("name").unwrap_or_default();
        match event.type_().as_str() {
            "dragover" => {
                event.prevent_default();
                return Ok(());
            }
            "drop" => {
                event.prevent_default();
                let dropped = event.unchecked_ref::<web_sys::DragEvent>().data_transfer();
                return match dropped.and_then(|d| d.files()).and_then(|files| files.get(0)) {
                    Some(file) => self.take_file(&file),
                    None => Ok(()),
                };
            }
            "change" if target.has_attribute("data-file") => {
                let chosen = target.unchecked_ref::<HtmlInputElement>();
                let file = chosen.files().and_then(|files| files.get(0));
                return file.map_or(Ok(()), |file| self.take_file(&file));
            }
            "click" => return self.clicked(event, &target),
            "toggle" if !target.has_attribute("data-ask") => return Ok(()),
            "toggle" => {}
            "submit" => return self.submitted(event),
            "reset" => {
                self.pen.forget(); // It empties outputs as well.
                return Ok(());
            }
            "focusout" => {
                self.leave(&name);
                let next = event.unchecked_ref::<FocusEvent>().related_target();
                let next =
                    next.and_then(|t| t.dyn_into::<Element>().ok()).and_then(|t| t.get_attribute("name"));
                *self.at.borrow_mut() = next.unwrap_or_default();
                // Not at once: a message that moves what is being pressed would swallow the press.
                let desk = self.clone();
                return self.later(&self.leaving, LEAVING_MS, move || desk.refresh());
            }
            _ => {
                // Another unit makes another figure: as if it had been typed.
                if let Some(figure) = name.strip_suffix(".unit") {
                    self.leave(figure);
                }
                self.exercise.typed(&name);
                match name.as_str() {
                    "variant" => self.numbered()?,
                    "view" => views::fold(&self.form),
                    "at" => return views::opened(&self.form),
                    _ => {}
                }
                // A fault that stands is followed key by key; a new one waits until the field is left.
                if !self.faulty.borrow().contains(&name) {
                    self.left.borrow_mut().retain(|left| *left != name);
                }
            }
        }
        self.refresh()
    }

    /// Goes where the form's author wants a reader to go who is done.
    pub fn submitted(self: &Rc<Self>, event: &Event) -> Result<(), JsValue> {
        event.prevent_default();
        if self.in_hand().starts_with("try.") {
            return self.check();
        }
        let goal = self.form.get_attribute("action").unwrap_or_default();
        views::reveal(&self.form, &goal)?;
        first(&self.form, &goal).map_or(Ok(()), |goal| goal.unchecked_into::<HtmlElement>().focus())
    }

    /// The name of what has the focus.
    pub fn in_hand(&self) -> String {
        let at = self.window.document().and_then(|document| document.active_element());
        at.and_then(|at| at.get_attribute("name")).unwrap_or_default()
    }

    /// Stops listening; what stands on the page stays.
    pub fn detach(self: &Rc<Self>) -> Result<(), JsValue> {
        self.keep_now()?;
        // With a reason of its own: the browser's remembers who called, and that is this very desk.
        self.ending.abort_with_reason(&JsValue::NULL);
        for timer in [&self.keeping, &self.speaking, &self.leaving, &self.printing] {
            self.window.clear_timeout_with_handle(timer.get());
        }
        self.status.iter().for_each(Element::remove);
        DESKS.with_borrow_mut(|all| all.retain(|desk| desk.form != self.form));
        Ok(())
    }

    /// Is it still listening?
    pub fn is_attached(&self) -> bool {
        !self.ending.signal().aborted()
    }

    /// Does much, and shows only what it comes to.
    pub fn at_once(self: &Rc<Self>, act: impl FnOnce() -> Result<(), JsValue>) -> Result<(), JsValue> {
        let held = self.held.replace(true);
        let done = act();
        self.held.set(held);
        done.and_then(|()| self.refresh())
    }

    /// Puts texts into the fields of their names, but into a locked one only what its link says; a name that the
    /// page has no field for is kept, and passed on.
    pub fn set(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        let nothing = Form::default();
        self.pen.lines((form.lines_used() + 1).min(LINES.len()))?;
        let mut fields = Vec::new();
        for field in all(&self.form, "input[name], select[name], textarea[name]") {
            let name = field.get_attribute("name").unwrap_or_default();
            fields.push(name.clone());
            let given = if is_locked(&field) { &nothing } else { form };
            let Some(text) = self.terms.borrow().said(&name, given).map(String::from) else { continue };
            let (key, value) = match field.get_attribute("type").as_deref() {
                Some("radio" | "checkbox") => {
                    ("checked", JsValue::from(field.get_attribute("value").as_ref() == Some(&text)))
                }
                _ => ("value", text.into()),
            };
            js_sys::Reflect::set(&field, &key.into(), &value)?;
            self.exercise.typed(&name);
            self.leave(&name);
        }
        // Who may hear, and what is locked, is for the link to say.
        let of_a_link = |name: &str| name.starts_with("ask.") || TERMS.contains(&name);
        let strange = |name: &str| !of_a_link(name) && !fields.iter().any(|field| field == name);
        let more = form.0.iter().filter(|(name, _)| strange(name)).cloned();
        self.strange.borrow_mut().retain(|(name, _)| form.0.iter().all(|(n, _)| n != name));
        self.strange.borrow_mut().extend(more);
        if !form.text("view").is_empty() {
            views::fold(&self.form);
        }
        self.fill_in()?;
        self.refresh()
    }

    /// The form as typed, and what came with it that has no field here.
    pub fn typed(&self) -> Form {
        let data = web_sys::FormData::new_with_form(&self.form);
        let mut form = data.and_then(|data| pairs::form_of(&data)).unwrap_or_default();
        form.0.extend(self.strange.borrow().iter().cloned());
        form.0.extend(self.terms.borrow().carried());
        if hangs_on_signs(&form) {
            form.0.extend(self.signs.iter().cloned());
        }
        form
    }

    pub fn refresh(self: &Rc<Self>) -> Result<(), JsValue> {
        if self.held.get() {
            return Ok(());
        }
        let mut form = self.typed();
        self.keep_soon()?;
        self.pen.lines((form.lines_used() + 1).min(LINES.len()))?;
        form.0.extend(self.signs.iter().cloned());
        form.0.extend(self.beside());
        form.0.extend(self.asked(&form));
        let mut answer = answer(&form);
        self.sheet(&form, &mut answer);
        self.tell_terms(&form, &mut answer);
        if self.before.borrow().is_some() {
            answer.say("can.undo");
        }
        self.tell(&mut answer);
        self.abilities(&mut answer);
        let typing = self.hold_back(&mut answer);
        self.pen.write(&answer)?;
        self.leave_out()?;
        self.tell_of(&answer)?;
        *self.faulty.borrow_mut() = answer.faults.iter().map(|fault| fault.field.to_string()).collect();
        *self.answer.borrow_mut() = answer;
        self.speak(typing)
    }

    pub fn leave(&self, name: &str) {
        let mut left = self.left.borrow_mut();
        if !left.iter().any(|n| n == name) {
            left.push(name.into());
        }
    }

    /// Does something after a while; what was waiting on the same timer is dropped.
    pub fn later(
        &self,
        timer: &Cell<i32>,
        after_ms: i32,
        act: impl FnOnce() -> Result<(), JsValue> + 'static,
    ) -> Result<(), JsValue> {
        self.window.clear_timeout_with_handle(timer.get());
        // What is dropped before its time must not hold this desk: it goes with the browser's next clearing up.
        let act = Closure::once(act).into_js_value();
        let set = self
            .window
            .set_timeout_with_callback_and_timeout_and_arguments_0(act.unchecked_ref(), after_ms)?;
        timer.set(set);
        Ok(())
    }
}
