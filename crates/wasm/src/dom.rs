//! Who writes on the page? Outputs and rows by name, `hidden` by state, messages by fault.
//!
//! Nothing else is changed: no HTML, class or style is written, and no word comes from here.

use crate::answer::{Answer, Line, Row, Shown, joined};
use crate::number::Signs;
use crate::unit::Unit;
use std::cell::RefCell;
use wasm_bindgen::prelude::*;
use web_sys::{DocumentFragment, Element, HtmlFormElement, HtmlTemplateElement, Node};

/// What writes on one form.
pub struct Pen {
    form: HtmlFormElement,
    /// UCUM code and word, as the page has them.
    words: Vec<(String, String)>,
    signs: Signs,
    /// The rows that stand on the page.
    rows: RefCell<Vec<(&'static str, Vec<Line>)>>,
}

impl Pen {
    /// For a form, with the words for units that stand in it.
    pub fn new(form: HtmlFormElement, signs: Signs) -> Self {
        let mut words = Vec::new();
        for list in all(&form, "template[data-units], template[data-gates]").into_iter().filter_map(content) {
            for word in all(&list, "data[value]") {
                let code = word.get_attribute("value").unwrap_or_default();
                words.push((code, word.text_content().unwrap_or_default()));
            }
        }
        Self { form, words, signs, rows: RefCell::default() }
    }

    /// Writes an answer.
    pub fn write(&self, answer: &Answer) -> Result<(), JsValue> {
        self.outputs(&self.form, "output[name]:not([data-fault] *, [data-row] *)", &answer.outputs);
        conditions(&self.form, |state| answer.holds(state));
        self.rows(answer)?;
        self.marks(answer)?;
        self.shapes(answer)?;
        self.faults(answer)
    }

    /// Numbers, in the drawings' own geometry: `data-left` to `data-right` is the scale.
    fn marks(&self, answer: &Answer) -> Result<(), JsValue> {
        for drawing in all(&self.form, "svg[data-scale]") {
            let edge = |name: &str| -> f64 {
                drawing.get_attribute(name).and_then(|text| text.parse::<u16>().ok()).unwrap_or(0).into()
            };
            let (left, right) = (edge("data-left"), edge("data-right"));
            let place = |part: f64| (left + part * (right - left)).round() as u32;
            for mark in all(&drawing, "[data-mark]") {
                let name = mark.get_attribute("data-mark").unwrap_or_default();
                let Some((_, ends)) = answer.marks.iter().find(|(n, _)| *n == name) else { continue };
                let [from, to] = ends.map(place);
                let geometry = match mark.tag_name().as_str() {
                    "rect" => [("x", from), ("width", to.saturating_sub(from).max(1))],
                    "line" => [("x1", from), ("x2", to)],
                    _ => [("x", from), ("x", from)],
                };
                for (attribute, x) in geometry {
                    mark.set_attribute(attribute, &x.to_string())?;
                }
            }
        }
        Ok(())
    }

    /// Drawings whose parts come whole: paths, and labels with their places. What is not told is not there.
    fn shapes(&self, answer: &Answer) -> Result<(), JsValue> {
        for part in all(&self.form, "svg [data-shape]") {
            let name = part.get_attribute("data-shape").unwrap_or_default();
            let shape = answer.shapes.iter().find(|(n, _)| *n == name).map_or("", |(_, shape)| shape);
            if part.tag_name() == "path" {
                part.set_attribute("d", shape)?;
            } else {
                part.set_attribute("transform", shape)?;
                set_text(&part, &answer.output(&name).map_or(String::new(), |shown| self.text(shown)));
            }
        }
        Ok(())
    }

    /// So many lines of the log, each a copy of the page's template for one.
    pub fn lines(&self, count: usize) -> Result<(), JsValue> {
        let Some(template) = first(&self.form, "template[data-lines]") else { return Ok(()) };
        let (Some(line), Some(parent)) = (content(template.clone()), template.parent_node()) else {
            return Ok(());
        };
        let there = all(&self.form, "[data-line]");
        there.iter().skip(count).for_each(Element::remove);
        for n in there.len() + 1..=count {
            let n = n.to_string();
            let copy = line.clone_node_with_deep(true)?;
            for element in all(&copy, "*") {
                // What has the line's number in it, where the template says N.
                for attribute in ["name", "value", "id", "for", "aria-describedby", "data-when", "data-fault"]
                {
                    if let Some(value) = element.get_attribute(attribute) {
                        element.set_attribute(attribute, &value.replace('N', &n))?;
                    }
                }
                if element.has_attribute("data-n") {
                    element.set_text_content(Some(&n));
                }
            }
            if let Some(first) = copy.unchecked_ref::<DocumentFragment>().children().item(0) {
                first.set_attribute("data-line", &n)?;
            }
            parent.insert_before(&copy, Some(&template))?;
        }
        Ok(())
    }

