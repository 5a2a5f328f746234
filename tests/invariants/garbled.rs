//! Does a field that can't be read ever change what is still told? It may only take it away.

use evidence::{named, rows};
use form::answer::Row;
use form::contract::{Field, FieldId, List, Scope, State};
use form::{Answer, Shown, answer};
use std::collections::BTreeSet;

/// What stands beside the rows, one set at a time: a job over days with every kind of line, switched on; the work
/// after it; a price.
const BESIDE: [&[&str]; 3] = [
    &[],
    &[
        "salt.repeat=410 salt.when=2027-05-20T09:00 start.when=2027-05-21T08:00 power.when=2027-05-23T10:00",
        "now=2027-05-23T11:00 salt.undissolved=none season.lost=10 season.rain=1 season.backwash=0.5 season.times=4",
        "generator.demand=2 generator.output=20 pump.hours=12 replace.drain-rate=5 replace.fill-rate=4 replace.water-price=3 bag.price=7 bag.on-hand=2",
        "log.1.kind=salt log.1.mass=6 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
        "log.2.kind=test log.2.salt=2000 log.2.repeat=2020 log.2.method=meter log.2.when=2027-05-22T09:00",
        "log.3.kind=salt log.3.mass=10 log.3.mass.unit=kg log.3.when=2027-05-22T10:00",
    ],
    &[
        "start.when=2027-05-21T08:00 power.when=2027-05-22T08:00 now=2027-05-22T09:00",
        "log.1.kind=salt log.1.mass=2 log.1.mass.unit={bag} log.1.when=2027-05-21T09:00",
        "log.24.kind=salt log.24.mass=66 log.24.mass.unit=[lb_av] log.24.when=2027-05-21T09:30",
    ],
];

/// How much is left to do; what was understood.
fn is_aside(output: &str) -> bool {
    output == "ready.left" || output.starts_with("echo.")
}

fn same(a: &Shown, b: &Shown) -> bool {
    match (a.number, b.number) {
        (Some((a, _)), Some((b, _))) => (a - b).abs() <= 1e-9 * a.abs().max(1.0),
        _ => a.text == b.text,
    }
}

/// What of `now` is told otherwise than before, or was not told at all.
fn told(before: &Row, now: &Row) -> Vec<String> {
    let mut told = Vec::new();
    for (output, shown) in now.iter().filter(|(output, _)| !is_aside(&output.name())) {
        let name = output.name();
        match before.iter().find(|(there, _)| there == output) {
            None => told.push(format!("{name} is {}, was not told", shown.text)),
            Some((_, was)) if same(was, shown) => {}
            Some((_, was)) => told.push(format!("{name} is {}, was {}", shown.text, was.text)),
        }
    }
    told
}

/// What is told with the field garbled and was not, or otherwise, before; and what passes or goes ahead only now.
fn changed(before: &Answer, now: &Answer) -> Vec<String> {
    let mut changed = told(&before.outputs, &now.outputs);
    for (list, lines) in now.rows.iter().filter(|(list, _)| *list != List::Gates) {
        let there = before.rows.iter().find(|(there, _)| there == list).map_or(&[][..], |(_, lines)| lines);
        // None at all is taken away.
        if !lines.is_empty() && lines.len() != there.len() {
            changed.push(format!("{} of {}, were {}", lines.len(), list.name(), there.len()));
        }
        for (line, was) in lines.iter().zip(there) {
            if line.state != was.state {
                let state = |line: &form::answer::Line| line.state.map_or(String::new(), State::name);
                changed.push(format!("{} in {}, was {}", state(line), list.name(), state(was)));
            }
            changed.extend(told(&was.cells, &line.cells));
        }
    }
    for (mark, at) in &now.marks {
        if !before
            .marks
            .iter()
            .any(|(there, was)| there == mark && was.iter().zip(at).all(|(a, b)| (a - b).abs() < 1e-9))
        {
            changed.push(format!("mark {} at {at:?}", mark.name()));
        }
    }
    let good = |state: &str| {
        state.starts_with("gate.") && state.ends_with(".pass")
            || ["add.yes", "add.none", "power.yes", "on"].contains(&state)
    };
    changed.extend(named::states(now).into_iter().filter(|state| good(state) && !before.holds(state)));
    changed
}

#[test]
fn a_garbled_field_takes_away_and_changes_nothing() {
    // In which units all of it is shown is no figure.
    let is_field = |name: &str| {
        FieldId::find(name).and_then(FieldId::field).is_some_and(|field| {
            matches!(field.scope(), Scope::Job | Scope::Person | Scope::Shop) && field != Field::Show
        })
    };
    let (mut wrong, mut garbled) = (BTreeSet::new(), 0);
    // Each row with one of them: with all, it would take thrice as long.
    for (row, beside) in rows::all().zip(BESIDE.into_iter().cycle()) {
        let form = rows::form(&[row.form, beside].concat());
        let before = answer(&form);
        let names: BTreeSet<_> = form.0.iter().map(|(name, _)| name.as_str()).collect();
        for name in names.into_iter().filter(|name| !form.text(name).is_empty()) {
            if !is_field(name) && !name.strip_suffix(".unit").is_some_and(is_field) {
                continue;
            }
            let mut form = form.clone();
            form.0.push((name.into(), [form.text(name), "\u{1}"].concat()));
            garbled += 1;
            for change in changed(&before, &answer(&form)) {
                wrong.insert(format!("{name}: {change} ({})", row.name));
            }
        }
    }
    assert!(garbled > 10_000, "only {garbled} were garbled");
    assert!(wrong.is_empty(), "\n{}", wrong.into_iter().collect::<Vec<_>>().join("\n"));
}
