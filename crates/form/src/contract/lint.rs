//! Which names on a page does this edition not know?

use super::names::{self, is_listed};

/// Who calls what by a name, in which attribute, and is it known?
#[derive(Debug)]
pub struct Place {
    /// The elements.
    pub selector: &'static str,
    /// The attribute: names with spaces between them.
    pub attribute: &'static str,
    /// Is it known?
    pub knows: fn(&str) -> bool,
}

const fn place(selector: &'static str, attribute: &'static str, knows: fn(&str) -> bool) -> Place {
    Place { selector, attribute, knows }
}

/// All places of a form, and of every template in it. In a message (an output inside `data-fault`) an output says
/// whatever its message needs: it is not to be looked at.
pub const PLACES: [Place; 7] = [
    place("output[name]", "name", |name| {
        names::is_output(name) || names::is_cell(name) || is_listed(names::IN_FAULTS, name)
    }),
    // A field of the author's own, which is kept, has no dot.
    place("input[name], select[name], textarea[name]", "name", |name| {
        !name.contains('.') || names::is_field(name)
    }),
    place("[data-when]", "data-when", |state| {
        let state = state.strip_prefix('!').unwrap_or(state);
        state.is_empty() || names::is_state(state) || state == "ready"
    }),
    place("[data-fault]", "data-fault", names::is_fault),
    place("[data-each]", "data-each", |name| is_listed(names::ROWS, name)),
    place("[data-act]", "data-act", |name| is_listed(names::ACTS, name)),
    place("[data-mark]", "data-mark", |name| is_listed(names::MARKS, name)),
];

impl Place {
    /// The names in an attribute's text that are not known, as a message has them.
    ///
    /// ```
    /// use saltwright_form::contract::lint::PLACES;
    /// let unknown: Vec<_> = PLACES[2].unknown("p", "add.yes !ad.no").collect();
    /// assert_eq!(unknown, [r#"<p data-when="!ad.no">"#]);
    /// ```
    pub fn unknown(&self, tag: &str, text: &str) -> impl Iterator<Item = String> {
        let words = text.split(' ').filter(|word| !(self.knows)(word));
        words.map(move |word| format!("<{tag} {}=\"{word}\">", self.attribute))
    }
}
