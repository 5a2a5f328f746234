//! What does a template have to know of the contract? The one file of the build that asks it.

use form::contract::units::{QuantityKind, UNITS, Unit};
use form::contract::{FaultCode, Field, FieldId, FieldType, LineFact, State, UnitRule};
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
    let of = |kind| Question { kind, ..Question::default() };
    Some(match Field::find(name)?.kind() {
        FieldType::Number(_, rule) => number("number", rule),
        FieldType::List(_, rule) => number("list", rule),
        FieldType::Choice(codes) => Question { codes: codes.all, ..of("choice") },
        FieldType::Moment => of("moment"),
        FieldType::Day => of("day"),
        FieldType::Text | FieldType::Count | FieldType::Names | FieldType::Unit(_) => of("text"),
    })
}

fn number(kind: &'static str, rule: &UnitRule) -> Question {
    let (measures, asked_by, unit) = match *rule {
        UnitRule::Bare => return Question { kind, ..Question::default() },
        UnitRule::Fixed(measures, unit) => (measures, None, unit),
        UnitRule::Asked(measures, asked_by) => (measures, Some(asked_by), ""),
        UnitRule::Squared(asked_by) => (QuantityKind::Area, Some(asked_by), ""),
        UnitRule::Usual(measures, asked_by, unit) => (measures, Some(asked_by), unit),
    };
    // What a test of salt shows may be salt itself.
    let salt = |row: &Unit| measures == QuantityKind::Reading && row.kind == QuantityKind::Salt;
    let rows = || UNITS.iter().filter(|row| row.kind == measures || salt(row));
    Question {
        kind,
        measures: format!("{measures:?}"),
        asked_by: asked_by.map_or("", Field::name),
        unit,
        units: rows().map(|row| row.code).collect(),
        also: rows().any(|row| row.also != row.code),
        ..Question::default()
    }
}

/// The units that a question about a unit alone offers.
pub fn units_asked_by(name: &str) -> Vec<&'static str> {
    Field::find(name).map_or(Vec::new(), |field| field.units().map(|unit| unit.code).collect())
}

/// Every unit in which anything is typed or shown.
pub fn units() -> Vec<&'static str> {
    let mut codes: Vec<_> = UNITS.iter().map(|unit| unit.code).collect();
    codes.sort_unstable();
    codes.dedup();
    codes
}

/// Is this the place of a fault, or the words of one: `field`, `field:code`, `*:code`?
pub fn is_fault(fault: &str) -> bool {
    let (field, code) = fault.split_once(':').map_or((fault, None), |(field, code)| (field, Some(code)));
    let is_code = code.is_none_or(|code| FaultCode::find(code).is_some());
    is_code && (FieldId::find(field).is_some() || field == "*" && code.is_some())
}

/// Does the page say beside this question that it is needed, and by which state?
pub fn need(name: &str) -> Option<String> {
    match name.strip_prefix("log.N.") {
        Some(asked) => {
            let state = format!("log.N.needs-{asked}");
            LineFact::find(&state).is_some().then_some(state)
        }
        None => Field::find(name).map(|field| State::need(field).name()),
    }
}

/// What a form says that nobody has touched.
pub fn answer(presets: Vec<(String, String)>) -> Answer {
    form::answer(&Form(presets))
}
