//! What does a template have to know of the contract? The one file of the build that asks it.

use form::contract::fields::{self, Answered, In};
use form::contract::names;
use form::contract::units::{Kind, UNITS, Unit};
use form::{Answer, Form};

/// What the markup of a question hangs on.
#[derive(Default)]
pub struct Question {
    /// `number`, `list`, `choice`, `moment`, `day` or `text`.
    pub kind: &'static str,
    /// The codes of its answers.
    pub codes: &'static [&'static str],
    /// What its number measures: `Water`, `Length` …; empty for a bare number.
    pub measures: String,
    /// The question that answers its unit, if any.
    pub asked_by: &'static str,
    /// The unit while nobody has answered.
    pub unit: &'static str,
    /// The units that may be chosen.
    pub units: Vec<&'static str>,
    /// Is it shown in the other system as well?
    pub also: bool,
}

/// The question of that name; a line of the log has N for its number.
pub fn question(name: &str) -> Option<Question> {
    Some(match fields::find(name)?.answer {
        Answered::Number(_, ref unit) => number("number", unit),
        Answered::List(_, ref unit) => number("list", unit),
        Answered::Choice(codes) => Question { kind: "choice", codes, ..Question::default() },
        Answered::Moment => Question { kind: "moment", ..Question::default() },
        Answered::Day => Question { kind: "day", ..Question::default() },
        Answered::Text => Question { kind: "text", ..Question::default() },
    })
}

fn number(kind: &'static str, unit: &In) -> Question {
    let (measures, asked_by, unit) = match *unit {
        In::Bare => return Question { kind, ..Question::default() },
        In::Fixed(measures, unit) => (measures, "", unit),
        In::Asked(measures, asked_by) => (measures, asked_by, ""),
        In::Squared(asked_by) => (Kind::Area, asked_by, ""),
        In::Usual(measures, asked_by, unit) => (measures, asked_by, unit),
    };
    // What a test of salt shows may be salt itself.
    let of = |row: &&Unit| row.kind == measures || measures == Kind::Reading && row.kind == Kind::Salt;
    let rows = || UNITS.iter().filter(of);
    Question {
        kind,
        measures: format!("{measures:?}"),
        asked_by,
        unit,
        units: rows().map(|row| row.code).collect(),
        also: rows().any(|row| row.also != row.code),
        ..Question::default()
    }
}

/// The units that a question about a unit alone offers.
pub fn units_asked_by(name: &str) -> Vec<&'static str> {
    let all = fields::FIELDS.iter().filter_map(|field| question(field.name));
    all.filter(|question| question.asked_by == name && question.measures != "Area")
        .map(|question| question.units)
        .max_by_key(Vec::len)
        .unwrap_or_default()
}

/// Every unit in which anything is typed or shown.
pub fn units() -> Vec<&'static str> {
    let mut codes: Vec<_> = UNITS.iter().map(|unit| unit.code).collect();
    codes.sort_unstable();
    codes.dedup();
    codes
}

/// Can this be wrong with the answer to a question?
pub fn is_fault(fault: &str) -> bool {
    names::is_fault(fault)
}

/// Does the page say beside this question that it is needed, and by which state?
pub fn need(name: &str) -> Option<String> {
    let state = match name.strip_prefix("log.N.") {
        Some(asked) => format!("log.N.needs-{asked}"),
        None => format!("need.{}", name.replace('.', "-")),
    };
    names::is_state(&state).then_some(state)
}

/// What a form says that nobody has touched.
pub fn answer(presets: Vec<(String, String)>) -> Answer {
    form::answer(&Form(presets))
}