    /// What a template of the form says of an answer, as text.
    pub fn sentence(&self, template: &str, answer: &Answer) -> Option<String> {
        let copy = content(first(&self.form, template)?)?.clone_node_with_deep(true).ok()?;
        self.outputs(&copy, "output[name]", &answer.outputs);
        conditions(&copy, |state| answer.holds(state));
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
        let moment = js_sys::Date::new(&joined(&[text, if timed { "Z" } else { "" }]).into());
        let lang = self.form.closest("[lang]").ok().flatten().and_then(|e| e.get_attribute("lang"));
        let style = js_sys::Object::new();
        let more = if timed { ("timeStyle", "short") } else { ("timeZone", "UTC") };
        for (key, value) in [("dateStyle", "medium"), more] {
            let _ = js_sys::Reflect::set(&style, &key.into(), &value.into());
        }
        moment.to_locale_string(&lang.unwrap_or_default(), &style).into()
    }

    fn outputs(&self, within: &Node, selector: &str, shown: &Row) {
        for output in all(within, selector) {
            let name = output.get_attribute("name").unwrap_or_default();
            let found = shown.iter().find(|(n, _)| *n == name);
            let text =
                found.map(|(_, shown)| self.text(self.in_unit(&output, shown).as_ref().unwrap_or(shown)));
            set_text(&output, &text.unwrap_or("–".into()));
        }
    }

    /// In the unit that the author has settled for an output, if that measures the same.
    fn in_unit(&self, output: &Element, shown: &Shown) -> Option<Shown> {
        let code = output.get_attribute("data-unit")?;
        let (x, unit) = shown.number?;
        Some(Shown::of(x, Unit::find(unit?.kind, &code)?, self.signs))
    }

    /// One copy of a `data-each` template a row, before the template.
    fn rows(&self, answer: &Answer) -> Result<(), JsValue> {
        if *self.rows.borrow() == answer.rows {
            return Ok(());
        }
        all(&self.form, "[data-row]").iter().for_each(Element::remove);
        for template in all(&self.form, "template[data-each]") {
            let (Some(row), Some(parent)) = (content(template.clone()), template.parent_node()) else {
                continue;
            };
            let list = template.get_attribute("data-each").unwrap_or_default();
            for shown in answer.rows.iter().filter(|(name, _)| *name == list).flat_map(|(_, rows)| rows) {
                let copy = row.clone_node_with_deep(true)?;
                self.outputs(&copy, "output[name]", &shown.cells);
                conditions(&copy, |state| state == shown.state || answer.holds(state));
                let children = copy.unchecked_ref::<DocumentFragment>().children();
                for i in 0..children.length() {
                    children.item(i).map_or(Ok(()), |child| child.set_attribute("data-row", ""))?;
                }
                parent.insert_before(&copy, Some(&template))?;
            }
        }
        self.rows.replace(answer.rows.clone());
        Ok(())
    }

    /// The message of each fault, and `aria-invalid` on the field.
    fn faults(&self, answer: &Answer) -> Result<(), JsValue> {
        for place in all(&self.form, "[data-fault]:not(template)") {
            let of = place.get_attribute("data-fault").unwrap_or_default();
            let (field, code) = of.split_once(':').unwrap_or((&of, ""));
            let fault =
                answer.faults.iter().find(|f| f.field == field && (code.is_empty() || f.code == code));
            hide(&place, fault.is_none());
            let Some(fault) = fault else { continue };
            if code.is_empty() {
                let own = joined(&["[data-fault='", field, ":", fault.code, "']"]);
                let general = joined(&["template[data-fault='*:", fault.code, "']"]);
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
                set_text(&output, &text.unwrap_or_default());
            }
        }
        for field in all(&self.form, "input[name], select[name]") {
            let name = field.get_attribute("name").unwrap_or_default();
            if answer.faults.iter().any(|f| f.field == name) {
                field.set_attribute("aria-invalid", "true")?;
            } else {
                field.remove_attribute("aria-invalid")?;
            }
        }
        Ok(())
    }
}

/// Shows what `data-when` says: every state named must hold, every one behind `!` must not.
fn conditions(within: &Node, holds: impl Fn(&str) -> bool) {
    for element in all(within, "[data-when]:not([data-row], [data-row] *)") {
        let when = element.get_attribute("data-when").unwrap_or_default();
        let show = when.split(' ').all(|state| match state.strip_prefix('!') {
            Some(state) => !holds(state),
            None => holds(state),
        });
        hide(&element, !show);
    }
}

fn set_text(output: &Element, text: &str) {
    if output.text_content().as_deref() != Some(text) {
        output.set_text_content(Some(text));
    }
}

/// Hides an element, or shows it.
pub fn hide(element: &Element, hidden: bool) {
    if element.has_attribute("hidden") != hidden {
        let _ = element.toggle_attribute_with_force("hidden", hidden);
    }
}

/// Elements within a node that match, in their order; none for a selector that means nothing.
pub fn all(within: &Node, selector: &str) -> Vec<Element> {
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

/// The first of them.
pub fn first(within: &Node, selector: &str) -> Option<Element> {
    all(within, selector).into_iter().next()
}

/// What a template holds.
pub fn content(template: Element) -> Option<DocumentFragment> {
    Some(template.dyn_ref::<HtmlTemplateElement>()?.content())
}
