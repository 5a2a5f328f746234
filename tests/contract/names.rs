//! Is the table of names what the code says, and is nothing of the contract gone?
//!
//! What the code can say is found by making it say it: over all cases and over every way in which one field can be
//! wrong or chosen. A name that no form reaches is a name that means nothing.

use evidence::everything;
use evidence::named;
use form::contract::units::UNITS;
use form::contract::{
    ASKED, Act, CHOSEN, DrawingMark, DrawingPart, Fact, FaultCode, Field, FieldId, FieldType, InFault,
    LineFact, List, Output, OutputId, RowFact, RowOutput, Scope, State,
};
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
    let asked = ASKED.iter().map(|asked| asked.name()).collect::<Vec<_>>().join(" ");
    for more in [&[][..], &[("ask.check", "yes")], &[("ask.reveal", "yes"), ("ask.check", "yes")]] {
        for attempt in ["390.1", "390", "1", "x", "80.3"] {
            let mut form = forms[0].clone();
            let ask = if attempt == "390" { "basic.mass,basic.rise" } else { &asked };
            form.0.push(("ask".into(), ask.into()));
            form.0.extend(ASKED.iter().map(|asked| (FieldId::Attempt(*asked).name(), attempt.into())));
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

/// The names of a table that no answer says, those apart that only a page does.
fn never_said(table: impl IntoIterator<Item = &'static str>, said: &Names) -> Vec<&'static str> {
    let said = |name: &str| said.contains(name) || OF_A_PAGE.contains(&name);
    table.into_iter().filter(|name| !said(name)).collect()
}

#[test]
fn the_code_says_all_that_the_table_has() {
    let (mut outputs, mut states, mut rows, mut faults) = Default::default();
    let _: &mut [&mut Names; 4] = &mut [&mut outputs, &mut states, &mut rows, &mut faults];
    for answer in everything() {
        let each: BTreeSet<_> = answer.outputs.iter().map(|(output, _)| output.name()).collect();
        assert_eq!(each.len(), answer.outputs.len(), "each is shown once: {:?}", answer.outputs);
        outputs.extend(each.iter().map(|name| any_line(name)));
        states.extend(named::states(&answer).iter().map(|state| any_line(state)));
        faults.extend(answer.faults.iter().map(|fault| fault.code.name().to_string()));
        for (list, lines) in &answer.rows {
            rows.insert(list.name().into());
            for line in lines {
                states.extend(line.state.map(State::name));
                let of_the_list =
                    line.cells.iter().map(|(output, _)| format!("{}/{}", list.name(), output.name()));
                rows.extend(of_the_list);
            }
        }
    }
    let of_jobs = |name: &&str| !name.starts_with("job");
    let of_a_page = |name: &&str| of_jobs(name) && !name.starts_with("answers/");
    assert_eq!(never_said(Output::ALL.map(Output::name), &outputs), [""; 0], "outputs");
    assert_eq!(never_said(Fact::ALL.map(Fact::name), &states), [""; 0], "states");
    assert_eq!(
        never_said(LineFact::ALL.map(LineFact::name), &states),
        [""; 0],
        "states of a line of the log"
    );
    let of_rows = never_said(RowFact::ALL.map(RowFact::name), &states);
    assert_eq!(of_rows.into_iter().filter(of_jobs).count(), 0, "states of a row");
    assert_eq!(never_said(FaultCode::ALL.map(FaultCode::name), &faults), [""; 0], "faults");
    let lists = List::ALL.map(List::name).into_iter().chain(RowOutput::ALL.map(RowOutput::name));
    assert_eq!(never_said(lists, &rows).into_iter().filter(of_a_page).collect::<Vec<_>>(), [""; 0], "lists");
    for (begin, codes) in CHOSEN.iter().filter(|(begin, _)| *begin != "view") {
        let chosen = codes.all.iter().map(|code| format!("{begin}.{code}"));
        assert_eq!(chosen.filter(|state| !states.contains(state)).collect::<Vec<_>>(), [""; 0]);
    }
}

/// Whatever has a name is found by it, and by no other.
#[test]
fn every_name_leads_back_to_what_it_names() {
    for state in State::all() {
        assert_eq!(State::find(&state.name()), Some(state), "{}", state.name());
    }
    for place in 0..form::contract::PLACES {
        let field = FieldId::at(place).unwrap();
        assert_eq!((FieldId::find(&field.name()), field.place()), (Some(field), Some(place)));
        for output in [OutputId::Echo(field), OutputId::EchoAlso(field), OutputId::EchoCount(field)] {
            assert_eq!(OutputId::find(&output.name()), Some(output));
        }
    }
    for output in Output::ALL {
        assert_eq!(OutputId::find(output.name()), Some(output.into()));
        assert_eq!(FieldId::find(&FieldId::Attempt(output).name()).is_some(), output.is_asked());
    }
}

/// The contract as it is promised, each name with the number that it keeps. A name may come, and is added here; none
/// may go, and none changes its number.
#[test]
fn nothing_of_the_contract_is_gone() {
    let mut now = String::new();
    for field in Field::ALL {
        writeln!(now, "question {} {}", field.number(), field.name()).unwrap();
        if let FieldType::Choice(codes) = field.kind() {
            codes.all.iter().for_each(|code| writeln!(now, "answer {}={code}", field.name()).unwrap());
        }
    }
    let attempts = ASKED.map(|asked| FieldId::Attempt(asked).name());
    attempts.iter().for_each(|attempt| writeln!(now, "attempt {attempt}").unwrap());
    macro_rules! list {
        ($($kind:literal $Id:ident),*) => {$(
            $Id::ALL.iter().for_each(|id| writeln!(now, "{} {} {}", $kind, id.number(), id.name()).unwrap());
        )*};
    }
    list!("output" Output, "state" Fact, "row-state" RowFact, "line-state" LineFact, "list" List, "row" RowOutput,
        "fault" FaultCode, "in-fault" InFault, "act" Act, "mark" DrawingMark, "shape" DrawingPart);
    for (begin, codes) in CHOSEN {
        codes.all.iter().for_each(|code| writeln!(now, "chosen {begin}.{code}").unwrap());
    }
    for row in plan::readiness::gates::GATES {
        writeln!(now, "gate {}", row.code).unwrap();
    }
    UNITS.iter().for_each(|unit| writeln!(now, "unit {:?} {}", unit.kind, unit.code).unwrap());
    let place = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("contract/contract-1.txt");
    if std::env::var_os("SALTWRIGHT_WRITE").is_some() {
        std::fs::write(&place, &now).unwrap();
    }
    let promised = std::fs::read_to_string(&place).unwrap();
    let lines = |text: &str| text.lines().map(String::from).collect::<Names>();
    let (now, promised) = (lines(&now), lines(&promised));
    assert_eq!(promised.difference(&now).collect::<Vec<_>>(), [""; 0], "gone");
    assert_eq!(now.difference(&promised).collect::<Vec<_>>(), [""; 0], "new: add them to contract-1.txt");
}

/// Are these all that a page hands over or that a link says?
#[test]
fn a_scope_holds_what_it_says() {
    let of = |scope| Field::ALL.into_iter().filter(move |field| field.scope() == scope);
    let links: Vec<_> = of(Scope::Link).map(Field::name).collect();
    assert_eq!(links.len(), form::embed_options::OPTIONS.len(), "{links:?}");
    assert!(form::embed_options::OPTIONS.iter().all(|option| option.scope() == Scope::Link));
    assert!(of(Scope::Person).count() > 0 && of(Scope::Page).count() > 0 && of(Scope::Handed).count() > 0);
}
