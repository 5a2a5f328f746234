//! How does an answer cross to a script? As plain objects, lists and texts.
//!
//! All its texts cross in one piece and are cut up there: to carry a thousand over one by one takes longer than to
//! work them out.

use form::answer::{Answer, CONTRACT, Fault, Line, Row, Shown};
use form::contract::units::Unit;
use form::text::joined;
use js_sys::{Array, JsString, Object};
use wasm_bindgen::prelude::*;

/// The types of what is made below. A name that may be missing says so: what is missing is no number.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = "
/** A figure as it is shown, in the form's signs: `sign.decimal` and `sign.group`, or else point and comma. */
export interface Shown {
    /** The figure; empty where the unit alone is the news. */
    text: string;
    /** The code of its unit, UCUM's for the most part; none where the sentence round it says the unit. */
    unit?: string;
}

/** Figures by name. What cannot be said yet is not among them. */
export interface Outputs {
    [name: string]: Shown | undefined;
}

/** The number behind a figure: not rounded, always in the same unit. */
export interface Quantity {
    value: number;
    /** UCUM code; `1` for what has none. */
    unit: string;
    /** The lower end of its range, if it has one. */
    low?: number;
    /** The upper end of its range, if it has one. */
    high?: number;
}

/** One line of a list. */
export interface Line {
    /** What sort of line it is; empty where all are of one sort. */
    state: string;
    outputs: Outputs;
}

/** A field that cannot be used. */
export interface Fault {
    field: string;
    /** What is wrong with it. */
    code: string;
    /** What was typed. */
    got: string;
    /** The least that is allowed, in the unit typed. */
    low?: Shown;
    /** The most that is allowed, in the unit typed. */
    high?: Shown;
    /** Another way to read it. */
    other?: Shown;
}

/** The answer to a form. */
export interface Answer {
    /** The contract between form and code. */
    contract: number;
    outputs: Outputs;
    /** The numbers behind the outputs, by the same names. */
    numbers: { [name: string]: Quantity | undefined };
    /** What holds. `add.yes`, `add.wait`, `add.no` or `add.unknown` is whether salt may go in: no figure says that. */
    states: string[];
    /** The lines of each list. */
    rows: { [list: string]: Line[] | undefined };
    faults: Fault[];
}
";

/// What a script sees.
#[derive(Clone, Debug, PartialEq)]
pub enum Plain<'a> {
    /// A whole number.
    Number(u32),
    /// Any number.
    Real(f64),
    /// A text.
    Text(&'a str),
    /// A list.
    List(Vec<Plain<'a>>),
    /// An object whose keys are few and known: each crosses once.
    Thing(Vec<(&'static str, Plain<'a>)>),
    /// An object whose keys are names, in their order: they cross with the texts.
    Map(Vec<(&'a str, Plain<'a>)>),
}

#[wasm_bindgen]
extern "C" {
    /// An object just made, which takes any key: `Reflect` would ask each time whether it does.
    type Fresh;

    #[wasm_bindgen(method, structural, indexing_setter)]
    fn put(this: &Fresh, key: &JsString, value: &JsValue);
}

impl Plain<'_> {
    /// As a script has it.
    pub(crate) fn to_script(&self) -> JsValue {
        let mut texts = String::new();
        self.gather(&mut texts);
        Cut { texts: texts.into(), at: 0, keys: Vec::new() }.value(self)
    }

    /// Puts all texts one behind the other, names too.
    fn gather(&self, texts: &mut String) {
        match self {
            Plain::Number(_) | Plain::Real(_) => {}
            Plain::Text(text) => texts.push_str(text),
            Plain::List(all) => all.iter().for_each(|one| one.gather(texts)),
            Plain::Thing(all) => all.iter().for_each(|(_, value)| value.gather(texts)),
            Plain::Map(all) => all.iter().for_each(|(name, value)| {
                texts.push_str(name);
                value.gather(texts);
            }),
        }
    }
}

