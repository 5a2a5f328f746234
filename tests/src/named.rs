//! What do questions and answers come to by their names?

use form::contract::{Field, FieldType, Scope};
use form::{Answer, Shown};

/// The questions about the pool, its units apart; of the log, those of any line.
pub fn questions() -> impl Iterator<Item = Field> {
    let about_the_pool = |field: &Field| match field.kind() {
        FieldType::Unit(_) | FieldType::Count | FieldType::Names => false,
        _ => matches!(field.scope(), Scope::Job | Scope::Person | Scope::Shop),
    };
    Field::ALL.into_iter().filter(about_the_pool)
}

/// The questions that take a number.
pub fn numbers() -> impl Iterator<Item = Field> {
    questions().filter(|field| matches!(field.kind(), FieldType::Number(..)))
}

/// The outputs by their names.
pub fn outputs(answer: &Answer) -> Vec<(String, &Shown)> {
    answer.outputs.iter().map(|(output, shown)| (output.name(), shown)).collect()
}

/// The outputs in all lines of all lists, by their names in there.
pub fn in_lines(answer: &Answer) -> Vec<(String, &Shown)> {
    let lines = answer.rows.iter().flat_map(|(_, lines)| lines);
    lines.flat_map(|line| &line.cells).map(|(output, shown)| (output.name(), shown)).collect()
}

/// The states that hold, by their names.
pub fn states(answer: &Answer) -> Vec<String> {
    answer.states.iter().map(|state| state.name()).collect()
}
