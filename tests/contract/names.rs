//! Is the table of names what the code says, and is nothing of the contract gone?
//!
//! What the code can say is found by making it say it: over all cases and over every way in which one field can be
//! wrong or chosen. A name that no form reaches is a name that means nothing.

use evidence::everything;
use form::contract::names::{self, Name};
use form::contract::units::UNITS;
use form::exercise::asked::ASKED;
use form::{Answer, answer};
use std::collections::BTreeSet;
use std::fmt::Write;

pub type Names = BTreeSet<String>;

/// What only a page in a browser says, of itself, its files and its other jobs.
const OF_A_PAGE: [&str; 31] = [
    "can.undo",
    "can.copy",
    "can.calendar",
    "can.code",
    "can.print",
    "can.download",
    "can.keep",
    "kept.yes",
    "kept.no",
    "kept.other",
    "file.open",
    "file.newer",
    "file.wrong",
    "link.given",
    "link.long",
    "frame.given",
    "boxed",
    "print.old",
    "jobs",
    "answers",
    "framed",
    "locked",
    "only",
    "view.owner",
    "view.counter",
    "view.class",
    "kept.when",
    "print.when",
    "ask",
    "link.job",
    "variant",
];

fn everything() -> Vec<Answer> {
    let mut forms = everything::forms();
    let asked = ASKED.iter().map(|asked| asked.name).collect::<Vec<_>>().join(" ");
    for more in [&[][..], &[("ask.check", "yes")], &[("ask.reveal", "yes"), ("ask.check", "yes")]] {
        for attempt in ["390.1", "390", "1", "x", "80.3"] {
            let mut form = forms[0].clone();
            let ask = if attempt == "390" { "dose.mass,dose.rise" } else { &asked };
            form.0.push(("ask".into(), ask.into()));
            form.0.extend(ASKED.iter().map(|asked| (asked.attempt.into(), attempt.into())));
            form.0.extend(more.iter().map(|(name, text)| (name.to_string(), text.to_string())));
            forms.push(form);
        }
    }
    forms.iter().map(answer).collect()
}

/// A name with its line of the log made N.
pub fn any_line(name: &str) -> String {
    let parts: Vec<&str> = name.split('.').collect();
    let line = |at: usize| at > 0 && parts[at - 1] == "log" && parts[at].bytes().all(|b| b.is_ascii_digit());
    let parts: Vec<&str> = (0..parts.len()).map(|at| if line(at) { "N" } else { parts[at] }).collect();
    parts.join(".")
}

fn unknown<'a>(said: impl IntoIterator<Item = &'a String>, known: fn(&str) -> bool) -> Names {
    said.into_iter().filter(|name| !known(name)).cloned().collect()
}

fn never_said(table: &[Name], said: &Names) -> Vec<&'static str> {
    let said = |name: &str| said.contains(name) || OF_A_PAGE.contains(&name);
    table.iter().map(|row| row.name).filter(|name| !said(name)).collect()
}

#[test]
fn the_code_says_what_the_table_has_and_nothing_else() {
    let (mut outputs, mut states, mut lines, mut rows, mut cells, mut faults) = Default::default();
    let _: &mut [&mut Names; 6] =
        &mut [&mut outputs, &mut states, &mut lines, &mut rows, &mut cells, &mut faults];
    for answer in everything() {
        let once: BTreeSet<_> = answer.states.iter().collect();
        assert_eq!(once.len(), answer.states.len(), "each is said once: {:?}", answer.states);
        outputs.extend(answer.outputs.iter().map(|(name, _)| any_line(name)));
        states.extend(answer.states.iter().map(|state| any_line(state)));
        faults.extend(answer.faults.iter().map(|fault| fault.code.to_string()));
        for (list, all) in &answer.rows {
            rows.insert(list.to_string());
            lines.extend(all.iter().filter(|line| !line.state.is_empty()).map(|line| line.state.to_string()));
            cells.extend(all.iter().flat_map(|line| &line.cells).map(|(name, _)| format!("{list}/{name}")));
        }
    }
    assert_eq!(unknown(&outputs, names::is_output), Names::new(), "outputs that the table lacks");
    assert_eq!(unknown(&states, |state| names::is_state(state) || state == "ready"), Names::new(), "states");
    assert_eq!(unknown(&lines, |line| names::is_listed(names::LINES, line)), Names::new(), "lines");
    assert_eq!(unknown(&rows, |row| names::is_listed(names::ROWS, row)), Names::new(), "rows");
    assert_eq!(unknown(&cells, |cell| names::is_listed(names::CELLS, cell)), Names::new(), "cells");
    assert_eq!(unknown(&faults, |fault| names::is_listed(names::FAULTS, fault)), Names::new(), "faults");
    assert_eq!(never_said(names::OUTPUTS, &outputs), [""; 0], "outputs");
    assert_eq!(never_said(names::STATES, &states), [""; 0], "states");
    assert_eq!(never_said(names::FAULTS, &faults), [""; 0], "faults");
    let of_jobs = |name: &&&str| !name.starts_with("job");
    assert_eq!(never_said(names::LINES, &lines).iter().filter(of_jobs).count(), 0, "lines");
    assert_eq!(never_said(names::ROWS, &rows).iter().filter(of_jobs).count(), 0, "rows");
    let of_a_page = |name: &&&str| !name.starts_with("jobs/") && !name.starts_with("answers/");
    assert_eq!(never_said(names::CELLS, &cells).iter().filter(of_a_page).count(), 0, "cells");
}

#[test]
fn units_and_gates_are_those_of_the_code() {
    let units: Names =
        UNITS.iter().map(|unit| unit.code.to_string()).chain(["moment", "day"].map(String::from)).collect();
    let table: Names = names::UNITS.iter().map(|row| row.name.to_string()).collect();
    assert_eq!(table, units);
    let gates: Names = plan::readiness::gates::GATES.iter().map(|row| row.code.to_string()).collect();
    let table: Names = names::GATES.iter().map(|row| row.name.to_string()).collect();
    assert_eq!(table, gates);
}

/// The contract as it was promised. A name may come, and is added here; none may go.
#[test]
fn nothing_of_the_contract_is_gone() {
    let lists = [
        ("question", names::FIELDS),
        ("answer", names::CHOICES),
        ("output", names::OUTPUTS),
        ("state", names::STATES),
        ("gate", names::GATES),
        ("rows", names::ROWS),
        ("cell", names::CELLS),
        ("line", names::LINES),
        ("fault", names::FAULTS),
        ("in-fault", names::IN_FAULTS),
        ("act", names::ACTS),
        ("mark", names::MARKS),
        ("shape", names::SHAPES),
        ("term", names::TERMS),
        ("beside", names::HANDED),
        ("unit", names::UNITS),
    ];
    let mut now = String::new();
    for (kind, list) in lists {
        list.iter().for_each(|row| writeln!(now, "{kind} {}", row.name).unwrap());
    }
    ASKED.iter().for_each(|asked| writeln!(now, "question {}", asked.attempt).unwrap());
    let place = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("contract/contract-1.txt");
    let promised = std::fs::read_to_string(&place).unwrap();
    let lines = |text: &str| text.lines().map(String::from).collect::<Names>();
    let (now, promised) = (lines(&now), lines(&promised));
    assert_eq!(promised.difference(&now).collect::<Vec<_>>(), [""; 0], "gone");
    assert_eq!(now.difference(&promised).collect::<Vec<_>>(), [""; 0], "new: add them to contract-1.txt");
}
