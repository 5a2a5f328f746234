//! Who writes on the page? Outputs and rows by name, `hidden` by state, messages by fault.
//!
//! Nothing else is changed: no HTML, class or style is written, and no word comes from here.

use crate::bindings::{Bindings, When, drawn};
use crate::elements::{all, attribute, content, first, hide, name, set_attribute, set_text};
use crate::environment::language;
use form::answer::{Answer, Line, Row, Shown};
use form::contract::units::Unit;
use form::contract::{InFault, List, State};
use form::read::number::Signs;
use form::text::joined;
use std::cell::{OnceCell, RefCell};
use wasm_bindgen::prelude::*;
use web_sys::{DocumentFragment, Element, HtmlFormElement, Node};

/// What writes on one form.
pub struct Renderer {
    form: HtmlFormElement,
    /// UCUM code and word, as the page has them.
    words: Vec<(String, String)>,
    signs: Signs,
    /// How a day and a moment are written, once it has been asked for.
    formats: [OnceCell<js_sys::Function>; 2],
    /// The rows that stand on the page.
    rows: RefCell<Vec<(List, Vec<Line>)>>,
    /// Where all else is written, and what stands there.
    bindings: RefCell<Option<Bindings>>,
}

impl Renderer {
    /// For a form, with the words for units that stand in it.
    pub fn new(form: HtmlFormElement, signs: Signs) -> Self {
        let mut words = Vec::new();
        for list in all(&form, "template[data-units], template[data-gates]").iter().filter_map(content) {
            for word in &all(&list, "data[value]") {
                let code = attribute(word, "value");
                words.push((code, word.text_content().unwrap_or_default()));
            }
        }
        Self {
            form,
            words,
            signs,
            formats: Default::default(),
            rows: RefCell::default(),
            bindings: RefCell::default(),
        }
    }

    /// Writes what is new in an answer.
    pub fn write(&self, answer: &Answer) -> Result<(), JsValue> {
        let known = self.bindings.take().filter(Bindings::hold);
        let mut bindings = known.unwrap_or_else(|| Bindings::find(&self.form));
        for output in &mut bindings.outputs {
            let found = output.output.and_then(|output| answer.shown(output));
            if output.shown.as_ref().is_none_or(|shown| shown.as_ref() != found) {
                self.show(&output.element, found);
                output.shown = Some(found.cloned());
            }
        }
        let is_new =
            |same: fn(&Answer, &Answer) -> bool| bindings.written.as_ref().is_none_or(|w| !same(w, answer));
        let states_changed = is_new(|a, b| a.states == b.states);
        if states_changed {
            for place in &bindings.waiting {
                hide(&place.element, !place.when.fits(|state| answer.is(state)));
            }
        }
        self.rows(answer, states_changed)?;
        if is_new(|a, b| a.marks == b.marks) {
            self.marks(answer);
        }
        if is_new(|a, b| a.shapes == b.shapes && drawn(a) == drawn(b)) {
            self.shapes(answer);
        }
        if is_new(|a, b| a.faults == b.faults) {
            self.faults(answer)?;
        }
        bindings.remember(answer.clone());
        self.bindings.replace(Some(bindings));
        Ok(())
    }

    /// Somebody else has written on the page, or will.
    pub fn forget(&self) {
        self.bindings.take();
    }

    /// Numbers, in the drawings' own geometry: `data-left` to `data-right` is the scale.
    fn marks(&self, answer: &Answer) {
        for drawing in &all(&self.form, "svg[data-scale]") {
            let edge = |name: &str| -> f64 {
                drawing.get_attribute(name).and_then(|text| text.parse::<u16>().ok()).unwrap_or(0).into()
            };
            let (left, right) = (edge("data-left"), edge("data-right"));
            let place = |part: f64| (left + part * (right - left)).round() as u32;
            for mark in &all(drawing, "[data-mark]") {
                let name = attribute(mark, "data-mark");
                let Some((_, ends)) = answer.marks.iter().find(|(mark, _)| mark.name() == name) else {
                    continue;
                };
                let (from, to) = (place(ends[0]), place(ends[1]));
                let geometry = match mark.tag_name().as_str() {
                    "rect" => [("x", from), ("width", to.saturating_sub(from).max(1))],
                    "line" => [("x1", from), ("x2", to)],
                    _ => [("x", from), ("x", from)],
                };
                for (attribute, x) in geometry {
                    set_attribute(mark, attribute, &x.to_string());
                }
            }
        }
    }

