//! Which parts of the page are open? A closed one that is a template is not in the document, and its fields count all
//! the same.
//!
//! What such a part holds lies, while it is closed, in a form of its own that no document has: there its fields keep
//! what was typed, can be reset, and are radio groups still.

use crate::elements::{all, attribute, content, first, focus, hide, set_attribute, toggle};
use form::embed_options::listed;
use form::text::joined;
use wasm_bindgen::prelude::*;
use web_sys::{Document, Element, HtmlFormElement, Node};

const PART: &str = "data-part";
const TEMPLATES: &str = "template[data-part]";
/// What the link leaves out, and not the author.
const LEFT_OUT: &str = "data-left-out";

/// The parts of one form.
pub struct Parts {
    form: HtmlFormElement,
    parts: Vec<Part>,
}

/// A part that is a template.
struct Part {
    name: String,
    template: Element,
    /// What it holds, be it open or closed.
    nodes: Vec<Node>,
    /// Where that lies while it is closed.
    closed: HtmlFormElement,
}

impl Part {
    fn is_open(&self) -> bool {
        self.nodes.first().is_some_and(|node| node.parent_node().as_ref() != Some(&self.closed))
    }

    /// Puts all it holds in front of its template, or back.
    fn open(&self, open: bool) -> Result<(), JsValue> {
        for node in &self.nodes {
            match self.template.parent_node().filter(|_| open) {
                Some(parent) => parent.insert_before(node, Some(&self.template))?,
                None => self.closed.append_child(node)?,
            };
        }
        Ok(())
    }
}

impl Parts {
    /// Of a form; all that are templates are closed.
    pub fn of(form: &HtmlFormElement, document: &Document) -> Result<Self, JsValue> {
        let mut parts = Vec::new();
        let mut within: Vec<HtmlFormElement> = vec![form.clone()];
        while let Some(form) = within.pop() {
            for template in all(&form, TEMPLATES) {
                let Some(content) = content(&template) else { continue };
                let closed: HtmlFormElement = document.create_element("form")?.unchecked_into();
                closed.append_child(&content)?;
                let children = closed.child_nodes();
                let mut nodes = Vec::new();
                for at in 0..children.length() {
                    nodes.extend(children.get(at));
                }
                parts.push(Part {
                    name: attribute(&template, PART),
                    template,
                    nodes,
                    closed: closed.clone(),
                });
                within.push(closed);
            }
        }
        Ok(Self { form: form.clone(), parts })
    }

    /// The form, and what is closed.
    pub fn forms(&self) -> Vec<HtmlFormElement> {
        let mut forms = vec![self.form.clone()];
        for part in self.parts.iter().filter(|part| !part.is_open()) {
            forms.push(part.closed.clone());
        }
        forms
    }

    /// Elements in the form or in a closed part of it.
    pub fn all(&self, selector: &str) -> Vec<Element> {
        let mut found = all(&self.form, selector);
        for part in self.parts.iter().filter(|part| !part.is_open()) {
            found.extend(all(&part.closed, selector));
        }
        found
    }

    /// The first of them.
    pub fn first(&self, selector: &str) -> Option<Element> {
        self.all(selector).into_iter().next()
    }

    /// Puts every field back to what the page begins with.
    pub fn reset(&self) {
        self.forms().iter().for_each(HtmlFormElement::reset);
    }

    /// Opens the parts of a name, or closes them. What stands in the document is shown or hidden, or unfolded and folded.
    pub fn open(&self, name: &str, open: bool) -> Result<(), JsValue> {
        for part in self.parts.iter().filter(|part| part.name == name) {
            if part.is_open() != open && !(open && part.template.has_attribute(LEFT_OUT)) {
                part.open(open)?;
            }
        }
        for place in &all(&self.form, &selector(":not(template)[data-part='", name)) {
            match place.tag_name().as_str() {
                "DETAILS" => toggle(place, "open", open),
                _ if !place.has_attribute(LEFT_OUT) => hide(place, !open),
                _ => {}
            }
        }
        for button in &self.all(&selector("[data-act='expand'][value='", name)) {
            set_attribute(button, "aria-expanded", if open { "true" } else { "false" });
        }
        // Whoever closed it from within stands where it can be opened again.
        match first(&self.form, &selector("[data-act='expand'][value='", name)).filter(|_| !open) {
            Some(button) => focus(&button),
            None => Ok(()),
        }
    }

    /// Opens what hides an element of this form, or of a closed part.
    pub fn reveal(&self, selector: &str) -> Result<Option<Element>, JsValue> {
        for part in &self.parts {
            if !part.is_open() && first(&part.closed, selector).is_some() {
                self.open(&part.name, true)?;
            }
        }
        Ok(first(&self.form, selector))
    }

    /// Leaves out the parts that are not in the list: what was left out for another list is there again.
    pub fn leave_out(&self, only: &str) -> Result<(), JsValue> {
        for part in &self.all("[data-part]") {
            if !only.is_empty() && !listed(only, &attribute(part, PART)) {
                leave(part);
            }
        }
        for part in self.parts.iter().filter(|part| part.is_open() && part.template.has_attribute(LEFT_OUT)) {
            part.open(false)?;
        }
        Ok(())
    }

    /// Shows again what was left out.
    pub fn take_in(&self) {
        for part in &self.all("[data-left-out]") {
            toggle(part, LEFT_OUT, false);
            hide(part, false);
        }
    }

    /// Puts what the templates hold back into them.
    pub fn give_back(&self) -> Result<(), JsValue> {
        for part in &self.parts {
            let Some(content) = content(&part.template) else { continue };
            for node in &part.nodes {
                content.append_child(node)?;
            }
        }
        Ok(())
    }
}

/// Hides what the link leaves out, and remembers that it was not the author who did.
pub fn leave(part: &Element) {
    if !part.has_attribute("hidden") {
        toggle(part, LEFT_OUT, true);
        hide(part, true);
    }
}

/// A selector that ends in a name.
fn selector(begin: &str, name: &str) -> String {
    joined(&[begin, name, "']"])
}
