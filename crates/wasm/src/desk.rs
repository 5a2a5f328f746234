//! Who listens to the page? One desk a form: what was typed, left, cleared, linked and said.

use crate::answer;
use crate::answer::{Answer, joined};
use crate::dom::{Pen, all, first};
use crate::field::{self, LINES};
use crate::form::Form;
use crate::moment;
use crate::offline;
use crate::shelf::{Kept, form_of};
use crate::store::Device;
use crate::views;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{Element, Event, FocusEvent, HtmlElement, HtmlFormElement, HtmlInputElement, Window};

/// A rest after the last key, before the sentence is spoken.
const PAUSE_MS: i32 = 900;
/// From leaving a field to showing what is wrong with it: time for a press to end.
const LEAVING_MS: i32 = 250;
/// How a link to a filled form begins.
pub const LINK: &str = "#sw1&";
const SENTENCE: &str = "template[data-say]";

thread_local! {
    static DESKS: RefCell<Vec<Rc<Desk>>> = const { RefCell::new(Vec::new()) };
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
    at: RefCell<String>,
    /// What was typed before it was cleared or replaced, and in which job.
    pub before: RefCell<Option<(String, Form)>>,
    /// Where the sentence is spoken, and when, and which was last.
    status: Option<Element>,
    speaking: Cell<i32>,
    leaving: Cell<i32>,
    said: RefCell<String>,
}

