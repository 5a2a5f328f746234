//! Who touches the page? Reads fields by name, writes outputs by name, switches `hidden`.
//!
//! Nothing else is changed: no HTML, class or style is written, and no word comes from here.

use crate::answer::{Answer, Row, Shown, answer, joined};
use crate::form::Form;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{
    Document, DocumentFragment, Element, Event, HtmlElement, HtmlFormElement, HtmlTemplateElement, Node,
    Window,
};

/// A rest after the last key, before the sentence is spoken.
const PAUSE_MS: i32 = 900;
/// How a link to a filled form begins.
const LINK: &str = "#sw1&";

thread_local! {
    static DESKS: RefCell<Vec<Rc<Desk>>> = const { RefCell::new(Vec::new()) };
}

/// One form and what has to be remembered about it.
struct Desk {
    form: HtmlFormElement,
    window: Window,
    document: Document,
    /// UCUM code and word, as the page has them.
    words: Vec<(String, String)>,
    /// The page's signs, in the form's own names for them.
    signs: Vec<(String, String)>,
    /// Fields once left: their faults may be shown.
    left: RefCell<Vec<String>>,
    /// What was typed before it was cleared or replaced.
    before: RefCell<Option<Form>>,
    /// Copies of row templates, by list.
    rows: RefCell<Vec<(Row, Vec<Element>)>>,
    status: Option<Element>,
    timer: Cell<i32>,
    said: RefCell<String>,
}

