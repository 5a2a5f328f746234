//! Which forms make the code say everything that it can say?

use crate::named::questions;
use crate::rows::{all, form};
use form::Form;
use form::contract::{FieldId, FieldType};

/// The page has one line of the log, which stands for all of them.
fn first_line(name: &str) -> String {
    name.replace("log.N.", "log.1.")
}

/// Forms that between them make the code say everything it can say.
pub fn forms() -> Vec<Form> {
    let mut forms: Vec<Form> = all().map(|row| form(row.form)).collect();
    let full = all().find(|row| row.name.starts_with("too much salt, cement")).unwrap();
    let mut full = form(full.form);
    full.0.extend(
        form(&["goal.ph=7.4 goal.ta=100 goal.ch=400 goal.cya=80 water.fc=1 goal.fc=3 treat.acid=31.45 treat.bleach=10 \
              treat.calcium=77 treat.powder=100"]).0,
    );
    let with = |name: &str, text: &str| {
        let mut form = full.clone();
        form.0.push((first_line(name), text.into()));
        form
    };
    for field in questions() {
        let name = field.name();
        match field.kind() {
            FieldType::Number(..) => {
                for text in ["x", "7 kg", "1e9", "-1", "999999999", "0.001", "7,400", "7.5", "0.5"] {
                    forms.push(with(name, text));
                }
                if let Some(unit) = FieldId::unit_name(&first_line(name)) {
                    forms.push(with(&unit, ""));
                }
                // Emptied, so that it is needed.
                let mut form = with("bag.on-hand", "1");
                form.0.retain(|(name, _)| *name != first_line(name));
                forms.push(form);
            }
            FieldType::Text => forms.push(with(name, "Ünder 1 & 2")),
            FieldType::Day => forms.extend(["x", "2027-05-20"].map(|text| with(name, text))),
            FieldType::Moment => forms.extend(["x", "2027-05-20T09:00"].map(|text| with(name, text))),
            FieldType::Choice(codes) => {
                forms.extend(codes.all.iter().map(|code| with(name, code)));
                forms.push(with(name, "nonsense"));
            }
            _ => {}
        }
    }
    for text in ["3,3 ", "40000", "41"] {
        forms.extend(
            ["water.temperature", "water.ta", "water.ch", "water.cya", "salt.now"]
                .map(|name| with(name, text)),
        );
    }
    forms.extend(
        [
            ("water.temperature", "45"),
            ("water.ta", "900"),
            ("water.ch", "2900"),
            ("water.cya", "450"),
            ("salt.now", "39000"),
        ]
        .map(|(n, t)| with(n, t)),
    );
    forms.extend([("salt.low", "3300"), ("salt.high", "3000")].map(|(name, text)| with(name, text)));
    // What is read only under some shapes: under each of them in every way.
    for row in all().filter(|row| row.form.iter().any(|part| part.contains("pool.shape="))) {
        for field in questions().filter(|field| field.name().starts_with("pool.")) {
            for text in ["", "x", "99999"] {
                let mut form = form(row.form);
                form.0.push((field.name().into(), text.into()));
                forms.push(form);
            }
        }
    }
    for row in all() {
        let mut bare = form(row.form);
        bare.0.retain(|(name, _)| !name.starts_with("bag.") && !name.ends_with(".unit"));
        forms.push(bare);
    }
    forms
}
