//! Who listens to a form, and what follows? It alone knows every room, and hands each what it needs.

use crate::actions::{Press, press};
use crate::aria;
use crate::elements::{attribute, focus, name, target};
use crate::embed::Embed;
use crate::environment::{Environment, always};
use crate::exercise::Exercise;
use crate::fields::Fields;
use crate::jobs::Jobs;
use crate::offline;
use crate::publish::{Publisher, SENTENCE};
use crate::renderer::Renderer;
use crate::transfer::Transfer;
use crate::views;
use form::Form;
use form::answer;
use form::answer::Answer;
use form::contract::{ATTEMPT, Field};
use js_sys::Function;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{
    AbortController, AddEventListenerOptions, DragEvent, Element, Event, EventTarget, FocusEvent,
    HtmlFormElement, HtmlInputElement,
};

mod acts;
mod job;

/// From leaving a field to showing what is wrong with it: time for a press to end.
const LEAVING_MS: i32 = 250;

/// What happens in a form, and what happens to its window.
const OF_THE_FORM: [&str; 9] =
    ["input", "change", "focusout", "click", "submit", "reset", "toggle", "dragover", "drop"];
const OF_THE_WINDOW: [&str; 7] =
    ["pagehide", "visibilitychange", "storage", "message", "beforeprint", "afterprint", "hashchange"];

thread_local! {
    static CONTROLLERS: RefCell<Vec<Rc<Controller>>> = const { RefCell::new(Vec::new()) };
    /// So many forms have been attached; each has its own number.
    static COUNT: Cell<usize> = const { Cell::new(0) };
}

/// One form that answers.
pub struct Controller {
    environment: Environment,
    fields: Fields,
    renderer: Renderer,
    jobs: Jobs,
    embed: Embed,
    exercise: Exercise,
    transfer: Transfer,
    publisher: Rc<Publisher>,
    /// The answer that stands on the page.
    answer: RefCell<Answer>,
    /// Is much about to be done, and to be shown at its end?
    batching: Cell<bool>,
    /// Ends all listening.
    ending: AbortController,
}

/// Makes `form` answer on every change; idempotent.
pub fn attach(form: HtmlFormElement) -> Result<Rc<Controller>, JsValue> {
    if let Some(there) = CONTROLLERS.with_borrow(|all| all.iter().find(|c| c.fields.form == form).cloned()) {
        return Ok(there);
    }
    let number = COUNT.get() + 1;
    COUNT.set(number);
    let environment = Environment::of(&form)?;
    let fields = Fields::of(&form, &environment.document)?;
    aria::wire(&fields.parts.forms(), number);
    let ending = AbortController::new()?;
    let controller = Rc::new(Controller {
        renderer: Renderer::new(form.clone(), environment.number_signs()),
        jobs: Jobs::of(&form, &environment.window),
        embed: Embed::default(),
        exercise: Exercise::default(),
        transfer: Transfer::default(),
        publisher: Rc::new(Publisher::of(&form, &environment, ending.signal())?),
        answer: RefCell::default(),
        batching: Cell::new(false),
        ending,
        environment,
        fields,
    });
    let happened = controller.listener(Controller::happened);
    for kind in OF_THE_FORM {
        controller.listen(&form, kind, &happened)?;
    }
    let happened = controller.listener(Controller::happened_to_window);
    for kind in OF_THE_WINDOW {
        controller.listen(&controller.environment.window, kind, &happened)?;
    }
    CONTROLLERS.with_borrow_mut(|all| all.push(controller.clone()));
    controller.at_once(|| {
        if controller.jobs.keeps {
            controller.fields.parts.reset(); // What a browser put back by itself is kept here, and newer.
            *controller.fields.defaults.borrow_mut() = controller.typed();
        }
        if !controller.open_address()? {
            match controller.jobs.last() {
                Some(job) => controller.open_job(&job)?,
                None => controller.new_job(),
            }
        }
        controller.fill_in()?;
        offline::serve(&controller.environment)
    })?;
    Ok(controller)
}

