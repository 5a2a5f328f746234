//! Which names make up the contract between page and code? One table, and the rules by which others follow.
//!
//! The reference for authors, `www/names.md`, is made of it; on a page under development every name that is in
//! neither is told of. What a name means is for readers of that file, and not in the page's wasm.

use super::fields::find;
use crate::exercise::asked::ASKED;
use crate::text::joined;

mod choices;
mod fields;
mod outputs;
mod rest;
mod states;

pub use choices::CHOICES;
pub use fields::FIELDS;
pub use outputs::OUTPUTS;
pub use rest::{ACTS, CELLS, FAULTS, GATES, HANDED, IN_FAULTS, LINES, MARKS, ROWS, SHAPES, TERMS, UNITS};
pub use states::STATES;

/// A row of the table.
#[derive(Debug)]
pub struct Name {
    /// The name.
    pub name: &'static str,
    /// What it measures, of an output.
    #[cfg(not(target_family = "wasm"))]
    pub kind: &'static str,
    /// What it means, in a line.
    #[cfg(not(target_family = "wasm"))]
    pub meaning: &'static str,
}

#[cfg(not(target_family = "wasm"))]
const fn name(name: &'static str, kind: &'static str, meaning: &'static str) -> Name {
    Name { name, kind, meaning }
}

#[cfg(target_family = "wasm")]
const fn name(name: &'static str, _: &'static str, _: &'static str) -> Name {
    Name { name }
}

fn has(list: &[Name], name: &str) -> bool {
    list.iter().any(|row| row.name == name)
}

/// A name with the number of its line of the log made N, as the table has it.
fn any_line(name: &str) -> String {
    let mut all = String::new();
    let mut before = "";
    for part in name.split('.') {
        let line = before == "log" && !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
        all = joined(&[&all, if all.is_empty() { "" } else { "." }, if line { "N" } else { part }]);
        before = part;
    }
    all
}

/// Is this a question? An attempt at a result is one too, with its unit and what it may be off.
///
/// ```
/// use saltwright_form::contract::names::{is_field, is_output, is_state};
/// assert!(is_field("log.3.mass.unit") && is_field("try.dose.mass.within") && !is_field("salt.nwo"));
/// assert!(is_output("dose.mass") && is_output("echo.salt.now.also") && !is_output("dose.maas"));
/// assert!(is_state("need.salt-now") && is_state("gate.finish-age.wait") && is_state("try.dose-mass.right"));
/// assert!(!is_state("gate.finish.wait"));
/// ```
pub fn is_field(name: &str) -> bool {
    let attempt = name.strip_suffix(".unit").or(name.strip_suffix(".within")).unwrap_or(name);
    has(FIELDS, &any_line(name)) || ASKED.iter().any(|asked| asked.attempt == attempt)
}

/// Is this a result?
pub fn is_output(name: &str) -> bool {
    let name = any_line(name);
    let echo = name.strip_prefix("echo.").map(|field| field.strip_suffix(".also").unwrap_or(field));
    has(OUTPUTS, &name)
        || echo.is_some_and(|field| has(FIELDS, field))
        || name
            .strip_suffix(".unit")
            .is_some_and(|attempt| ASKED.iter().any(|asked| asked.attempt == attempt))
}

/// Can this be so?
pub fn is_state(state: &str) -> bool {
    let name = any_line(state);
    let asked = |name: &str| ASKED.iter().any(|asked| is_hyphened(asked.name, name));
    let (begin, rest) = name.split_once('.').unwrap_or((&name, ""));
    let (middle, end) = rest.rsplit_once('.').unwrap_or((rest, ""));
    has(STATES, &name)
        || has(LINES, &name)
        || match begin {
            "echo" => has(FIELDS, rest),
            "need" => FIELDS.iter().any(|field| is_hyphened(field.name, rest)),
            "gate" => has(GATES, middle) && VERDICTS.contains(&end),
            "ask" => asked(rest),
            "try" => (middle == "first" && asked(end)) || MARKS_OF_ATTEMPTS.contains(&end) && asked(middle),
            _ => false,
        }
}

/// What a gate can say.
pub const VERDICTS: [&str; 5] = ["pass", "wait", "stop", "unknown", "over"];
/// What can come of an attempt.
pub const MARKS_OF_ATTEMPTS: [&str; 4] = ["open", "right", "near", "off"];

/// Is the second the first with its dots made hyphens?
fn is_hyphened(name: &str, hyphened: &str) -> bool {
    let same = |(a, b): (u8, u8)| a == b || a == b'.' && b == b'-';
    name.len() == hyphened.len() && name.bytes().zip(hyphened.bytes()).all(same)
}

/// Is this the place of a fault, or the words of one: `field`, `field:code`, `*:code`?
pub fn is_fault(place: &str) -> bool {
    match place.split_once(':') {
        Some((field, code)) => (field == "*" || is_field(field)) && has(FAULTS, code),
        None => find(place).is_some() || is_field(place),
    }
}

/// Is this a list of rows, an output in one, an act, a mark of a drawing, a part of one?
pub fn is_listed(list: &[Name], name: &str) -> bool {
    has(list, name)
}

/// Is this an output of any list's rows?
pub fn is_cell(name: &str) -> bool {
    CELLS.iter().any(|cell| cell.name.split_once('/').is_some_and(|(_, of_row)| of_row == name))
}
