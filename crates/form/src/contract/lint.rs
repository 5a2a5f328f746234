//! What is wrong with an author's page, by the names in it? Told while a page is made, never to its visitors.
//!
//! | Finding | What the author does |
//! |---|---|
//! | A name, state, fault, list, act, mark, unit or code that the contract does not know | writes the one that is near |
//! | A number without the question for its unit | adds a `select` or a hidden input with that name |
//! | `a !a`, a state of a field that the form lacks, of a code that it does not offer | takes the element out, or adds the field |
//! | A dose, and no caution in the same form | says when it must not go in |
//!
//! *A caution* is an element with words in it that is shown by a state saying that salt may not, not yet or perhaps not
//! go in, or that a gate does not pass (`data-when="add.no"`, `"!add.yes"`, `"gate.clarity.wait"`); or any element with
//! words that the author marks with `data-caution`, for a sentence that always stands there. Which words these are is the
//! author's matter; that there are some is not.
//!
//! The page's own script, `saltwright-check.js`, has the same rules and this table: [`Known`].

mod known;

pub use known::{Known, KnownField, KnownState};

use crate::contract::LINES;

/// An element of a form; a form's elements are in the order of the document, what is in a `template` included.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Element {
    /// Its tag, in small letters.
    pub tag: String,
    /// Its attributes and their values.
    pub attributes: Vec<(String, String)>,
    /// The place of the element that it is in.
    pub parent: Option<usize>,
    /// Are there words in it, at any depth?
    pub has_words: bool,
}

impl Element {
    /// The value of an attribute.
    #[must_use]
    pub fn attribute(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(own, _)| own == name).map(|(_, value)| value.as_str())
    }

    /// Can it be filled in?
    fn is_field(&self) -> bool {
        matches!(self.tag.as_str(), "input" | "select" | "textarea")
    }
}

/// Something to be put right.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The place of the element.
    pub place: usize,
    /// What is wrong.
    pub kind: Kind,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Kind {
    /// The contract does not know it.
    Unknown {
        /// Where it stands.
        attribute: &'static str,
        /// The name, state or code.
        name: String,
        /// The nearest that is known.
        near: Option<String>,
    },
    /// A number without its unit.
    NoUnit {
        /// The number.
        field: String,
        /// The question for its unit, which the form lacks.
        unit: String,
    },
    /// A state that is to hold and not to hold.
    Contradiction {
        /// The state.
        state: String,
    },
    /// A state of a field that the form lacks.
    NoField {
        /// The state.
        state: String,
        /// The field.
        field: String,
    },
    /// A state of a code that the field does not offer.
    NotOffered {
        /// The state.
        state: String,
        /// The field.
        field: String,
        /// The code.
        code: String,
    },
    /// A dose in a form without any caution.
    NoCaution {
        /// The dose.
        output: String,
    },
}

/// Everything that is to be put right, in the order of the document; a dose without caution once, at the end.
#[must_use]
pub fn findings(known: &Known, elements: &[Element]) -> Vec<Finding> {
    let form = Form { known, elements };
    let mut found = Vec::new();
    for (place, element) in elements.iter().enumerate() {
        form.names(place, element, &mut |attribute, name, near| {
            let kind = Kind::Unknown { attribute, name: name.into(), near };
            found.push(Finding { place, kind });
        });
        found.extend(form.unit(element).map(|kind| Finding { place, kind }));
        found.extend(form.states(element).into_iter().map(|kind| Finding { place, kind }));
    }
    found.extend(form.caution());
    found
}

/// A name with the number of a line of the log as N.
#[must_use]
pub fn any_line(name: &str) -> String {
    let mut parts: Vec<&str> = name.split('.').collect();
    for at in 1..parts.len() {
        if parts[at - 1] == "log" && LINES.into_iter().any(|line| line.to_string() == parts[at]) {
            parts[at] = "N";
        }
    }
    parts.join(".")
}

struct Form<'a> {
    known: &'a Known,
    elements: &'a [Element],
}

