//! Which form does a string of bytes stand for?
//!
//! A case that the tests hold fast, so that all of it is reached from the first byte on, and what was typed over it.

use evidence::{everything, rows};
use form::Form;
use form::contract::units::UNITS;
use form::contract::{ASKED, Field, FieldId, FieldType};
use std::sync::LazyLock;

/// What else a form may hold: what the browser hands over, what a link says, and a name that nobody knows.
const BESIDE: [&str; 16] = [
    "now",
    "utc.now",
    "utc.salt.when",
    "utc.log.1.when",
    "utc.start.when",
    "utc.power.when",
    "sign.decimal",
    "sign.group",
    "sign.grouped",
    "ask.value",
    "ask.check",
    "ask.reveal",
    "ask",
    "variant",
    "view",
    "log.1.strange",
];

/// Texts that are hard to come by letter by letter.
const TEXTS: &[&str] = &[
    "0",
    "-0",
    "\u{2212}0.0",
    "0.000001",
    "1e9",
    "NaN",
    "inf",
    "999999999999999",
    "1234567890123456",
    "1,250",
    "1.250",
    "16.596,5",
    "1 234,5",
    "٣٢٠٠",
    "½",
    "30' 6\"",
    "10' 6\"; 12'",
    "1;2;1",
    "2, 3, 2.5",
    "12 kg",
    "yes",
    "5",
    ",",
    ".",
    "\u{202f}",
    "\u{66b}",
    "1970-01-01T00:00",
    "2027-05-20T09:00",
    "2027-05-20",
    "9999-12-31T23:59",
    "9999-12-31",
    "4222999999",
    "-1",
    "basic.mass,basic.rise index.now replace.share run.setting measured.volume",
    "<b>1</b>",
    "\u{202e}12\r\n\0",
];

static FORMS: LazyLock<Vec<Form>> = LazyLock::new(|| {
    let cases = rows::all().map(|row| rows::form(row.form));
    std::iter::once(Form::default()).chain(cases).chain(everything::forms()).collect()
});

static NAMES: LazyLock<Vec<String>> = LazyLock::new(|| {
    let mut names = Vec::new();
    for field in Field::ALL {
        // The first lines of the log and the last stand for all of them.
        let lines: &[&str] = if field.name().contains(".N.") { &["1", "2", "3", "24"] } else { &[""] };
        names.extend(lines.iter().map(|line| field.name().replace(".N.", &format!(".{line}."))));
    }
    names.extend(names.clone().iter().filter_map(|name| FieldId::unit_name(name)));
    for of in [FieldId::Attempt, FieldId::AttemptUnit, FieldId::AttemptWithin] {
        names.extend(ASKED.map(|output| of(output).name()));
    }
    names.extend(BESIDE.map(String::from));
    names.sort();
    names.dedup();
    names
});

/// Two bytes for the case, then a line for each field typed over: two bytes for its name, and its text. Where that
/// begins with a nought or a one, it is the place in a list, so that no code need be guessed letter by letter.
pub fn form(bytes: &[u8]) -> Form {
    let mut lines = bytes.split(|byte| *byte == b'\n');
    let mut form = match lines.next() {
        Some([low, high, ..]) => FORMS[place(*low, *high) % FORMS.len()].clone(),
        _ => Form::default(),
    };
    for line in lines {
        let [low, high, typed @ ..] = line else { continue };
        let name = &NAMES[place(*low, *high) % NAMES.len()];
        let text = match (typed, FieldId::find(name).and_then(FieldId::field).map(Field::kind)) {
            ([0, place, ..], Some(FieldType::Choice(codes))) => {
                codes.all[*place as usize % codes.all.len()].into()
            }
            ([0, place, ..], _) => UNITS[*place as usize % UNITS.len()].code.into(),
            ([1, place, ..], _) => TEXTS[*place as usize % TEXTS.len()].into(),
            _ => String::from_utf8_lossy(typed).into_owned(),
        };
        form.0.push((name.clone(), text));
    }
    form
}

fn place(low: u8, high: u8) -> usize {
    usize::from(u16::from_le_bytes([low, high]))
}