    /// Drawings whose parts come whole: paths, and labels with their places. What is not told is not there.
    fn shapes(&self, answer: &Answer) {
        for part in &all(&self.form, "svg [data-shape]") {
            let name = attribute(part, "data-shape");
            let drawn = answer.shapes.iter().find(|(part, _)| part.name() == name);
            let shape = drawn.map_or("", |(_, shape)| shape);
            if part.tag_name() == "path" {
                set_attribute(part, "d", shape);
            } else {
                set_attribute(part, "transform", shape);
                let label = drawn.and_then(|(part, _)| answer.shown(part.label()?));
                set_text(part, &label.map_or(String::new(), |shown| self.text(shown)));
            }
        }
    }

    /// What a template of the form says of an answer, as text.
    pub fn sentence(&self, template: &str, answer: &Answer) -> Option<String> {
        let copy = content(&first(&self.form, template)?)?.clone_node_with_deep(true).ok()?;
        self.outputs(&copy, &answer.outputs);
        conditions(&copy, |state| answer.is(state));
        all(&copy, "[hidden]").iter().for_each(Element::remove);
        copy.text_content()
    }

    fn text(&self, shown: &Shown) -> String {
        match shown.unit {
            None => shown.text.clone(),
            Some("moment") => self.moment(&shown.text, true),
            Some("day") => self.moment(&shown.text, false),
            Some(code) => {
                let word = self.words.iter().find(|(c, _)| c == code).map_or(code, |(_, word)| word);
                let space = if shown.text.is_empty() { "" } else { "\u{a0}" };
                joined(&[&shown.text, space, word])
            }
        }
    }

    /// A moment in the page's language and this place's time; or a day, which is the same everywhere.
    fn moment(&self, text: &str, timed: bool) -> String {
        let format = self.formats[usize::from(timed)].get_or_init(|| {
            let style = js_sys::Object::new();
            let more = if timed { ("timeStyle", "short") } else { ("timeZone", "UTC") };
            for (key, value) in [("dateStyle", "medium"), more] {
                let _ = js_sys::Reflect::set(&style, &key.into(), &value.into());
            }
            js_sys::Intl::DateTimeFormat::new(&language(&self.form), &style).format()
        });
        let moment = js_sys::Date::new(&joined(&[text, if timed { "Z" } else { "" }]).into());
        format.call1(&JsValue::NULL, &moment).ok().and_then(|text| text.as_string()).unwrap_or_default()
    }

    fn outputs(&self, within: &Node, shown: &Row) {
        for output in &all(within, "output[name]") {
            let name = name(output);
            self.show(
                output,
                shown.iter().find(|(output, _)| output.is_called(&name)).map(|(_, shown)| shown),
            );
        }
    }

    /// In an output; a dash where there is nothing to show.
    fn show(&self, output: &Element, shown: Option<&Shown>) {
        let text = shown.map(|shown| self.text(self.in_unit(output, shown).as_ref().unwrap_or(shown)));
        set_text(output, &text.unwrap_or("–".into()));
    }

    /// In the unit that the author has settled for an output, if that measures the same.
    fn in_unit(&self, output: &Element, shown: &Shown) -> Option<Shown> {
        let code = output.get_attribute("data-unit")?;
        let (x, unit) = shown.number?;
        Some(Shown::of(x, Unit::find(unit?.kind, &code)?, self.signs))
    }

