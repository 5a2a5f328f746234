//! How does an author learn what is wrong with a page: on the command line, and while it is opened?

pub mod page;
pub mod script;
#[cfg(test)]
mod tests;

use form::contract::lint::Kind;

/// What is wrong, and what to do; also in the script, which fills in the same way.
const WORDS: [(&str, &str); 7] = [
    ("unknown", "{attribute} has “{name}”, which is no name here; take it out, or see names.md"),
    ("near", "{attribute} has “{name}”: did you mean {near}?"),
    ("no-unit", "{field} has no unit, so it can’t be used: add a select or a hidden input named {unit}"),
    ("contradiction", "{state} and !{state} never hold together, so this is never shown: take one out"),
    ("no-field", "{state} is about {field}, which is not in this form: add the field, or take this out"),
    ("not-offered", "{state} never holds, as {field} does not offer {code}: offer it, or take this out"),
    (
        "no-caution",
        "{output} tells how much goes into the water, and no words in this form say when it must not: add an element \
         with data-when=\"!add.yes\", or mark your own words with data-caution",
    ),
];

/// What is wrong, in words.
fn words(kind: &Kind) -> String {
    let (code, values): (&str, Vec<(&str, &String)>) = match kind {
        Kind::Unknown { attribute, name, near } => {
            let attribute = &attribute.to_string();
            let values = [("attribute", attribute), ("name", name)];
            return match near {
                Some(near) => filled("near", values.into_iter().chain([("near", near)])),
                None => filled("unknown", values.into_iter()),
            };
        }
        Kind::NoUnit { field, unit } => ("no-unit", vec![("field", field), ("unit", unit)]),
        Kind::Contradiction { state } => ("contradiction", vec![("state", state)]),
        Kind::NoField { state, field } => ("no-field", vec![("state", state), ("field", field)]),
        Kind::NotOffered { state, field, code } => {
            ("not-offered", vec![("state", state), ("field", field), ("code", code)])
        }
        Kind::NoCaution { output } => ("no-caution", vec![("output", output)]),
        _ => return format!("{kind:?}"),
    };
    filled(code, values.into_iter())
}

fn filled<'a>(code: &str, values: impl Iterator<Item = (&'a str, &'a String)>) -> String {
    let words = WORDS.iter().find(|(own, _)| *own == code).map_or(code, |(_, words)| words);
    values.fold(words.to_string(), |words, (key, value)| words.replace(&format!("{{{key}}}"), value))
}