type Happened = fn(&Rc<Controller>, &Event) -> Result<(), JsValue>;

impl Controller {
    fn listener(self: &Rc<Self>, act: Happened) -> Function {
        let controller = self.clone();
        always(move |event| act(&controller, event.unchecked_ref()))
    }

    fn listen(&self, target: &EventTarget, kind: &str, listener: &Function) -> Result<(), JsValue> {
        // What is unfolded says so to itself alone, unless it is caught on its way there.
        let how = AddEventListenerOptions::new();
        how.set_capture(kind == "toggle");
        how.set_signal(&self.ending.signal());
        target.add_event_listener_with_callback_and_add_event_listener_options(kind, listener, &how)
    }

    fn happened(self: &Rc<Self>, event: &Event) -> Result<(), JsValue> {
        let Some(target) = target(event) else { return Ok(()) };
        let name = name(&target);
        match event.type_().as_str() {
            "dragover" => {
                event.prevent_default();
                return Ok(());
            }
            "drop" => {
                event.prevent_default();
                let dropped = event.unchecked_ref::<DragEvent>().data_transfer();
                return self.take_file(dropped.and_then(|dropped| dropped.files()));
            }
            "change" if target.has_attribute("data-file") => {
                return self.take_file(target.unchecked_ref::<HtmlInputElement>().files());
            }
            "click" => return self.clicked(event, &target),
            "toggle" if !target.has_attribute("data-ask") => return Ok(()),
            "toggle" => {}
            "submit" => return self.submitted(event),
            "reset" => {
                self.renderer.forget(); // It empties outputs as well.
                return Ok(());
            }
            "focusout" => {
                let next = event.unchecked_ref::<FocusEvent>().related_target();
                let next = next.and_then(|next| next.dyn_into::<Element>().ok());
                self.fields.leave(&name, next.map(|next| attribute(&next, "name")).unwrap_or_default());
                // Not at once: a message that moves what is being pressed would swallow the press.
                let controller = self.clone();
                return self
                    .fields
                    .leaving
                    .set(&self.environment.window, LEAVING_MS, move || controller.refresh());
            }
            _ => {
                self.exercise.typed(&name);
                match name.as_str() {
                    "variant" => {
                        self.exercise.numbered(&self.fields)?;
                        self.fill_in()?;
                    }
                    "view" => views::fold(&self.fields.form),
                    "at" => return views::opened(&self.fields.form),
                    _ => {}
                }
                self.fields.type_in(&name);
            }
        }
        self.refresh()
    }

    fn happened_to_window(self: &Rc<Self>, event: &Event) -> Result<(), JsValue> {
        match event.type_().as_str() {
            "storage" if !self.jobs.others_wrote(event.unchecked_ref()) => Ok(()),
            "storage" => self.refresh(),
            "message" => {
                let host = self.embed.options().tell.clone();
                let heard = self.publisher.heard(event.unchecked_ref(), &host)?;
                heard.map_or(Ok(()), |form| self.set(&form))
            }
            "beforeprint" => {
                let link = self.environment.is_served().then(|| self.link()).transpose()?;
                self.transfer.print(&self.fields, link.as_deref(), &self.typed())?;
                self.refresh()
            }
            "afterprint" => self.printed_out(),
            "hashchange" => {
                // An address of our own, gone back to: what is typed now is newer.
                if !self.environment.window.history()?.state()?.is_truthy() {
                    self.open_address()?; // A place in the page keeps it too.
                }
                self.refresh()
            }
            // A telephone may end a page that is out of sight without another word.
            _ => self.keep_now(),
        }
    }

    fn clicked(self: &Rc<Self>, event: &Event, target: &Element) -> Result<(), JsValue> {
        let pressed = press(event, target)?;
        if let Press::Filled(link) = &pressed {
            return self.open_as_new(link);
        }
        if let Some(link) = target.closest("a[href^='#']")? {
            self.renderer.forget();
            views::reveal(&self.fields.form, &self.fields.parts, &attribute(&link, "href"))?;
        }
        match pressed {
            Press::Submit => self.submitted(event),
            Press::Act(action, button) => self.act(action, &button),
            _ => Ok(()),
        }
    }

