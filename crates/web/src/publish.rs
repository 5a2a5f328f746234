//! Who hears of an answer? Whoever listens, by a sentence; the page, by an event; a host, by messages if the link
//! names it.

use crate::controller::{Desk, SENTENCE};
use crate::pairs;
use crate::to_js::Plain;
use form::answer::{Answer, CONTRACT};
use form::contract::fields;
use form::text::joined;
use js_sys::{Object, Reflect};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{CustomEvent, CustomEventInit, MessageEvent, ResizeObserver};

/// The event on the form, and the key of every message.
const NAME: &str = "saltwright";

/// The event's type, beside what sends it.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
declare global {
    interface GlobalEventHandlersEventMap {
        /** A form that answers has another answer. */
        "saltwright:answer": CustomEvent<Answer>;
    }
}
"#;

/// A rest after the last key, before the sentence is spoken.
const PAUSE_MS: i32 = 900;

impl Desk {
    /// Holds each fault back until its field is left; is that field being typed in?
    pub fn hold_back(&self, answer: &mut Answer) -> bool {
        let (left, at, in_hand) = (self.left.borrow(), self.at.borrow(), self.in_hand());
        let mut typing = false;
        answer.faults.retain(|fault| {
            // A number is not at fault while its unit is being chosen.
            let choosing = *at == fields::unit_of(fault.field) && *at != fault.field;
            let shown = left.iter().any(|n| n == fault.field) && !choosing;
            typing |= !shown && (choosing || in_hand == fault.field);
            shown
        });
        typing
    }

    /// Says what the answer comes to when that is new, after a rest; nothing while a figure is typed that cannot be
    /// used as yet.
    pub fn speak(self: &Rc<Self>, typing: bool) -> Result<(), JsValue> {
        let Some(region) = self.status.clone() else { return Ok(()) };
        if typing {
            self.window.clear_timeout_with_handle(self.speaking.get());
            return Ok(());
        }
        let desk = self.clone();
        self.later(&self.speaking, PAUSE_MS, move || {
            let sentence = desk.pen.sentence(SENTENCE, &desk.answer.borrow()).unwrap_or_default();
            if *desk.said.borrow() != sentence {
                region.set_text_content(Some(&sentence));
                *desk.said.borrow_mut() = sentence;
            }
            Ok(())
        })
    }

    /// Tells of an answer once the page is painted, if it is another than the last.
    pub fn tell_of(self: &Rc<Self>, answer: &Answer) -> Result<(), JsValue> {
        let answer = answer.for_others();
        // What goes to the paper alone is nobody's to hear.
        if *self.told.borrow() == answer || self.exercise.is_printed() {
            return Ok(());
        }
        *self.told.borrow_mut() = answer;
        if self.telling.get() {
            return Ok(());
        }
        self.telling.set(true);
        let desk = self.clone();
        let tell = Closure::once(move || {
            desk.telling.set(false);
            if desk.is_attached() { desk.tell_now() } else { Ok(()) }
        })
        .into_js_value();
        // Behind the frame that paints it: whoever listens does not keep a reader waiting.
        let window = self.window.clone();
        let painted = Closure::once(move || window.set_timeout_with_callback(tell.unchecked_ref()).map(drop))
            .into_js_value();
        self.window.request_animation_frame(painted.unchecked_ref()).map(drop)
    }

    fn tell_now(&self) -> Result<(), JsValue> {
        let answer = Plain::from(&*self.told.borrow()).to_script();
        let init = CustomEventInit::new();
        init.set_bubbles(true);
        init.set_detail(&answer);
        let event = CustomEvent::new_with_event_init_dict(&joined(&[NAME, ":answer"]), &init)?;
        self.form.dispatch_event(&event)?;
        self.post("answer", &[("answer", answer)])
    }

    /// Sends a message to the host that the link names.
    fn post(&self, kind: &str, more: &[(&str, JsValue)]) -> Result<(), JsValue> {
        let tell = self.terms.borrow().tell.clone();
        let Some(host) = self.window.parent()?.filter(|_| self.is_framed() && !tell.is_empty()) else {
            return Ok(());
        };
        let (message, inner) = (Object::new(), Object::new());
        let own = [("contract", JsValue::from(CONTRACT)), ("kind", kind.into())];
        for (key, value) in own.iter().chain(more) {
            Reflect::set(&inner, &(*key).into(), value)?;
        }
        Reflect::set(&message, &NAME.into(), &inner)?;
        // What is no address of a host hears nothing.
        let _ = host.post_message(&message, &tell);
        Ok(())
    }

    /// Says that the form is there, and how high the page is, whenever that changes.
    pub fn begin_telling(self: &Rc<Self>) -> Result<(), JsValue> {
        if self.terms.borrow().tell.is_empty() || !self.is_framed() || self.hosted.replace(true) {
            return Ok(());
        }
        self.post("ready", &[])?;
        let Some(page) = self.window.document().and_then(|document| document.document_element()) else {
            return Ok(());
        };
        let (desk, whole) = (self.clone(), page.clone());
        let measure = Closure::<dyn Fn() -> Result<(), JsValue>>::new(move || {
            if !desk.is_attached() {
                return Ok(());
            }
            let height = whole.get_bounding_client_rect().height().ceil();
            desk.post("height", &[("height", height.into())])
        });
        ResizeObserver::new(measure.as_ref().unchecked_ref())?.observe(&page);
        measure.forget(); // The page keeps it, for as long as it stands.
        Ok(())
    }

    /// Fills in what the host sends: the one that the link names, and only the page that holds the frame.
    pub fn heard(self: &Rc<Self>, event: &MessageEvent) -> Result<(), JsValue> {
        let tell = self.terms.borrow().tell.clone();
        let host = self.window.parent()?;
        if tell.is_empty()
            || event.origin() != tell
            || event.source().as_ref() != host.as_ref().map(AsRef::as_ref)
        {
            return Ok(());
        }
        let inner = Reflect::get(&event.data(), &NAME.into()).unwrap_or_default();
        let get = |key: &str| Reflect::get(&inner, &key.into()).unwrap_or_default();
        let form = get("form");
        if get("kind").as_string().as_deref() != Some("set") {
            return Ok(());
        }
        match form.dyn_ref::<Object>().map(|form| pairs::form_of(&Object::entries(form))) {
            Some(Ok(part)) => self.set(&part),
            _ => Ok(()),
        }
    }
}
