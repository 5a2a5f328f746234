//! Who hears of an answer? Whoever listens, by a sentence; the page, by an event; a host, by messages if the link
//! names it.

use crate::elements::{first, set_attribute, set_text};
use crate::environment::{Environment, Timer, always, once};
use crate::pairs::{of_object, plain};
use form::Form;
use form::answer::Answer;
use form::contract::CONTRACT;
use form::text::joined;
use js_sys::{Object, Reflect};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{
    AbortSignal, CustomEvent, CustomEventInit, Element, HtmlFormElement, MessageEvent, ResizeObserver, Window,
};

/// The event on the form, and the key of every message.
const NAME: &str = "saltwright";
/// What is said of an answer to who hears the page.
pub const SENTENCE: &str = "template[data-say]";
/// A rest after the last key, before the sentence is spoken.
const PAUSE_MS: i32 = 900;

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

/// Tells of the answers of one form.
pub struct Publisher {
    form: HtmlFormElement,
    window: Window,
    /// Nothing is told once it is aborted.
    ended: AbortSignal,
    /// The one host that hears, if there is one.
    host: RefCell<String>,
    /// Has it been told that the form is there?
    greeted: Cell<bool>,
    /// What was told last, and is something about to be told?
    last_published: RefCell<Answer>,
    publishing: Cell<bool>,
    /// Where the sentence is spoken, when, and which was last.
    region: Option<Element>,
    announcing: Timer,
    last_announced: RefCell<String>,
}

impl Publisher {
    /// For a form, with a place for the sentence if the page has one to say.
    pub fn of(
        form: &HtmlFormElement,
        environment: &Environment,
        ended: AbortSignal,
    ) -> Result<Self, JsValue> {
        let mut region = None;
        if first(form, SENTENCE).is_some() {
            let place = environment.document.create_element("p")?;
            set_attribute(&place, "role", "status");
            form.append_child(&place)?;
            region = Some(place);
        }
        Ok(Self {
            form: form.clone(),
            window: environment.window.clone(),
            ended,
            host: RefCell::default(),
            greeted: Cell::default(),
            last_published: RefCell::default(),
            publishing: Cell::default(),
            region,
            announcing: Timer::default(),
            last_announced: RefCell::default(),
        })
    }

    /// Says nothing more.
    pub fn end(&self) {
        self.announcing.stop(&self.window);
        self.region.iter().for_each(Element::remove);
    }

    /// Says what the answer comes to when that is new, after a rest; nothing while a figure is typed that cannot be
    /// used as yet.
    pub fn announce(
        self: &Rc<Self>,
        typing: bool,
        sentence: impl FnOnce() -> Option<String> + 'static,
    ) -> Result<(), JsValue> {
        let Some(region) = self.region.clone() else { return Ok(()) };
        if typing {
            self.announcing.stop(&self.window);
            return Ok(());
        }
        let publisher = self.clone();
        self.announcing.set(&self.window, PAUSE_MS, move || {
            let sentence = sentence().unwrap_or_default();
            if *publisher.last_announced.borrow() != sentence {
                set_text(&region, &sentence);
                *publisher.last_announced.borrow_mut() = sentence;
            }
            Ok(())
        })
    }

    /// Tells of an answer once the page is painted, if it is another than the last.
    pub fn publish(self: &Rc<Self>, answer: &Answer) -> Result<(), JsValue> {
        let answer = answer.for_others();
        if *self.last_published.borrow() == answer {
            return Ok(());
        }
        *self.last_published.borrow_mut() = answer;
        if self.publishing.replace(true) {
            return Ok(());
        }
        let publisher = self.clone();
        let publish = once(move |_| {
            publisher.publishing.set(false);
            if publisher.ended.aborted() { Ok(()) } else { publisher.publish_now() }
        });
        // Behind the frame that paints it: whoever listens does not keep a reader waiting.
        let window = self.window.clone();
        let painted = once(move |_| window.set_timeout_with_callback(&publish).map(drop));
        self.window.request_animation_frame(&painted).map(drop)
    }

    fn publish_now(&self) -> Result<(), JsValue> {
        let answer = plain(&*self.last_published.borrow())?;
        let init = CustomEventInit::new();
        init.set_bubbles(true);
        init.set_detail(&answer);
        let event = CustomEvent::new_with_event_init_dict(&joined(&[NAME, ":answer"]), &init)?;
        self.form.dispatch_event(&event)?;
        self.post("answer", Some(answer))
    }

    /// Sends a message to the host: of this kind, and of what it is about under the same name.
    fn post(&self, kind: &str, about: Option<JsValue>) -> Result<(), JsValue> {
        let host = self.host.borrow();
        let Some(parent) = self.window.parent()?.filter(|_| !host.is_empty()) else {
            return Ok(());
        };
        let (message, inner) = (Object::new(), Object::new());
        let own = [("contract", CONTRACT.into()), ("kind", kind.into())];
        for (key, value) in own.into_iter().chain(about.map(|about| (kind, about))) {
            Reflect::set(&inner, &key.into(), &value)?;
        }
        Reflect::set(&message, &NAME.into(), &inner)?;
        // What is no address of a host hears nothing.
        let _ = parent.post_message(&message, &host);
        Ok(())
    }

    /// Says to the host that the form is there, and how high the page is, whenever that changes.
    pub fn greet(self: &Rc<Self>, host: &str, environment: &Environment) -> Result<(), JsValue> {
        if host.is_empty() || !environment.is_framed() {
            return Ok(());
        }
        *self.host.borrow_mut() = host.into();
        if self.greeted.replace(true) {
            return Ok(());
        }
        self.post("ready", None)?;
        let Some(page) = environment.document.document_element() else { return Ok(()) };
        let (publisher, whole) = (self.clone(), page.clone());
        let measure = always(move |_| {
            if publisher.ended.aborted() {
                return Ok(());
            }
            publisher.post("height", Some(whole.get_bounding_client_rect().height().ceil().into()))
        });
        ResizeObserver::new(&measure)?.observe(&page);
        Ok(())
    }

    /// What the host sends to be filled in: the one that the link names, and only the page that holds the frame.
    pub fn heard(&self, event: &MessageEvent, host: &str) -> Result<Option<Form>, JsValue> {
        let parent = self.window.parent()?;
        if host.is_empty()
            || event.origin() != host
            || event.source().as_ref() != parent.as_ref().map(AsRef::as_ref)
        {
            return Ok(None);
        }
        let inner = Reflect::get(&event.data(), &NAME.into()).unwrap_or_default();
        let get = |key: &str| Reflect::get(&inner, &key.into()).unwrap_or_default();
        if get("kind").as_string().as_deref() != Some("set") {
            return Ok(None);
        }
        Ok(get("form").dyn_ref::<Object>().and_then(|form| of_object(form).ok()))
    }
}