    /// Goes where the form's author wants a reader to go who is done.
    fn submitted(self: &Rc<Self>, event: &Event) -> Result<(), JsValue> {
        event.prevent_default();
        if self.environment.focused().starts_with(ATTEMPT) {
            self.exercise.check(&self.fields);
            return self.refresh();
        }
        let goal = attribute(&self.fields.form, "action");
        let goal = views::reveal(&self.fields.form, &self.fields.parts, &goal)?;
        goal.map_or(Ok(()), |goal| focus(&goal))
    }

    /// The paper has been printed, or will not be.
    fn printed_out(self: &Rc<Self>) -> Result<(), JsValue> {
        if self.exercise.print(false) { self.refresh() } else { Ok(()) }
    }

    /// Stops listening; what stands on the page stays.
    pub fn detach(self: &Rc<Self>) -> Result<(), JsValue> {
        self.keep_now()?;
        // With a reason of its own: the browser's remembers who called, and that is this very controller.
        self.ending.abort_with_reason(&JsValue::NULL);
        for timer in [&self.jobs.keeping, &self.fields.leaving, &self.exercise.printing] {
            timer.stop(&self.environment.window);
        }
        self.publisher.end();
        CONTROLLERS.with_borrow_mut(|all| all.retain(|there| !Rc::ptr_eq(there, self)));
        self.fields.parts.give_back()
    }

    /// Does much, and shows only what it comes to.
    fn at_once(self: &Rc<Self>, act: impl FnOnce() -> Result<(), JsValue>) -> Result<(), JsValue> {
        let batching = self.batching.replace(true);
        let done = act();
        self.batching.set(batching);
        done.and_then(|()| self.refresh())
    }

    /// Fills in texts by name; what is not named stays.
    pub fn set(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        let filled = self.fields.set(form, &self.embed.options())?;
        filled.iter().for_each(|name| self.exercise.typed(name));
        if !form.text(Field::View.name()).is_empty() {
            views::fold(&self.fields.form);
        }
        self.fill_in()?;
        self.refresh()
    }

    /// The form as typed.
    pub fn typed(&self) -> Form {
        self.fields.typed(&self.embed.options(), &self.environment.signs)
    }

    /// Fills in and locks what the number of the exercise settles.
    fn fill_in(&self) -> Result<(), JsValue> {
        let signs = self.environment.number_signs();
        let numbered = self.exercise.fill_in(&self.fields, &self.embed.options(), signs)?;
        self.lock(numbered);
        Ok(())
    }

    fn lock(&self, numbered: bool) {
        self.embed.lock(&self.fields, numbered);
    }

    /// Answers what is typed.
    fn refresh(self: &Rc<Self>) -> Result<(), JsValue> {
        if self.batching.get() {
            return Ok(());
        }
        let typed = self.typed();
        self.keep_soon()?;
        self.fields.lines(&typed)?;
        let mut form = typed.clone();
        form.append(self.environment.signs.clone());
        form.append(self.environment.moments(&self.fields.parts.all("input[type='datetime-local']")));
        form.append(self.exercise.asked(&self.fields, &form));
        let mut answer = answer(&form);
        self.exercise.sheet(&self.fields, &form, self.environment.number_signs(), &mut answer);
        self.embed.tell(&form, &self.environment, self.jobs.has_store(), &mut answer);
        self.jobs.tell(&mut answer);
        self.transfer.tell(&typed, &mut answer);
        let typing = self.fields.hold_back(&mut answer, &self.environment.focused());
        self.renderer.write(&answer)?;
        self.embed.leave_out(&self.fields)?;
        // What goes to the paper alone is nobody's to hear.
        if !self.exercise.is_printed() {
            self.publisher.publish(&answer)?;
        }
        *self.answer.borrow_mut() = answer;
        let controller = self.clone();
        let sentence = move || controller.renderer.sentence(SENTENCE, &controller.answer.borrow());
        self.publisher.announce(typing, sentence)
    }
}
