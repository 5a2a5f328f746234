//! How does an answer cross to a script? As plain objects, lists and texts.
//!
//! One small tree with one `Serialize`, instead of a derived form a structure: those bring a table
//! of names and a copy of the serializer each, a tenth of the page.

use crate::answer::{Answer, CONTRACT, Fault, Line, Row, Shown, joined};
use crate::unit::Unit;
use serde::ser::{Serialize, Serializer};
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
    /// An object, its keys in order.
    Map(Vec<(&'a str, Plain<'a>)>),
}

impl Serialize for Plain<'_> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self {
            Plain::Number(n) => s.serialize_u32(*n),
            Plain::Real(x) => s.serialize_f64(*x),
            Plain::Text(text) => s.serialize_str(text),
            Plain::List(all) => s.collect_seq(all),
            Plain::Map(all) => s.collect_map(all.iter().map(|(key, value)| (key, value))),
        }
    }
}

impl<'a> From<&'a Answer> for Plain<'a> {
    fn from(answer: &'a Answer) -> Self {
        let states = answer.states.iter().map(|state| Plain::Text(state));
        let rows =
            answer.rows.iter().map(|(list, rows)| (*list, Plain::List(rows.iter().map(line).collect())));
        Plain::Map(vec![
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
        all.push((name.as_str(), Plain::Map(map)));
    }
    Plain::Map(all)
}

fn line(line: &Line) -> Plain<'_> {
    Plain::Map(vec![("state", Plain::Text(line.state)), ("outputs", outputs(&line.cells))])
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
        Plain::Map(map)
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
        Plain::Map(map)
    }
}
