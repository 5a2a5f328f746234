//! Do the page and the code use the same names? In both directions.
//!
//! What the code can say is found by making it say it: over all cases and over every way in which
//! one field can be wrong or chosen. A name that no form reaches is a name that means nothing.

mod rows;

use std::collections::BTreeSet;
use wasm::field::{Answered, FIELDS, In};
use wasm::unit::{Kind, UNITS, Unit};
use wasm::{Form, answer};

const PAGE: &str = include_str!("../www/index.html");

type Names = BTreeSet<String>;

/// Every value of an attribute, of tags that begin with `tag`; entities as the browser reads them.
fn values(tag: &str, attribute: &str) -> Names {
    let key = format!(" {attribute}=\"");
    let tags =
        PAGE.split('<').filter(|part| part.starts_with(tag)).map(|part| part.split('>').next().unwrap());
    tags.filter_map(|part| part.split_once(&key))
        .map(|(_, rest)| rest.split('"').next().unwrap().to_string())
        .collect()
}

/// The page has one line of the log, which stands for all of them.
fn first_line(name: &str) -> String {
    name.replace("log.N.", "log.1.")
}

fn any_line(names: Names) -> Names {
    let digits = |c: char| c.is_ascii_digit();
    let line = |name: &str| {
        let (begin, rest) = name.split_once("log.")?;
        let rest = rest.trim_start_matches(digits).strip_prefix('.')?;
        Some(format!("{begin}log.N.{rest}"))
    };
    names.into_iter().map(|name| line(&name).unwrap_or(name)).collect()
}

/// Forms that between them make the code say everything it can say.
fn forms() -> Vec<Form> {
    let mut forms: Vec<Form> = rows::all().map(|row| rows::form(row.form)).collect();
    let full = rows::all().find(|row| row.name.starts_with("too much salt, cement")).unwrap();
    let mut full = rows::form(full.form);
    full.0.extend(
        rows::form(&["goal.ph=7.4 goal.ta=100 goal.ch=400 goal.cya=80 water.fc=1 goal.fc=3 treat.acid=31.45 treat.bleach=10 \
              treat.calcium=77 treat.powder=100"]).0,
    );
    let with = |name: &str, text: &str| {
        let mut form = full.clone();
        form.0.push((first_line(name), text.into()));
        form
    };
    for field in FIELDS {
        match &field.answer {
            Answered::Number(..) => {
                for text in ["x", "7 kg", "1e9", "-1", "999999999", "0.001", "7,400", "7.5", "0.5"] {
                    forms.push(with(field.name, text));
                }
                forms.push(with(wasm::field::unit_of(&first_line(field.name)), ""));
                // Emptied, so that it is needed.
                let mut form = with("bag.have", "1");
                form.0.retain(|(name, _)| *name != first_line(field.name));
                forms.push(form);
            }
            Answered::List(..) => {}
            Answered::Text => forms.push(with(field.name, "Ünder 1 & 2")),
            Answered::Day => forms.extend(["x", "2027-05-20"].map(|text| with(field.name, text))),
            Answered::Moment => forms.extend(["x", "2027-05-20T09:00"].map(|text| with(field.name, text))),
            Answered::Choice(codes) => {
                forms.extend(codes.iter().map(|code| with(field.name, code)));
                forms.push(with(field.name, "nonsense"));
            }
        }
    }
    for text in ["3,3 ", "40000", "41"] {
        forms.extend(
            ["water.heat", "water.ta", "water.ch", "water.cya", "salt.now"].map(|name| with(name, text)),
        );
    }
    forms.extend(
        [
            ("water.heat", "45"),
            ("water.ta", "900"),
            ("water.ch", "2900"),
            ("water.cya", "450"),
            ("salt.now", "39000"),
        ]
        .map(|(n, t)| with(n, t)),
    );
    forms.extend([("salt.low", "3300"), ("salt.high", "3000")].map(|(name, text)| with(name, text)));
    // What is read only under some shapes: under each of them in every way.
    for row in rows::all().filter(|row| row.form.iter().any(|part| part.contains("pool.shape="))) {
        for field in FIELDS.iter().filter(|field| field.name.starts_with("pool.")) {
            for text in ["", "x", "99999"] {
                let mut form = rows::form(row.form);
                form.0.push((field.name.into(), text.into()));
                forms.push(form);
            }
        }
    }
    for row in rows::all() {
        let mut bare = rows::form(row.form);
        bare.0.retain(|(name, _)| !name.starts_with("bag.") && !name.ends_with(".unit"));
        forms.push(bare);
    }
    forms
}