/// Makes `form` answer on every change; idempotent.
pub fn attach(form: HtmlFormElement) -> Result<(), JsValue> {
    if DESKS.with_borrow(|all| all.iter().any(|desk| desk.form == form)) {
        return Ok(());
    }
    let window = web_sys::window().ok_or("no window")?;
    let document = window.document().ok_or("no document")?;
    let mut words = Vec::new();
    for list in all(&form, "template[data-units]").into_iter().filter_map(content) {
        for word in all(&list, "data[value]") {
            let code = word.get_attribute("value").unwrap_or_default();
            words.push((code, word.text_content().unwrap_or_default()));
        }
    }
    let status = match first(&form, "template[data-say]") {
        None => None,
        Some(_) => {
            let region = document.create_element("p")?;
            region.set_attribute("role", "status")?;
            form.append_child(&region)?;
            Some(region)
        }
    };
    let desk = Rc::new(Desk {
        signs: signs(&form),
        form,
        window,
        document,
        words,
        left: RefCell::default(),
        before: RefCell::default(),
        rows: RefCell::default(),
        status,
        timer: Cell::new(0),
        said: RefCell::default(),
    });
    for kind in ["input", "change", "focusout", "click", "submit"] {
        desk.on(&desk.form, kind, Desk::happened)?;
    }
    desk.on(&desk.window, "hashchange", |desk, _| desk.open_address())?;
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
        target.add_event_listener_with_callback(kind, listen.as_ref().unchecked_ref())?;
        listen.forget(); // The form keeps it, for as long as the page stands.
        Ok(())
    }

    fn happened(self: &Rc<Self>, event: &Event) -> Result<(), JsValue> {
        let Some(target) = event.target().and_then(|t| t.dyn_into::<Element>().ok()) else {
            return Ok(());
        };
        match event.type_().as_str() {
            "click" => return self.clicked(event, &target),
            "submit" => {
                event.prevent_default();
                let goal = self.form.get_attribute("action").unwrap_or_default();
                if let Some(goal) = first(&self.form, &goal) {
                    goal.unchecked_into::<HtmlElement>().focus()?;
                }
                return Ok(());
            }
            "focusout" => {
                let name = target.get_attribute("name").unwrap_or_default();
                self.left.borrow_mut().push(name);
            }
            _ => *self.before.borrow_mut() = None,
        }
        self.refresh()
    }

    fn clicked(self: &Rc<Self>, event: &Event, target: &Element) -> Result<(), JsValue> {
        if let Some(link) = target.closest("a[href^='#sw1&']")? {
            event.prevent_default();
            return self.open(&link.get_attribute("href").unwrap_or_default());
        }
        let Some(button) = target.closest("[data-act]")? else {
            return Ok(());
        };
        match button.get_attribute("data-act").unwrap_or_default().as_str() {
            "print" => self.window.print(),
            "clear" => {
                let before = self.typed();
                self.form.reset();
                self.left.borrow_mut().clear();
                *self.before.borrow_mut() = Some(before);
                self.refresh()
            }
            "undo" => match self.before.take() {
                None => Ok(()),
                Some(form) => self.set(&form),
            },
            _ => Ok(()),
        }
    }

    /// Opens the link that the page itself was opened with, if it is one.
    fn open_address(self: &Rc<Self>) -> Result<(), JsValue> {
        let address = self.window.location().hash()?;
        if address.starts_with(LINK) { self.open(&address) } else { Ok(()) }
    }

    fn open(self: &Rc<Self>, link: &str) -> Result<(), JsValue> {
        let Some(parts) = link.strip_prefix(LINK) else {
            return Ok(());
        };
        let parts = web_sys::UrlSearchParams::new_with_str(parts)?;
        let form = Form::from_pairs(&parts);
        let before = self.typed();
        self.form.reset();
        self.set(&form)?;
        if !before.is_blank() {
            *self.before.borrow_mut() = Some(before);
        }
        self.refresh()
    }

    /// Puts texts into the fields of their names; a name the page has no field for is left.
    fn set(self: &Rc<Self>, form: &Form) -> Result<(), JsValue> {
        let fields = self.form.elements();
        for (name, text) in &form.0 {
            if let Some(field) = fields.get_with_name(name) {
                js_sys::Reflect::set(
                    &named(&fields, name).unwrap_or(field.into()),
                    &"value".into(),
                    &text.into(),
                )?;
                self.left.borrow_mut().push(name.clone());
            }
        }
        self.refresh()
    }

    /// The form as typed.
    fn typed(&self) -> Form {
        web_sys::FormData::new_with_form(&self.form).map_or(Form::default(), |data| Form::from_pairs(&data))
    }

    fn refresh(self: &Rc<Self>) -> Result<(), JsValue> {
        let mut form = self.typed();
        form.0.extend(self.signs.iter().cloned());
        let mut answer = answer(&form);
        if self.before.borrow().is_some() {
            answer.say("can.undo");
        }
        self.outputs(&self.form, "output[name]:not([data-fault] *, [data-row] *)", &answer);
        self.conditions(&self.form, &answer)?;
        self.rows(&answer)?;
        self.faults(&answer)?;
        self.speak(&answer)
    }

    fn text(&self, shown: &Shown) -> String {
        match shown.unit {
            None => shown.text.clone(),
            Some(code) => {
                let word = self.words.iter().find(|(c, _)| c == code).map_or(code, |(_, word)| word);
                joined(&[&shown.text, "\u{a0}", word])
            }
        }
    }

    fn outputs(&self, within: &Node, selector: &str, answer: &Answer) {
        for output in all(within, selector) {
            let name = output.get_attribute("name").unwrap_or_default();
            write(&output, &answer.output(&name).map_or("–".into(), |shown| self.text(shown)));
        }
    }

    /// Shows what `data-when` says: every state named must hold, every one behind `!` must not.
    fn conditions(&self, within: &Node, answer: &Answer) -> Result<(), JsValue> {
        for element in all(within, "[data-when]") {
            let when = element.get_attribute("data-when").unwrap_or_default();
            let show = when.split(' ').all(|state| match state.strip_prefix('!') {
                Some(state) => !answer.holds(state),
                None => answer.holds(state),
            });
            hide(&element, !show);
        }
        Ok(())
    }

    /// One copy of a `data-each` template a row, before the template.
    fn rows(&self, answer: &Answer) -> Result<(), JsValue> {
        let mut shown = self.rows.borrow_mut();
        for template in all(&self.form, "template[data-each]") {
            let list = template.get_attribute("data-each").unwrap_or_default();
            let rows = answer.rows.iter().find(|(name, _)| *name == list).map_or(&[][..], |(_, rows)| rows);
            if shown.iter().map(|(row, _)| row).eq(rows) {
                continue;
            }
            for element in shown.drain(..).flat_map(|(_, elements)| elements) {
                element.remove();
            }
            for row in rows {
                let copy = content(template.clone()).ok_or("not a template")?.clone_node_with_deep(true)?;
                for output in all(&copy, "output[name]") {
                    let name = output.get_attribute("name").unwrap_or_default();
                    let cell = row.iter().find(|(n, _)| *n == name);
                    write(&output, &cell.map_or("–".into(), |(_, shown)| self.text(shown)));
                }
                let children = copy.unchecked_ref::<DocumentFragment>().children();
                let elements: Vec<_> = (0..children.length()).filter_map(|i| children.item(i)).collect();
                for element in &elements {
                    element.set_attribute("data-row", "")?;
                }
                template
                    .parent_node()
                    .ok_or("a template stands nowhere")?
                    .insert_before(&copy, Some(&template))?;
                shown.push((row.clone(), elements));
            }
        }
        Ok(())
    }

    /// The message of each fault, once its field was left; and `aria-invalid` on the field.
    fn faults(&self, answer: &Answer) -> Result<(), JsValue> {
        let left = self.left.borrow();
        let due = |field: &str, code: &str| {
            // A number whose unit is still to be chosen is no mistake until the unit was passed by.
            let name = if code == "no-unit" { crate::field::unit_of(field) } else { field };
            left.iter().any(|n| n == name)
        };
        let standing: Vec<_> = answer.faults.iter().filter(|f| due(f.field, f.code)).collect();
        for place in all(&self.form, "[data-fault]:not(template)") {
            let of = place.get_attribute("data-fault").unwrap_or_default();
            let (field, code) = of.split_once(':').unwrap_or((&of, ""));
            let fault = standing.iter().find(|f| f.field == field && (code.is_empty() || f.code == code));
            let Some(fault) = fault else {
                hide(&place, true);
                continue;
            };
            if code.is_empty() {
                let own = ["[data-fault='", field, ":", fault.code, "']"].concat();
                let general = ["template[data-fault='*:", fault.code, "']"].concat();
                let message = first(&self.form, &general).and_then(content);
                let (Some(message), None) = (message, first(&self.form, &own)) else {
                    hide(&place, true);
                    continue;
                };
                if place.get_attribute("data-code").as_deref() != Some(fault.code) {
                    place.set_text_content(None);
                    place.append_child(&message.clone_node_with_deep(true)?)?;
                    place.set_attribute("data-code", fault.code)?;
                }
            }
            for output in all(&place, "output[name]") {
                let limit = |i: usize| fault.limits.as_ref().map(|limits| self.text(&limits[i]));
                let text = match output.get_attribute("name").unwrap_or_default().as_str() {
                    "low" => limit(0),
                    "high" => limit(1),
                    "other" => fault.other.as_ref().map(|x| self.text(x)),
                    _ => Some(fault.got.clone()),
                };
                write(&output, &text.unwrap_or_default());
            }
            hide(&place, false);
        }
        for field in all(&self.form, "input[name], select[name]") {
            let name = field.get_attribute("name").unwrap_or_default();
            if standing.iter().any(|f| f.field == name) {
                field.set_attribute("aria-invalid", "true")?;
            } else {
                field.remove_attribute("aria-invalid")?;
            }
        }
        Ok(())
    }

    /// Says the sentence of `data-say` when it is new, after a rest.
    fn speak(self: &Rc<Self>, answer: &Answer) -> Result<(), JsValue> {
        let Some(sentence) = first(&self.form, "template[data-say]").and_then(content) else {
            return Ok(());
        };
        let copy = self.document.create_element("p")?;
        copy.append_child(&sentence.clone_node_with_deep(true)?)?;
        self.outputs(&copy, "output[name]", answer);
        self.conditions(&copy, answer)?;
        for silent in all(&copy, "[hidden]") {
            silent.remove();
        }
        let sentence = copy.text_content().unwrap_or_default();
        self.window.clear_timeout_with_handle(self.timer.get());
        let desk = self.clone();
        let say = Closure::once_into_js(move || {
            if *desk.said.borrow() != sentence {
                desk.status.iter().for_each(|region| region.set_text_content(Some(&sentence)));
                *desk.said.borrow_mut() = sentence;
            }
        });
        let timer = self
            .window
            .set_timeout_with_callback_and_timeout_and_arguments_0(say.unchecked_ref(), PAUSE_MS)?;
        self.timer.set(timer);
        Ok(())
    }
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

