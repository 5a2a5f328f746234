//! Do the page and the table of names agree? In both directions.

mod rows;

use form::answer;
use form::contract::fields::{Answered, FIELDS, In};
use form::contract::names::{self, Name};
use form::contract::units::{Kind, UNITS, Unit};
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// As the build expands it: `cargo xtask pages` makes it.
static PAGE: LazyLock<String> = LazyLock::new(|| {
    let path = concat!(env!("CARGO_TARGET_TMPDIR"), "/../pages/index.html");
    std::fs::read_to_string(path).expect("cargo xtask pages comes first")
});

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

fn any_line(names: Names) -> Names {
    let digits = |c: char| c.is_ascii_digit();
    let line = |name: &str| {
        let (begin, rest) = name.split_once("log.")?;
        let rest = rest.trim_start_matches(digits).strip_prefix('.')?;
        Some(format!("{begin}log.N.{rest}"))
    };
    names.into_iter().map(|name| line(&name).unwrap_or(name)).collect()
}

fn missing(wanted: &Names, there: &Names) -> Vec<String> {
    wanted.difference(there).cloned().collect()
}

/// Names of the contract that other people's pages may want, and ours does not.
const FOR_OTHERS: [&str; 11] = [
    "link.given",
    "can.download",
    "answers",
    "framed",
    "locked",
    "only",
    "view.owner",
    "view.counter",
    "view.class",
    "example",
    "open",
];

fn unknown(page: &Names, known: fn(&str) -> bool) -> Vec<&String> {
    page.iter().filter(|name| !known(name)).collect()
}

fn unused(table: &[Name], page: &Names) -> Vec<&'static str> {
    let used = |name: &str| page.contains(name) || FOR_OTHERS.contains(&name);
    table.iter().map(|row| row.name).filter(|name| !used(name)).collect()
}

#[test]
fn outputs_are_the_same() {
    // Labels of a drawing are written like outputs.
    let page = any_line(&values("output", "name") | &values("text", "data-shape"));
    let known = |name: &str| {
        names::is_output(name) || names::is_cell(name) || names::is_listed(names::IN_FAULTS, name)
    };
    assert_eq!(unknown(&page, known), [""; 0], "asked for by the page, never said");
    assert_eq!(unused(names::OUTPUTS, &page), [""; 0], "said by the code, shown nowhere");
}

#[test]
fn states_are_the_same() {
    let page: Names = values("", "data-when")
        .iter()
        .flat_map(|when| when.split(' '))
        .map(|state| state.trim_start_matches('!').to_string())
        .collect();
    let page = any_line(page);
    assert_eq!(
        unknown(&page, |state| names::is_state(state) || state == "ready"),
        [""; 0],
        "heeded, never said"
    );
    assert_eq!(unused(names::STATES, &page), [""; 0], "said by the code, heeded nowhere");
    assert_eq!(unused(names::LINES, &page), [""; 0], "said in a row, heeded nowhere");
    // A gate that passes, or that nothing is known of, needs no sentence of its own.
    for gate in names::GATES {
        let heeded = |verdict: &str| page.contains(&format!("gate.{}.{verdict}", gate.name));
        assert!(
            ["wait", "stop", "unknown"].into_iter().any(heeded),
            "{} may hold, and nothing is said",
            gate.name
        );
    }
    // What is needed is said beside its field, and in the list.
    for input in plan::Input::ALL {
        let need = format!("need.{}", input.code().replace('.', "-"));
        assert!(page.contains(&need), "{need} is said nowhere");
    }
}

#[test]
fn every_fault_has_its_words_and_its_place() {
    let places = values("", "data-fault");
    assert_eq!(unknown(&places, names::is_fault), [""; 0], "words for a fault that never comes");
    let worded = |code: &str| places.iter().any(|place| place.ends_with(&format!(":{code}")));
    for fault in names::FAULTS {
        assert!(worded(fault.name), "{} has no words", fault.name);
    }
    for field in FIELDS.iter().filter(|field| !matches!(field.answer, Answered::Text)) {
        let hidden = ["level.", "show"].iter().any(|begin| field.name.starts_with(begin));
        assert!(hidden || places.contains(field.name), "{} has no place for its fault", field.name);
    }
}

#[test]
fn every_act_has_its_button_and_every_button_its_act() {
    let page = values("", "data-act");
    assert_eq!(unknown(&page, |act| names::is_listed(names::ACTS, act)), [""; 0]);
    assert_eq!(unused(names::ACTS, &page), [""; 0]);
    assert_eq!(unknown(&values("template", "data-each"), |row| names::is_listed(names::ROWS, row)), [""; 0]);
    assert_eq!(unknown(&values("", "data-mark"), |mark| names::is_listed(names::MARKS, mark)), [""; 0]);
}

/// What a page asks of nobody but itself.
fn of_the_page(name: &str) -> bool {
    ["view", "at", "paper", "link.job"].contains(&name) || name.starts_with("give.")
}

#[test]
fn every_question_is_asked_with_all_its_answers() {
    let asked: Names = values("input", "name").union(&values("select", "name")).cloned().collect();
    // What the page asks of nobody but its own style.
    let mut known: Names =
        names::FIELDS.iter().map(|row| row.name).filter(|name| of_the_page(name)).map(String::from).collect();
    known.extend(form::exercise::asked::ASKED.iter().map(|asked| asked.attempt.into()));
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
    let gates = plan::readiness::gates::GATES.iter().map(|row| row.code);
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
