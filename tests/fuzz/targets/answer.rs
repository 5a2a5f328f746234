//! Does any form, however filled in, break its answer, or put what is no number on the page?
#![no_main]

use libfuzzer_sys::fuzz_target;
use wasm::field::{FIELDS, unit_of};
use wasm::{Form, answer, unit::UNITS};

// The first byte of a line names the field or the field of its unit; what follows is what was typed,
// or the place in a list, so that the fuzzer need not guess codes letter by letter.
fuzz_target!(|bytes: &[u8]| {
    let mut form = Form::default();
    for line in bytes.split(|byte| *byte == b'\n') {
        let [which, typed @ ..] = line else { continue };
        let field = &FIELDS[*which as usize / 2 % FIELDS.len()];
        // The first lines of the log stand for all of them.
        let line = (*which % 3 + 1).to_string();
        let own = field.name.replace(".N.", &[".", &line, "."].concat());
        let name = if which % 2 == 0 { own.as_str() } else { unit_of(&own) };
        let text = match (typed, &field.answer) {
            ([0, place], wasm::field::Answered::Choice(codes)) => codes[*place as usize % codes.len()].into(),
            ([0, place], _) if name != own => UNITS[*place as usize % UNITS.len()].code.into(),
            _ => String::from_utf8_lossy(typed).into_owned(),
        };
        form.0.push((name.into(), text));
    }
    let answer = answer(&form);
    // What the decision goes by is at fault: then no amount.
    if answer.faults.iter().any(|fault| fault.field.starts_with("log.")) {
        assert!(answer.text("now.mass").is_none(), "an amount in spite of {:?}", answer.faults);
    }
    let cells = answer.rows.iter().flat_map(|(_, lines)| lines).flat_map(|line| &line.cells);
    for (name, shown) in answer.outputs.iter().chain(cells) {
        let number = shown.unit == Some("moment") || !shown.text.contains(|c: char| c.is_alphabetic());
        assert!(number, "{name} shows {:?} for {form:?}", shown.text);
    }
});