type Tell<'t> = &'t mut dyn FnMut(&'static str, &str, Option<String>);

impl<'a> Form<'a> {
    fn names(&self, place: usize, element: &Element, tell: Tell) {
        let known = self.known;
        if element.is_field() {
            // A field of the author's own, which is kept, has no dot.
            let name = element.attribute("name").unwrap_or_default();
            let fields = || known.fields.iter().map(|field| field.name.as_str());
            match self.field(name) {
                Some(field) => self.codes(place, element, field, tell),
                None if name.contains('.') => tell("name", name, near(&any_line(name), fields())),
                None => {}
            }
        }
        if element.tag == "output" {
            self.output(place, element.attribute("name").unwrap_or_default(), tell);
        }
        let words = |attribute| element.attribute(attribute).unwrap_or_default().split_ascii_whitespace();
        for word in words("data-when") {
            let state = word.strip_prefix('!').unwrap_or(word);
            if self.state(state).is_none() {
                tell(
                    "data-when",
                    state,
                    near(&any_line(state), known.states.iter().map(|state| state.name.as_str())),
                );
            }
        }
        for word in words("data-fault") {
            self.fault(word, tell);
        }
        let lists: [(&'static str, &Vec<String>); 5] = [
            ("data-each", &known.lists),
            ("data-act", &known.acts),
            ("data-mark", &known.marks),
            ("data-shape", &known.shapes),
            ("data-unit", &known.units),
        ];
        for (attribute, names) in lists {
            for word in words(attribute).filter(|word| !names.iter().any(|name| name == word)) {
                tell(attribute, word, near(word, names.iter().map(String::as_str)));
            }
        }
        if element.tag == "data" {
            let value = element.attribute("value").unwrap_or_default();
            for (attribute, codes) in [("data-units", &known.units), ("data-gates", &known.gates)] {
                let words = self.ancestor(place, attribute).is_some();
                if words && !codes.iter().any(|code| code == value) {
                    tell("value", value, near(value, codes.iter().map(String::as_str)));
                }
            }
        }
    }

    /// The codes that a field offers must be such as it takes.
    fn codes(&self, place: usize, element: &Element, field: &KnownField, tell: Tell) {
        if field.codes.is_empty() {
            return;
        }
        for code in self.offered(place, element).into_iter().flatten() {
            if !code.is_empty() && !field.codes.iter().any(|known| known == code) {
                tell("value", code, near(code, field.codes.iter().map(String::as_str)));
            }
        }
    }

    fn output(&self, place: usize, name: &str, tell: Tell) {
        let known = self.known;
        let list = self.ancestor(place, "data-each");
        let in_list = |cell: &str| {
            let of = cell.split_once('/');
            of.is_some_and(|(of, cell)| cell == name && list == Some(of))
        };
        let is_known = known.outputs.contains(&any_line(name))
            || known.cells.iter().any(|cell| in_list(cell))
            || self.ancestor(place, "data-fault").is_some() && known.in_fault.iter().any(|own| own == name);
        // The lines of a list that is unknown itself are not judged.
        let is_judged = list.is_none_or(|list| known.lists.iter().any(|known| known == list));
        if !is_known && is_judged {
            let cells = known.cells.iter().filter_map(|cell| cell.split_once('/'));
            let cells = cells.filter(|(of, _)| list == Some(of)).map(|(_, cell)| cell);
            tell("name", name, near(&any_line(name), cells.chain(known.outputs.iter().map(String::as_str))));
        }
    }

    fn fault(&self, word: &str, tell: Tell) {
        let (field, code) = word.split_once(':').map_or((word, None), |(field, code)| (field, Some(code)));
        let faults = &self.known.faults;
        if !(field == "*" && code.is_some()) && self.field(field).is_none() {
            let fields = self.known.fields.iter().map(|field| field.name.as_str());
            let near = near(&any_line(field), fields);
            tell(
                "data-fault",
                word,
                near.map(|near| code.map_or(near.clone(), |code| format!("{near}:{code}"))),
            );
        } else if let Some(code) = code.filter(|code| !faults.iter().any(|fault| fault == code)) {
            let near = near(code, faults.iter().map(String::as_str));
            tell("data-fault", word, near.map(|code| format!("{field}:{code}")));
        }
    }

    fn unit(&self, element: &Element) -> Option<Kind> {
        let name = element.attribute("name").filter(|_| element.is_field())?;
        let unit = self.field(name)?.unit.clone()?;
        let lacks = self.fields(&unit).next().is_none();
        lacks.then(|| Kind::NoUnit { field: name.into(), unit })
    }

    fn states(&self, element: &Element) -> Vec<Kind> {
        let mut found = Vec::new();
        let words = || element.attribute("data-when").unwrap_or_default().split_ascii_whitespace();
        for word in words() {
            if let Some(state) = word.strip_prefix('!').filter(|state| words().any(|word| word == *state)) {
                found.push(Kind::Contradiction { state: state.into() });
            }
            let name = word.strip_prefix('!').unwrap_or(word);
            let Some(KnownState { field: Some(field), code, or, .. }) = self.state(name) else { continue };
            if or.as_ref().is_some_and(|or| self.fields(or).next().is_some()) {
                continue;
            }
            let (state, field) = (name.to_string(), field.clone());
            if self.fields(&field).next().is_none() {
                found.push(Kind::NoField { state, field });
            } else if let Some(code) = code.clone().filter(|code| !self.offers(&field, code)) {
                found.push(Kind::NotOffered { state, field, code });
            }
        }
        found
    }

    fn caution(&self) -> Option<Finding> {
        let is_caution = |element: &Element| {
            let mut when = element.attribute("data-when").unwrap_or_default().split_ascii_whitespace();
            let by_state = when.any(|word| self.known.cautions.iter().any(|caution| caution == word));
            element.has_words && (by_state || element.attribute("data-caution").is_some())
        };
        if self.elements.iter().any(is_caution) {
            return None;
        }
        self.elements.iter().enumerate().filter(|(_, element)| element.tag == "output").find_map(
            |(place, element)| {
                let output = element.attribute("name")?;
                let cell = self.ancestor(place, "data-each").map(|list| format!("{list}/{output}"));
                let is_dose =
                    self.known.doses.iter().any(|dose| dose == output || Some(dose) == cell.as_ref());
                is_dose.then(|| Finding { place, kind: Kind::NoCaution { output: output.into() } })
            },
        )
    }

    fn field(&self, name: &str) -> Option<&'a KnownField> {
        let name = any_line(name);
        self.known.fields.iter().find(|field| field.name == name)
    }

    fn state(&self, name: &str) -> Option<&'a KnownState> {
        let name = any_line(name);
        self.known.states.iter().find(|state| state.name == name)
    }

    /// Those that answer the question of this name, in any line of the log.
    fn fields(&self, name: &str) -> impl Iterator<Item = (usize, &'a Element)> {
        let is_it =
            move |element: &Element| element.attribute("name").is_some_and(|own| any_line(own) == name);
        self.elements.iter().enumerate().filter(move |(_, element)| element.is_field() && is_it(element))
    }

    fn offers(&self, field: &str, code: &str) -> bool {
        self.fields(field)
            .any(|(place, element)| self.offered(place, element).is_none_or(|codes| codes.contains(&code)))
    }

    /// The codes that a field offers; nothing where anything can be typed.
    fn offered(&self, place: usize, element: &'a Element) -> Option<Vec<&'a str>> {
        if element.tag == "select" {
            let within = |option: &Element| option.tag == "option";
            let options = self.elements.iter().enumerate().filter(|(_, option)| within(option));
            let own = options.filter(|(at, _)| self.ancestors(*at).any(|(above, _)| above == place));
            return own.map(|(_, option)| option.attribute("value")).collect();
        }
        let settled = matches!(element.attribute("type"), Some("radio" | "checkbox" | "hidden"));
        settled.then(|| vec![element.attribute("value").unwrap_or_default()])
    }

    /// What an element is in, from the nearest outwards.
    fn ancestors(&self, place: usize) -> impl Iterator<Item = (usize, &'a Element)> {
        let elements = self.elements;
        let above = move |at: &usize| elements[*at].parent.filter(|parent| parent < at);
        std::iter::successors(above(&place), above).map(move |at| (at, &elements[at]))
    }

    /// The attribute's value at the nearest that has it.
    fn ancestor(&self, place: usize, attribute: &str) -> Option<&'a str> {
        self.ancestors(place).find_map(|(_, element)| element.attribute(attribute))
    }
}

/// The name that differs least, the first of several; none that differs in more than a third.
fn near<'n>(name: &str, names: impl Iterator<Item = &'n str>) -> Option<String> {
    let most = name.chars().count().div_ceil(3);
    let told = names.map(|known| (differs(name, known), known)).filter(|(differs, _)| *differs <= most);
    told.min_by_key(|(differs, _)| *differs).map(|(_, known)| known.into())
}

/// How many letters have to be put in, taken out, changed, or changed places with their neighbor.
fn differs(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut rows: Vec<Vec<usize>> = vec![(0..=b.len()).collect()];
    for i in 1..=a.len() {
        let mut row = vec![i];
        for j in 1..=b.len() {
            let other = usize::from(a[i - 1] != b[j - 1]);
            let mut least = (rows[i - 1][j] + 1).min(row[j - 1] + 1).min(rows[i - 1][j - 1] + other);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(rows[i - 2][j - 2] + 1);
            }
            row.push(least);
        }
        rows.push(row);
    }
    rows[a.len()][b.len()]
}
