//! Who listens to the page? One desk a form: what was typed, left, cleared, linked and said.

use crate::answer;
use crate::answer::joined;
use crate::dom::{Pen, all, first};
use crate::field::{self, LINES};
use crate::form::Form;
use crate::moment;
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
const LINK: &str = "#sw1&";
const SENTENCE: &str = "template[data-say]";

thread_local! {
    static DESKS: RefCell<Vec<Rc<Desk>>> = const { RefCell::new(Vec::new()) };
}

/// One form and what has to be remembered about it.
struct Desk {
    form: HtmlFormElement,
    window: Window,
    pen: Pen,
    /// The page's signs, in the form's own names for them.
    signs: Vec<(String, String)>,
    /// Fields once left: their faults may be shown.
    left: RefCell<Vec<String>>,
    /// Fields whose faults are shown.
    faulty: RefCell<Vec<String>>,
    /// The field that has the focus, or had it last.
    at: RefCell<String>,
    /// What was typed before it was cleared or replaced.
    before: RefCell<Option<Form>>,
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
    for kind in ["input", "change", "focusout", "click", "submit", "toggle"] {
        desk.on(&desk.form, kind, Desk::happened)?;
    }
    desk.on(&desk.window, "hashchange", |desk, _| match desk.window.history()?.state()?.is_truthy() {
        true => desk.refresh(), // An address of our own, gone back to: what is typed now is newer.
        false => desk.open_address().and_then(|()| desk.refresh()), // A place in the page keeps it too.
    })?;
    DESKS.with_borrow_mut(|all| all.push(desk.clone()));
    desk.open_address()?;
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
                    "at" => return Ok(()),
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

    fn clicked(self: &Rc<Self>, event: &Event, target: &Element) -> Result<(), JsValue> {
        if let Some(link) = target.closest("a[href^='#sw1&']")? {
            event.prevent_default();
            return self.open(&link.get_attribute("href").unwrap_or_default());
        }
        if let Some(link) = target.closest("a[href^='#']")? {
            views::reveal(&self.form, &link.get_attribute("href").unwrap_or_default())?;
        }
        let Some(button) = target.closest("[data-act]")? else {
            return Ok(());
        };
        let value = button.get_attribute("value").unwrap_or_default();
        match button.get_attribute("data-act").unwrap_or_default().as_str() {
            "print" => {
                views::paper(&self.form, &button);
                self.window.print()
            }
            "now" => {
                if let Some(field) = first(&self.form, &joined(&["[name='", &value, "']"])) {
                    field.unchecked_ref::<HtmlInputElement>().set_value(&local_now());
                }
                self.leave(&value);
                self.refresh()
            }
            "copy" => self.copy(&value),
            "back" => views::walk(&self.form, true),
            "next" => views::walk(&self.form, false),
            "clear" => {
                let before = self.typed();
                self.form.reset();
                self.left.borrow_mut().clear();
                *self.before.borrow_mut() = Some(before);
                self.refresh()
            }
            // Pressed twice it undoes itself: what is typed now is never lost either.
            "undo" => match self.before.replace(Some(self.typed())) {
                None => Ok(()),
                Some(form) => {
                    self.form.reset();
                    self.set(&form)
                }
            },
            _ => Ok(()),
        }
    }

    /// Puts the text of the element of this id on the clipboard.
    fn copy(&self, id: &str) -> Result<(), JsValue> {
        if let Some(place) = first(&self.form, &joined(&["#", id])) {
            let text = place.unchecked_ref::<HtmlElement>().inner_text();
            let _ = self.window.navigator().clipboard().write_text(&text);
        }
        Ok(())
    }

    /// Opens the link that the page itself was opened with, if it is one.
    fn open_address(self: &Rc<Self>) -> Result<(), JsValue> {
        self.open(&self.window.location().hash()?)
    }