/// All radio buttons of a name as one, or the field of that name.
fn named(fields: &web_sys::HtmlCollection, name: &str) -> Option<JsValue> {
    let get: js_sys::Function = js_sys::Reflect::get(fields, &"namedItem".into()).ok()?.dyn_into().ok()?;
    get.call1(fields, &name.into()).ok().filter(|found| !found.is_null())
}

fn write(output: &Element, text: &str) {
    if output.text_content().as_deref() != Some(text) {
        output.set_text_content(Some(text));
    }
}

fn hide(element: &Element, hidden: bool) {
    if element.has_attribute("hidden") != hidden {
        let _ = element.toggle_attribute_with_force("hidden", hidden);
    }
}

/// Elements within a node that match, in their order; none for a selector that means nothing.
fn all(within: &Node, selector: &str) -> Vec<Element> {
    let list = match within.dyn_ref::<Element>() {
        Some(element) => element.query_selector_all(selector),
        None => within.unchecked_ref::<DocumentFragment>().query_selector_all(selector),
    };
    let mut found = Vec::new();
    if let Ok(list) = list {
        for i in 0..list.length() {
            found.extend(list.get(i).map(JsCast::unchecked_into::<Element>));
        }
    }
    found
}

fn first(within: &Node, selector: &str) -> Option<Element> {
    all(within, selector).into_iter().next()
}

/// What a template holds.
fn content(template: Element) -> Option<DocumentFragment> {
    Some(template.dyn_ref::<HtmlTemplateElement>()?.content())
}
