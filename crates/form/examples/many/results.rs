//! Which results are told of each pool, and how are they written?

use saltwright_form::Answer;
use saltwright_form::contract::{Fact, Measures, Output, OutputId, State};
use serde_json::{Map, Value};
use std::io::{self, Write};

/// How plans are written.
#[derive(Clone, Copy, PartialEq)]
pub enum As {
    /// A table, a row a pool.
    Csv,
    /// An object a line.
    Json,
}

/// What is told of each pool, in order.
pub struct Results(Vec<(String, Told)>);

enum Told {
    /// A result, and whether it has a unit of its own.
    Output(OutputId, bool),
    /// Those of these states that hold.
    States(Vec<(State, String)>),
}

impl Results {
    /// What to do, whether salt may go in, how much there is to buy and to put in, what to expect, the index.
    pub fn usual() -> Self {
        let begins = |fact: Fact| fact.name().split('.').next().map(|begin| format!("{begin}.*"));
        let states = [Fact::AddYes, Fact::DoStop, Fact::PowerYes].into_iter().filter_map(begins);
        let outputs = [
            Output::BasicMass,
            Output::BuyBags,
            Output::BuyPrice,
            Output::StageMass,
            Output::StageBags,
            Output::StageExpect,
            Output::ReplaceShare,
            Output::IndexNow,
            Output::IndexFree,
            Output::ReadyLeft,
        ];
        let named = states.chain(outputs.map(|output| output.name().into()));
        Self(named.filter_map(|name| told(&name).map(|told| (name, told))).collect())
    }

    /// Those of these names, between commas.
    pub fn of(names: &str) -> Result<Self, String> {
        let told = |name: &str| match told(name) {
            Some(told) => Ok((name.into(), told)),
            None => Err(format!("{name}: no result and no state")),
        };
        names.split([',', ' ']).filter(|name| !name.is_empty()).map(told).collect::<Result<_, _>>().map(Self)
    }

    /// Names of the columns.
    pub fn head(&self, to: &mut csv::Writer<impl Write>) -> io::Result<()> {
        to.write_field("row")?;
        for (name, told) in &self.0 {
            to.write_field(name)?;
            if let Told::Output(_, true) = told {
                to.write_field(format!("{name}.unit"))?;
            }
        }
        Ok(to.write_record(None::<&[u8]>)?)
    }

    /// A row of the table.
    pub fn cells(&self, row: u64, answer: &Answer, to: &mut csv::Writer<impl Write>) -> io::Result<()> {
        to.write_field(row.to_string())?;
        for (_, told) in &self.0 {
            match told {
                Told::Output(output, has_unit) => {
                    let shown = answer.shown(*output);
                    to.write_field(shown.map_or("", |shown| &shown.text))?;
                    if *has_unit {
                        to.write_field(shown.and_then(|shown| shown.unit).unwrap_or_default())?;
                    }
                }
                Told::States(states) => {
                    to.write_field(that_hold(states, answer).collect::<Vec<_>>().join(" "))?;
                }
            }
        }
        Ok(to.write_record(None::<&[u8]>)?)
    }

    /// A line of JSON.
    pub fn object(&self, row: u64, answer: &Answer, mut to: impl Write) -> io::Result<()> {
        let mut object = Map::from_iter([("row".into(), row.into())]);
        for (name, told) in &self.0 {
            let value = match told {
                Told::Output(output, _) => answer.shown(*output).map_or(Value::Null, |shown| {
                    let value = shown.number.map(|(value, _)| value);
                    serde_json::json!({ "text": shown.text, "unit": shown.unit, "value": value })
                }),
                Told::States(states) => that_hold(states, answer).collect(),
            };
            object.insert(name.clone(), value);
        }
        serde_json::to_writer(&mut to, &object)?;
        to.write_all(b"\n")
    }
}

fn that_hold<'a>(states: &'a [(State, String)], answer: &'a Answer) -> impl Iterator<Item = &'a str> {
    states.iter().filter(|(state, _)| answer.is(*state)).map(|(_, name)| name.as_str())
}

/// What a name asks for: a result, a state, or all states that begin so.
fn told(name: &str) -> Option<Told> {
    if let Some(output) = OutputId::find(name) {
        let has_unit = matches!(output, OutputId::Result(output) if has_unit(output.facts().measures));
        return Some(Told::Output(output, has_unit));
    }
    let begin = name.strip_suffix('*');
    let named = |state: State| (state, state.name());
    let asked = |of: &str| begin.map_or(of == name, |begin| !begin.is_empty() && of.starts_with(begin));
    let states: Vec<_> = State::all().map(named).filter(|(_, of)| asked(of)).collect();
    (!states.is_empty()).then_some(Told::States(states))
}

/// Does the unit of what is measured hang on what was typed?
fn has_unit(measures: Measures) -> bool {
    use Measures::{Day, Hours, Index, Moment, Money, Number, Words};
    !matches!(measures, Day | Hours | Index | Moment | Money | Number | Words)
}