    /// Fills the form from a link; anything else is left alone.
    fn open(self: &Rc<Self>, link: &str) -> Result<(), JsValue> {
        let Some(parts) = link.strip_prefix(LINK) else {
            return Ok(());
        };
        let parts = web_sys::UrlSearchParams::new_with_str(parts)?;
        let form = Form::from_pairs(&parts)?;
        let before = self.typed();
        self.form.reset();
        *self.before.borrow_mut() = (!before.is_blank()).then_some(before);
        self.set(&form)
    }

    /// Puts texts into the fields of their names; a name the page has no field for is left.
    fn set(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        self.pen.lines((form.lines_used() + 1).min(LINES.len()))?;
        for field in all(&self.form, "input[name], select[name], textarea[name]") {
            let name = field.get_attribute("name").unwrap_or_default();
            let Some((_, text)) = form.0.iter().rev().find(|(n, _)| *n == name) else { continue };
            let (key, value) = match field.get_attribute("type").as_deref() {
                Some("radio") => {
                    ("checked", JsValue::from(field.get_attribute("value").as_ref() == Some(text)))
                }
                _ => ("value", text.into()),
            };
            js_sys::Reflect::set(&field, &key.into(), &value)?;
            self.leave(&name);
        }
        if !form.text("view").is_empty() {
            views::fold(&self.form);
        }
        self.refresh()
    }

    /// The form as typed.
    fn typed(&self) -> Form {
        let data = web_sys::FormData::new_with_form(&self.form);
        data.and_then(|data| Form::from_pairs(&data)).unwrap_or_default()
    }

    fn refresh(self: &Rc<Self>) -> Result<(), JsValue> {
        let mut form = self.typed();
        self.keep(&form)?;
        self.pen.lines((form.lines_used() + 1).min(LINES.len()))?;
        form.0.extend(self.signs.iter().cloned());
        form.0.extend(self.beside());
        let mut answer = answer(&form);
        if self.before.borrow().is_some() {
            answer.say("can.undo");
        }
        if js_sys::Reflect::has(&self.window.navigator(), &"clipboard".into())? {
            answer.say("can.copy");
        }
        // A number is not at fault while its unit is being chosen.
        let (left, at) = (self.left.borrow().clone(), self.at.borrow().clone());
        answer.faults.retain(|fault| {
            let choosing = at == field::unit_of(fault.field) && at != fault.field;
            left.iter().any(|n| n == fault.field) && !choosing
        });
        self.pen.write(&answer)?;
        *self.faulty.borrow_mut() = answer.faults.iter().map(|fault| fault.field.to_string()).collect();
        match self.pen.sentence(SENTENCE, &answer) {
            Some(sentence) => self.speak(sentence),
            None => Ok(()),
        }
    }

    /// What only the browser knows: the time zone of each moment, and what somebody has unfolded.
    fn beside(&self) -> Vec<(String, String)> {
        let utc = ((js_sys::Date::now() / 60_000.0) as i64).to_string();
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

    fn leave(&self, name: &str) {
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
    fn later(
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

    /// Keeps what is typed in the page's own address, where the form asks for it, so that a reload
    /// loses nothing. A page that may not touch its address just does not keep it.
    fn keep(&self, form: &Form) -> Result<(), JsValue> {
        if !self.form.has_attribute("data-keep") {
            return Ok(());
        }
        let parts = web_sys::UrlSearchParams::new()?;
        for (name, text) in form.0.iter().filter(|(_, text)| !text.is_empty()) {
            parts.append(name, text);
        }
        let address = joined(&[LINK, &parts.to_string().as_string().unwrap_or_default()]);
        let kept = self.window.location().hash()?.starts_with(LINK);
        let address = match form.is_blank() {
            true if !kept => return Ok(()),
            true => "#",
            false => &address,
        };
        let _ = self.window.history()?.replace_state_with_url(&JsValue::TRUE, "", Some(address));
        Ok(())
    }
}

/// What this place's clock shows.
fn local_now() -> String {
    let now = js_sys::Date::now();
    let zone = js_sys::Date::new(&now.into()).get_timezone_offset();
    moment::write((now / 60_000.0 - zone) as i64)
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
