//! What does a script see of an answer? Each struct here is at once what crosses and, with the feature `typescript`,
//! its type: they have the names that a script knows.

use super::Row;
use crate::contract::units::Unit;
use crate::contract::{CONTRACT, Output, OutputId, State};
use crate::form::Form;
use crate::text::joined;
use serde::{Serialize, Serializer};
#[cfg(feature = "typescript")]
use {tsify::Tsify, wasm_bindgen::prelude::wasm_bindgen};

/// The answer to a form.
#[derive(Serialize)]
#[cfg_attr(feature = "typescript", derive(Tsify))]
struct Answer<'a> {
    /// The contract between form and code.
    contract: u32,
    outputs: Outputs<'a>,
    /// The numbers behind the outputs, by the same names.
    #[cfg_attr(feature = "typescript", tsify(type = "{ [name: string]: Quantity | undefined }"))]
    numbers: Numbers<'a>,
    /// What holds. `add.yes`, `add.wait`, `add.no` or `add.unknown` is whether salt may go in: no figure says that.
    #[cfg_attr(feature = "typescript", tsify(type = "string[]"))]
    states: States<'a>,
    /// The lines of each list.
    #[cfg_attr(feature = "typescript", tsify(type = "{ [list: string]: Line[] | undefined }"))]
    rows: Lists<'a>,
    faults: &'a [super::Fault],
}

/// A figure as it is shown, in the form's signs: `sign.decimal` and `sign.group`, or else point and comma.
#[derive(Serialize)]
#[cfg_attr(feature = "typescript", derive(Tsify))]
struct Shown<'a> {
    /// The figure; empty where the unit alone is the news.
    text: &'a str,
    /// The code of its unit, UCUM's for the most part; none where the sentence round it says the unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "typescript", tsify(optional))]
    unit: Option<&'a str>,
}

/// The number behind a figure: not rounded, always in the same unit.
#[derive(Serialize)]
#[cfg_attr(feature = "typescript", derive(Tsify))]
struct Quantity<'a> {
    value: f64,
    /// UCUM code; `1` for what has none.
    unit: &'a str,
    /// The lower end of its range, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "typescript", tsify(optional))]
    low: Option<f64>,
    /// The upper end of its range, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "typescript", tsify(optional))]
    high: Option<f64>,
}

/// One line of a list.
#[derive(Serialize)]
#[cfg_attr(feature = "typescript", derive(Tsify))]
struct Line<'a> {
    /// What sort of line it is; empty where all are of one sort.
    state: &'a str,
    outputs: Outputs<'a>,
}

/// A field that cannot be used.
#[derive(Serialize)]
#[cfg_attr(feature = "typescript", derive(Tsify))]
struct Fault<'a> {
    field: &'a str,
    /// What is wrong with it.
    code: &'a str,
    /// What was typed.
    got: &'a str,
    /// The least that is allowed, in the unit typed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "typescript", tsify(optional))]
    low: Option<&'a super::Shown>,
    /// The most that is allowed, in the unit typed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "typescript", tsify(optional))]
    high: Option<&'a super::Shown>,
    /// Another way to read it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "typescript", tsify(optional))]
    other: Option<&'a super::Shown>,
}

/// Figures by name. What cannot be said yet is not among them.
#[derive(Serialize)]
#[cfg_attr(feature = "typescript", derive(Tsify))]
struct Outputs<'a>(
    #[cfg_attr(feature = "typescript", tsify(type = "{ [name: string]: Shown | undefined }"))]
    #[serde(serialize_with = "by_name")]
    &'a Row,
);

fn by_name<S: Serializer>(row: &Row, to: S) -> Result<S::Ok, S::Error> {
    to.collect_map(row.iter().map(|(output, shown)| (output.name(), shown)))
}

struct Numbers<'a>(&'a super::Answer);
struct States<'a>(&'a super::Answer);
struct Lists<'a>(&'a super::Answer);

impl Serialize for Numbers<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let end = |output: OutputId, end| {
            let OutputId::Result(output) = output else { return None };
            let output = Output::find(&joined(&[output.name(), end]))?;
            self.0.shown(output)?.number.map(|(value, _)| value)
        };
        to.collect_map(self.0.outputs.iter().filter_map(|(output, shown)| {
            let (value, unit) = shown.number.filter(|_| !output.is_also())?;
            let unit = unit.map_or("1", Unit::canonical);
            let [low, high] = [".low", ".high"].map(|name| end(*output, name));
            Some((output.name(), Quantity { value, unit, low, high }))
        }))
    }
}

impl Serialize for States<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq(self.0.states.iter().map(State::name))
    }
}

impl Serialize for Lists<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_map(self.0.rows.iter().map(|(list, lines)| (list.name(), lines)))
    }
}

impl Serialize for super::Answer {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let (numbers, states, rows) = (Numbers(self), States(self), Lists(self));
        let outputs = Outputs(&self.outputs);
        Answer { contract: CONTRACT, outputs, numbers, states, rows, faults: &self.faults }.serialize(to)
    }
}

impl Serialize for super::Shown {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        Shown { text: &self.text, unit: self.unit }.serialize(to)
    }
}

impl Serialize for super::Line {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let state = self.state.map_or(String::new(), State::name);
        Line { state: &state, outputs: Outputs(&self.cells) }.serialize(to)
    }
}

impl Serialize for super::Fault {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let [low, high] = self.limits.as_ref().map_or([None; 2], |limits| limits.each_ref().map(Some));
        let (field, code) = (&self.field.name(), self.code.name());
        Fault { field, code, got: &self.got, low, high, other: self.other.as_ref() }.serialize(to)
    }
}

impl Serialize for Form {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_map(self.0.iter().map(|(name, text)| (name, text)))
    }
}

#[cfg(test)]
mod tests {
    use crate::{Form, answer};
    use serde_json::json;

    /// What a script reads, and what it must not find: a unit, a limit or an end that is not there.
    #[test]
    fn an_answer_is_plain_json() {
        let form = Form::from([
            ("pool.volume", "62.82"),
            ("pool.volume.unit", "m3"),
            ("pool.method", "taped"),
            ("salt.now", "400"),
            ("salt.now.unit", "[ppm]"),
            ("salt.method", "meter"),
            ("salt.target", "3200"),
            ("bag.size", "20"),
            ("bag.size.unit", "kg"),
            ("bag.purity", "99.4"),
            ("water.ph", "x"),
        ]);
        let json = serde_json::to_value(answer(&form)).unwrap();
        let mut keys: Vec<_> = json.as_object().unwrap().keys().map(String::as_str).collect();
        keys.sort_unstable();
        assert_eq!(keys, ["contract", "faults", "numbers", "outputs", "rows", "states"]);
        assert_eq!(json["contract"], 1);
        assert_eq!(json["outputs"]["basic.mass"], json!({ "text": "177", "unit": "kg" }));
        assert_eq!(json["numbers"]["basic.mass"]["unit"], "kg");
        assert!((json["numbers"]["basic.mass"]["value"].as_f64().unwrap() - 177.0).abs() < 0.5);
        assert!(json["states"].as_array().unwrap().contains(&"standing.short".into()));
        assert!(json["rows"]["gates"][0]["outputs"].is_object());
        let fault = json!({ "field": "water.ph", "code": "not-a-number", "got": "x" });
        assert_eq!(json["faults"], json!([fault]));
        assert_eq!(serde_json::to_value(&form).unwrap()["bag.size"], "20");
    }
}