    /// One copy of a `data-each` template a row, before the template. Only lists that have changed are made anew, or
    /// all where what they wait for may have.
    fn rows(&self, answer: &Answer, states_changed: bool) -> Result<(), JsValue> {
        let there = self.rows.replace(answer.rows.clone());
        let has_changed = |list: &str| states_changed || lines(&there, list) != lines(&answer.rows, list);
        let list_of = |element: &Element, attribute| {
            Some(element.get_attribute(attribute).unwrap_or_default()).filter(|list| has_changed(list))
        };
        if !states_changed && there == answer.rows {
            return Ok(());
        }
        for row in &all(&self.form, "[data-row]") {
            if list_of(row, "data-row").is_some() {
                row.remove();
            }
        }
        for template in &all(&self.form, "template[data-each]") {
            let Some(list) = list_of(template, "data-each") else { continue };
            let (Some(row), Some(parent)) = (content(template), template.parent_node()) else {
                continue;
            };
            for shown in lines(&answer.rows, &list) {
                let copy = row.clone_node_with_deep(true)?;
                self.outputs(&copy, &shown.cells);
                conditions(&copy, |state| Some(state) == shown.state || answer.is(state));
                let children = copy.unchecked_ref::<DocumentFragment>().children();
                for i in 0..children.length() {
                    if let Some(child) = children.item(i) {
                        set_attribute(&child, "data-row", &list);
                    }
                }
                parent.insert_before(&copy, Some(template))?;
            }
        }
        Ok(())
    }

    /// The message of each fault, and `aria-invalid` on the field.
    fn faults(&self, answer: &Answer) -> Result<(), JsValue> {
        let mut faults = Vec::new();
        for fault in &answer.faults {
            faults.push((fault, fault.field.name()));
        }
        for place in &all(&self.form, "[data-fault]:not(template)") {
            let of = attribute(place, "data-fault");
            let (field, code) = of.split_once(':').unwrap_or((&of, ""));
            let fault =
                faults.iter().find(|(f, name)| name == field && (code.is_empty() || f.code.name() == code));
            hide(place, fault.is_none());
            let Some((fault, _)) = fault else { continue };
            if code.is_empty() {
                let own = joined(&["[data-fault='", field, ":", fault.code.name(), "']"]);
                let general = joined(&["template[data-fault='*:", fault.code.name(), "']"]);
                let message = first(&self.form, &general).and_then(|message| content(&message));
                let (Some(message), None) = (message, first(&self.form, &own)) else {
                    hide(place, true);
                    continue;
                };
                if place.get_attribute("data-code").as_deref() != Some(fault.code.name()) {
                    place.set_text_content(None);
                    place.append_child(&message.clone_node_with_deep(true)?)?;
                    set_attribute(place, "data-code", fault.code.name());
                }
            }
            for output in &all(place, "output[name]") {
                let limit = |i: usize| fault.limits.as_ref().map(|limits| self.text(&limits[i]));
                let text = match InFault::find(&name(output)) {
                    Some(InFault::Low) => limit(0),
                    Some(InFault::High) => limit(1),
                    Some(InFault::Other) => fault.other.as_ref().map(|x| self.text(x)),
                    _ => Some(fault.got.clone()),
                };
                set_text(output, &text.unwrap_or_default());
            }
        }
        for field in &all(&self.form, "input[name], select[name]") {
            let name = name(field);
            if faults.iter().any(|(_, at_fault)| *at_fault == name) {
                set_attribute(field, "aria-invalid", "true");
            } else {
                field.remove_attribute("aria-invalid")?;
            }
        }
        Ok(())
    }
}

/// The lines of one list.
fn lines<'a>(rows: &'a [(List, Vec<Line>)], list: &str) -> &'a [Line] {
    rows.iter().find(|(of, _)| of.name() == list).map_or(&[], |(_, lines)| lines)
}

/// Shows what `data-when` says.
fn conditions(within: &Node, holds: impl Fn(State) -> bool) {
    for element in &all(within, "[data-when]") {
        hide(element, !When::of(&attribute(element, "data-when")).fits(&holds));
    }
}