/// Makes `form` answer on every change; idempotent.
pub fn attach(form: HtmlFormElement) -> Result<(), JsValue> {
    if DESKS.with_borrow(|all| all.iter().any(|desk| desk.form == form)) {
        return Ok(());
    }
    let window = web_sys::window().ok_or("no window")?;
    let mut status = None;
    if first(&form, SENTENCE).is_some() {
        let region = window.document().ok_or("no document")?.create_element("p")?;
        region.set_attribute("role", "status")?;
        form.append_child(&region)?;
        status = Some(region);
    }
    let desk = Rc::new(Desk {
        signs: signs(&form),
        store: Device::of(&window),
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
        pen: Pen::new(form.clone()),
        form,
        window,
        left: RefCell::default(),
        faulty: RefCell::default(),
        at: RefCell::default(),
        before: RefCell::default(),
        status,
        speaking: Cell::new(0),
        leaving: Cell::new(0),
        said: RefCell::default(),
    });
    for kind in ["input", "change", "focusout", "click", "submit", "toggle", "dragover", "drop"] {
        desk.on(&desk.form, kind, Desk::happened)?;
    }
    // A telephone may end a page that is out of sight without another word.
    for kind in ["pagehide", "visibilitychange"] {
        desk.on(&desk.window, kind, |desk, _| desk.keep_now())?;
    }
    desk.on(&desk.window, "storage", |desk, event| desk.others_wrote(event.unchecked_ref()))?;
    desk.on(&desk.window, "beforeprint", |desk, _| desk.draw_code())?;
    desk.on(&desk.window, "hashchange", |desk, _| match desk.window.history()?.state()?.is_truthy() {
        true => desk.refresh(), // An address of our own, gone back to: what is typed now is newer.
        false => desk.open_address().and_then(|()| desk.refresh()), // A place in the page keeps it too.
    })?;
    DESKS.with_borrow_mut(|all| all.push(desk.clone()));
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
    offline::serve(&desk.window)?;
    desk.refresh()
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
            Closure::<dyn Fn(Event) -> Result<(), JsValue>>::new(move |event: Event| act(&desk, &event));
        // What is unfolded says so to itself alone, unless it is caught on its way there.
        let catch = kind == "toggle";
        target.add_event_listener_with_callback_and_bool(kind, listen.as_ref().unchecked_ref(), catch)?;
        listen.forget(); // The form keeps it, for as long as the page stands.
        Ok(())
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
            "submit" => {
                event.prevent_default();
                let goal = self.form.get_attribute("action").unwrap_or_default();
                views::reveal(&self.form, &goal)?;
                if let Some(goal) = first(&self.form, &goal) {
                    goal.unchecked_into::<HtmlElement>().focus()?;
                }
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
                match name.as_str() {
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

    /// Opens the link that the page itself was opened with, if it is one, as a job of its own.
    fn open_address(self: &Rc<Self>) -> Result<(), JsValue> {
        let link = self.window.location().hash()?;
        if link.starts_with(LINK) {
            self.open_as_new(&link)?;
        }
        Ok(())
    }

    /// Opens a link as a job of its own, and keeps it at once: the address need not hold it then.
    pub fn open_as_new(self: &Rc<Self>, link: &str) -> Result<(), JsValue> {
        let parts = link.strip_prefix(LINK).unwrap_or_default();
        self.begin(&form_of(parts)?)?;
        self.keep_now()
    }

    /// Puts texts into the fields of their names; a name the page has no field for is left.
    pub fn set(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        self.pen.lines((form.lines_used() + 1).min(LINES.len()))?;
        let mut fields = Vec::new();
        for field in all(&self.form, "input[name], select[name], textarea[name]") {
            let name = field.get_attribute("name").unwrap_or_default();
            fields.push(name.clone());
            let Some((_, text)) = form.0.iter().rev().find(|(n, _)| *n == name) else { continue };
            let (key, value) = match field.get_attribute("type").as_deref() {
                Some("radio" | "checkbox") => {
                    ("checked", JsValue::from(field.get_attribute("value").as_ref() == Some(text)))
                }
                _ => ("value", text.into()),
            };
            js_sys::Reflect::set(&field, &key.into(), &value)?;
            self.leave(&name);
        }
        let strange = |name: &str| !fields.iter().any(|field| field == name);
        let strange = form.0.iter().filter(|(name, _)| strange(name)).cloned().collect();
        *self.strange.borrow_mut() = strange;
        if !form.text("view").is_empty() {
            views::fold(&self.form);
        }
        self.refresh()
    }

    /// The form as typed, and what came with it that has no field here.
    pub fn typed(&self) -> Form {
        let data = web_sys::FormData::new_with_form(&self.form);
        let mut form = data.and_then(|data| Form::from_pairs(&data)).unwrap_or_default();
        form.0.extend(self.strange.borrow().iter().cloned());
        form
    }

    pub fn refresh(self: &Rc<Self>) -> Result<(), JsValue> {
        let mut form = self.typed();
        self.keep_soon()?;
        self.pen.lines((form.lines_used() + 1).min(LINES.len()))?;
        form.0.extend(self.signs.iter().cloned());
        form.0.extend(self.beside());
        let mut answer = answer(&form);
        if self.before.borrow().is_some() {
            answer.say("can.undo");
        }
        self.tell(&mut answer);
        self.abilities(&mut answer);
        // A number is not at fault while its unit is being chosen.
        let (left, at) = (self.left.borrow().clone(), self.at.borrow().clone());
        answer.faults.retain(|fault| {
            let choosing = at == field::unit_of(fault.field) && at != fault.field;
            left.iter().any(|n| n == fault.field) && !choosing
        });
        self.pen.write(&answer)?;
        *self.answer.borrow_mut() = answer.clone();
        *self.faulty.borrow_mut() = answer.faults.iter().map(|fault| fault.field.to_string()).collect();
        match self.pen.sentence(SENTENCE, &answer) {
            Some(sentence) => self.speak(sentence),
            None => Ok(()),
        }
    }

    /// What only the browser knows: the time zone of each moment, and what somebody has unfolded.
    fn beside(&self) -> Vec<(String, String)> {
        let utc = minutes().to_string();
        let mut all_of_it = vec![("now".to_string(), local_now()), ("utc.now".to_string(), utc)];
        for field in all(&self.form, "input[type='datetime-local']") {
            let field = field.unchecked_ref::<HtmlInputElement>();
            let minutes = js_sys::Date::parse(&field.value()) / 60_000.0;
            if minutes.is_finite() {
                all_of_it.push((joined(&["utc.", &field.name()]), (minutes as i64).to_string()));
            }
        }
        for asked in all(&self.form, "details[data-ask][open]") {
            let name = asked.get_attribute("data-ask").unwrap_or_default();
            all_of_it.push((joined(&["ask.", &name]), "yes".into()));
        }
        all_of_it
    }

    pub fn leave(&self, name: &str) {
        let mut left = self.left.borrow_mut();
        if !left.iter().any(|n| n == name) {
            left.push(name.into());
        }
    }

    /// Says a sentence when it is new, after a rest.
    fn speak(self: &Rc<Self>, sentence: String) -> Result<(), JsValue> {
        let desk = self.clone();
        self.later(&self.speaking, PAUSE_MS, move || {
            if *desk.said.borrow() != sentence {
                desk.status.iter().for_each(|region| region.set_text_content(Some(&sentence)));
                *desk.said.borrow_mut() = sentence;
            }
            Ok(())
        })
    }

    /// Does something after a while; what was waiting on the same timer is dropped.
    pub fn later(
        &self,
        timer: &Cell<i32>,
        after_ms: i32,
        act: impl FnOnce() -> Result<(), JsValue> + 'static,
    ) -> Result<(), JsValue> {
        self.window.clear_timeout_with_handle(timer.get());
        let act = Closure::once_into_js(act);
        let set = self
            .window
            .set_timeout_with_callback_and_timeout_and_arguments_0(act.unchecked_ref(), after_ms)?;
        timer.set(set);
        Ok(())
    }
}

/// Minutes of elapsed time by this device's clock.
pub fn minutes() -> i64 {
    (js_sys::Date::now() / 60_000.0) as i64
}

/// What this place's clock shows then, as `datetime-local` has it.
pub fn local(minutes: i64) -> String {
    let then = js_sys::Date::new(&(minutes as f64 * 60_000.0).into());
    moment::write(minutes - then.get_timezone_offset() as i64)
}

/// What it shows now.
pub fn local_now() -> String {
    local(minutes())
}

/// The page's signs for decimals and groups, asked of the browser once.
fn signs(form: &HtmlFormElement) -> Vec<(String, String)> {
    let lang = form.closest("[lang]").ok().flatten().and_then(|e| e.get_attribute("lang"));
    let languages = js_sys::Array::from_iter(lang.map(JsValue::from));
    let format = js_sys::Intl::NumberFormat::new(&languages, &js_sys::Object::new());
    let text = |part: &JsValue, key: &str| js_sys::Reflect::get(part, &key.into()).ok()?.as_string();
    let parts = format.format_to_parts(1_234_567.5);
    let sign = |name: &str, kind: &str| {
        let part = parts.iter().find(|p| text(p, "type").as_deref() == Some(kind))?;
        Some((name.to_string(), text(&part, "value")?))
    };
    [sign("sign.decimal", "decimal"), sign("sign.group", "group")].into_iter().flatten().collect()
}