fn missing(wanted: &Names, there: &Names) -> Vec<String> {
    wanted.difference(there).cloned().collect()
}

#[test]
fn outputs_are_the_same() {
    let (mut said, mut cells) = (Names::new(), Names::new());
    for answer in forms().iter().map(answer) {
        said.extend(answer.outputs.into_iter().map(|(name, _)| name));
        cells.extend(
            answer
                .rows
                .into_iter()
                .flat_map(|(_, lines)| lines)
                .flat_map(|line| line.cells)
                .map(|(name, _)| name),
        );
    }
    // Labels of a drawing are written like outputs.
    let page = &values("output", "name") | &values("text", "data-shape");
    let in_faults = ["low", "high", "got", "other"].map(String::from);
    said.extend(cells);
    said.extend(PAGES_OWN_OUTPUTS.map(String::from));
    said.extend(in_faults);
    let said = any_line(said);
    assert_eq!(missing(&said, &page), [""; 0], "said by the code, shown nowhere");
    assert_eq!(missing(&page, &said), [""; 0], "asked for by the page, never said");
}

/// What the page knows of itself and its browser, of its files and its other jobs.
const PAGES_OWN: [&str; 16] = [
    "can.undo",
    "can.copy",
    "can.calendar",
    "can.code",
    "kept.yes",
    "kept.no",
    "kept.other",
    "file.open",
    "file.newer",
    "file.wrong",
    "link.given",
    "link.long",
    "print.old",
    "jobs",
    "job.own",
    "job.other",
];
const PAGES_OWN_OUTPUTS: [&str; 5] = ["kept.when", "print.when", "job", "called", "saved"];

#[test]
fn states_are_the_same() {
    let mut said: Names = forms().iter().flat_map(|form| answer(form).states).collect();
    said.extend(PAGES_OWN.map(String::from));
    let all = forms();
    let lines = all
        .iter()
        .flat_map(|form| answer(form).rows)
        .flat_map(|(_, lines)| lines)
        .map(|line| line.state.to_string());
    said.extend(lines.filter(|state| !state.is_empty()));
    let said = any_line(said);
    let page: Names = values("", "data-when")
        .iter()
        .flat_map(|when| when.split(' '))
        .map(|state| state.trim_start_matches('!').to_string())
        .collect();
    // A gate that passes, or that nothing is known of, needs no sentence of its own.
    let quiet = |state: &str| {
        state.starts_with("gate.") && [".pass", ".unknown"].iter().any(|end| state.ends_with(end))
    };
    let unused: Vec<_> = said.iter().filter(|state| !page.contains(*state) && !quiet(state)).collect();
    assert_eq!(unused, [""; 0], "said by the code, heeded nowhere");
    assert_eq!(missing(&page, &said), [""; 0], "heeded by the page, never said");
}

#[test]
fn every_fault_has_its_words_and_its_place() {
    let places = values("", "data-fault");
    let mut codes = Names::new();
    for fault in forms().iter().flat_map(|form| answer(form).faults) {
        let field = any_line([fault.field.to_string()].into()).pop_first().unwrap();
        let (own, general) = (format!("{field}:{}", fault.code), format!("*:{}", fault.code));
        assert!(places.contains(&own) || places.contains(&general), "{own} has no words");
        assert!(places.contains(&field), "{field} has no place for its fault");
        codes.extend([own, general, field]);
    }
    assert_eq!(missing(&places, &codes), [""; 0], "words for a fault that never comes");
}