/// The texts of a tree, which is walked in the order in which they were gathered.
struct Cut {
    texts: JsString,
    at: u32,
    /// The keys of things that have come by.
    keys: Vec<(&'static str, JsString)>,
}

impl Cut {
    fn text(&mut self, text: &str) -> JsString {
        let begin = self.at;
        self.at += text.encode_utf16().count() as u32; // A script counts letters so.
        self.texts.substring(begin, self.at)
    }

    fn key(&mut self, key: &'static str) -> &JsString {
        let at = self.keys.iter().position(|(known, _)| *known == key).unwrap_or(self.keys.len());
        if at == self.keys.len() {
            self.keys.push((key, key.into()));
        }
        &self.keys[at].1
    }

    fn value(&mut self, plain: &Plain) -> JsValue {
        match plain {
            Plain::Number(n) => (*n).into(),
            Plain::Real(x) => (*x).into(),
            Plain::Text(text) => self.text(text).into(),
            Plain::List(all) => {
                let list = Array::new();
                for one in all {
                    list.push(&self.value(one));
                }
                list.into()
            }
            Plain::Thing(all) => {
                let object = Object::new().unchecked_into::<Fresh>();
                for (key, value) in all {
                    let value = self.value(value);
                    object.put(self.key(key), &value);
                }
                object.into()
            }
            Plain::Map(all) => {
                let object = Object::new().unchecked_into::<Fresh>();
                for (name, value) in all {
                    let name = self.text(name);
                    object.put(&name, &self.value(value));
                }
                object.into()
            }
        }
    }
}

impl<'a> From<&'a Answer> for Plain<'a> {
    fn from(answer: &'a Answer) -> Self {
        let states = answer.states.iter().map(|state| Plain::Text(state));
        let rows =
            answer.rows.iter().map(|(list, rows)| (*list, Plain::List(rows.iter().map(line).collect())));
        Plain::Thing(vec![
            ("contract", Plain::Number(CONTRACT)),
            ("outputs", outputs(&answer.outputs)),
            ("numbers", numbers(answer)),
            ("states", Plain::List(states.collect())),
            ("rows", Plain::Map(rows.collect())),
            ("faults", Plain::List(answer.faults.iter().map(Plain::from).collect())),
        ])
    }
}

/// The numbers behind the outputs, unrounded, in canonical units, with the ends of their range if they have one.
fn numbers(answer: &Answer) -> Plain<'_> {
    let number = |name: &str| answer.output(name)?.number;
    let mut all = Vec::new();
    for (name, shown) in &answer.outputs {
        let Some((value, unit)) = shown.number.filter(|_| !name.ends_with(".also")) else { continue };
        let code = unit.map_or("1", Unit::canonical);
        let mut map = vec![("value", Plain::Real(value)), ("unit", Plain::Text(code))];
        for (end, begin) in [("low", ".low"), ("high", ".high")] {
            map.extend(number(&joined(&[name, begin])).map(|(x, _)| (end, Plain::Real(x))));
        }
        all.push((name.as_str(), Plain::Thing(map)));
    }
    Plain::Map(all)
}

fn line(line: &Line) -> Plain<'_> {
    Plain::Thing(vec![("state", Plain::Text(line.state)), ("outputs", outputs(&line.cells))])
}

fn outputs(all: &Row) -> Plain<'_> {
    Plain::Map(all.iter().map(|(name, shown)| (name.as_str(), shown.into())).collect())
}

impl<'a> From<&'a Shown> for Plain<'a> {
    fn from(shown: &'a Shown) -> Self {
        let mut map = vec![("text", Plain::Text(&shown.text))];
        if let Some(unit) = shown.unit {
            map.push(("unit", Plain::Text(unit)));
        }
        Plain::Thing(map)
    }
}

impl<'a> From<&'a Fault> for Plain<'a> {
    fn from(fault: &'a Fault) -> Self {
        let mut map = vec![
            ("field", Plain::Text(fault.field)),
            ("code", Plain::Text(fault.code)),
            ("got", Plain::Text(&fault.got)),
        ];
        if let Some([low, high]) = &fault.limits {
            map.extend([("low", low.into()), ("high", high.into())]);
        }
        if let Some(other) = &fault.other {
            map.push(("other", other.into()));
        }
        Plain::Thing(map)
    }
}
