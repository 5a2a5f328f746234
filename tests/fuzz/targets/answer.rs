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
        let name = if which % 2 == 0 { field.name } else { unit_of(field.name) };
        let text = match (typed, &field.answer) {
            ([0, place], wasm::field::Answered::Choice(codes)) => codes[*place as usize % codes.len()].into(),
            ([0, place], _) if name != field.name => UNITS[*place as usize % UNITS.len()].code.into(),
            _ => String::from_utf8_lossy(typed).into_owned(),
        };
        form.0.push((name.into(), text));
    }
    let answer = answer(&form);
    for (name, shown) in
        answer.outputs.iter().chain(answer.rows.iter().flat_map(|(_, rows)| rows.iter().flatten()))
    {
        let number = !shown.text.contains(|c: char| c.is_alphabetic());
        assert!(number, "{name} shows {:?} for {form:?}", shown.text);
    }
});