#[test]
fn every_question_is_asked_with_all_its_answers() {
    let asked: Names = values("input", "name").union(&values("select", "name")).cloned().collect();
    // What the page asks of nobody but its own style.
    let mut known = names(&["view", "at", "paper", "link.job"]);
    for field in FIELDS {
        known.insert(field.name.into());
        match &field.answer {
            Answered::Choice(all) => {
                assert_eq!(missing(&names(all), &offered(field.name)), [""; 0], "{}", field.name)
            }
            Answered::Number(_, In::Asked(kind, unit) | In::Usual(kind, unit, _))
            | Answered::List(_, In::Asked(kind, unit)) => {
                known.insert((*unit).into());
                // Salt, and what a test of it shows, are chosen in one place.
                let salt = |kind: Kind| matches!(kind, Kind::Salt | Kind::Reading);
                let of = |u: &Unit| u.kind == *kind || salt(u.kind) && salt(*kind);
                let units: Vec<_> = UNITS.iter().filter(|u| of(u)).map(|u| u.code).collect();
                assert_eq!(missing(&names(&units), &offered(unit)), [""; 0], "{unit}");
            }
            Answered::Number(..) | Answered::List(..) | Answered::Moment | Answered::Day | Answered::Text => {
            }
        }
    }
    assert_eq!(missing(&known, &asked), [""; 0], "known to the code, asked nowhere");
    assert_eq!(missing(&asked, &known), [""; 0], "asked by the page, unknown to the code");
}

fn names(all: &[&str]) -> Names {
    all.iter().map(|name| name.to_string()).collect()
}

/// The answers that one question offers: the options of its list, or its radio buttons.
fn offered(name: &str) -> Names {
    let key = format!(" name=\"{name}\"");
    let value =
        |tag: &str| tag.split_once(" value=\"").map(|(_, rest)| rest.split('"').next().unwrap().to_string());
    let list = PAGE.split("<select").skip(1).find(|select| select.split('>').next().unwrap().contains(&key));
    let options = list.map_or("", |select| select.split("</select>").next().unwrap());
    let radios = PAGE.split("<input").skip(1).map(|tag| tag.split('>').next().unwrap());
    let radios = radios.filter(|tag| tag.contains(&key) && tag.contains("type=\"radio\""));
    options.split("<option").skip(1).chain(radios).filter_map(value).collect()
}

/// What is hidden in the file must be what a blank form hides: else the page jumps when it starts.
#[test]
fn the_page_starts_as_the_blank_form_leaves_it() {
    let blank = answer(&rows::form(&[
        "salt.now.unit=[ppm] bag.purity=99.4 show=as-typed treat.acid=31.45 treat.acid.unit=%{HCl} treat.bleach=10",
        "treat.bleach.unit=g/dL treat.calcium=77 treat.powder=100 water.ta.unit=mg/L water.ch.unit=mg/L",
        "less.flow.unit=L/min less.price.unit=/m3 view=owner at=pool paper=record",
        "level.over=1 level.low=25 level.cap=70 level.enough=75 level.drained=10 level.slack=50",
    ]));
    // What a template holds is not on the page.
    let page: String = PAGE
        .split("<template")
        .map(|part| part.split_once("</template>").map_or(part, |(_, rest)| rest))
        .collect();
    for tag in page.split('<').map(|part| part.split('>').next().unwrap()) {
        let Some((_, when)) = tag.split_once(" data-when=\"") else { continue };
        let when = when.split('"').next().unwrap();
        if when.contains("ready") || when.starts_with("echo.") {
            continue; // The script has not started; echoes keep their place.
        }
        let shown = when.split(' ').all(|state| match state.strip_prefix('!') {
            Some(state) => !blank.holds(state),
            None => blank.holds(state),
        });
        let hidden = tag.split(' ').any(|word| word == "hidden");
        assert_eq!(hidden, !shown, "<{tag}>");
    }
}

#[test]
fn every_unit_has_a_word() {
    let words = values("data", "value");
    let gates = plan::gates::GATES.iter().map(|row| row.code);
    let units: Names = UNITS.iter().map(|u| u.code).chain(gates).map(String::from).collect();
    assert_eq!(missing(&units, &words), [""; 0], "units without a word");
    assert_eq!(missing(&words, &units), [""; 0], "words for a unit that is never shown");
}

#[test]
fn the_page_promises_nothing_it_cannot_keep() {
    let page = PAGE.to_lowercase();
    for word in [" safe ", "safely", "guarantee", "http:", "https:", "style=\"", "onclick", "type=\"number\""]
    {
        assert!(!page.contains(word), "the page contains {word:?}");
    }
}
