//! Do the built sheet and the table of names agree? In both directions.

use super::names::{Names, any_line};
use evidence::named;
use evidence::rows;
use evidence::site::{PAGES, Page, sheet};
use form::answer;
use form::contract::units::UNITS;
use form::contract::{
    ASKED, Act, CHOSEN, DrawingMark, Fact, FaultCode, Field, FieldId, FieldType, InFault, LineFact, List,
    Output, OutputId, RowFact, RowOutput, Scope, State,
};

/// With any line of the log as line N.
fn any_lines(names: Names) -> Names {
    names.iter().map(|name| any_line(name)).collect()
}

fn missing(wanted: &Names, there: &Names) -> Vec<String> {
    wanted.difference(there).cloned().collect()
}

/// Names of the contract that other people's pages may want, and ours does not.
const FOR_OTHERS: [&str; 13] = [
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
    "expand",
    "collapse",
];

fn unknown(page: &Names, known: impl Fn(&str) -> bool) -> Vec<&String> {
    page.iter().filter(|name| !known(name)).collect()
}

fn unused(table: impl IntoIterator<Item = &'static str>, page: &Names) -> Vec<&'static str> {
    let used = |name: &str| page.contains(name) || FOR_OTHERS.contains(&name);
    table.into_iter().filter(|name| !used(name)).collect()
}

#[test]
fn outputs_are_the_same() {
    // Labels of a drawing are written like outputs.
    let page = sheet();
    let page = any_lines(&page.values("output", "name") | &page.values("text", "data-shape"));
    let of_a_row = |name: &str| RowOutput::ALL.iter().any(|output| output.in_list() == name);
    let known =
        |name: &str| OutputId::find(name).is_some() || of_a_row(name) || InFault::find(name).is_some();
    assert_eq!(unknown(&page, known), [""; 0], "asked for by the page, never said");
    assert_eq!(unused(Output::ALL.map(Output::name), &page), [""; 0], "said by the code, shown nowhere");
}

#[test]
fn states_are_the_same() {
    let page: Names = sheet()
        .values("[data-when]", "data-when")
        .iter()
        .flat_map(|when| when.split(' '))
        .map(|state| state.trim_start_matches('!').to_string())
        .collect();
    let page = any_lines(page);
    let known = |state: &str| State::find(&state.replace('N', "1")).is_some();
    assert_eq!(unknown(&page, known), [""; 0], "heeded, never said");
    assert_eq!(unused(Fact::ALL.map(Fact::name), &page), [""; 0], "said by the code, heeded nowhere");
    assert_eq!(unused(LineFact::ALL.map(LineFact::name), &page), [""; 0], "said of a line, heeded nowhere");
    assert_eq!(unused(RowFact::ALL.map(RowFact::name), &page), [""; 0], "said in a row, heeded nowhere");
    for (begin, codes) in CHOSEN {
        let heeded = codes.all.iter().filter(|code| page.contains(&format!("{begin}.{code}"))).count();
        assert!(heeded > 0 || begin == "view", "{begin}: chosen, heeded nowhere");
    }
    // A gate that passes, or that nothing is known of, needs no sentence of its own.
    for gate in plan::readiness::gates::GATES {
        let heeded = |verdict: &str| page.contains(&format!("gate.{}.{verdict}", gate.code));
        assert!(
            ["wait", "stop", "unknown"].into_iter().any(heeded),
            "{} may hold, and nothing is said",
            gate.code
        );
    }
    // What is needed is said beside its field, and in the list.
    for input in plan::Input::ALL {
        let need = State::need((*input).into()).name();
        assert!(page.contains(&need), "{need} is said nowhere");
    }
}

/// Is this the place of a fault, or the words of one: `field`, `field:code`, `*:code`?
fn is_fault(place: &str) -> bool {
    let is_field = |field: &str| FieldId::find(field).is_some();
    match place.split_once(':') {
        Some((field, code)) => (field == "*" || is_field(field)) && FaultCode::find(code).is_some(),
        None => is_field(place),
    }
}

#[test]
fn every_fault_has_its_words_and_its_place() {
    let places = sheet().values("[data-fault]", "data-fault");
    assert_eq!(unknown(&places, is_fault), [""; 0], "words for a fault that never comes");
    let worded = |code: &str| places.iter().any(|place| place.ends_with(&format!(":{code}")));
    for fault in FaultCode::ALL {
        assert!(worded(fault.name()), "{} has no words", fault.name());
    }
    for field in named::questions().filter(|field| !matches!(field.kind(), FieldType::Text)) {
        let name = field.name();
        let hidden = ["risk-level.", "show"].iter().any(|begin| name.starts_with(begin));
        assert!(hidden || places.contains(name), "{name} has no place for its fault");
    }
}

#[test]
fn every_act_has_its_button_and_every_button_its_act() {
    let page = sheet();
    let [acts, lists, marks] =
        [("[data-act]", "data-act"), ("template", "data-each"), ("[data-mark]", "data-mark")]
            .map(|(of, attribute)| page.values(of, attribute));
    assert_eq!(unknown(&acts, |act| Act::find(act).is_some()), [""; 0]);
    assert_eq!(unused(Act::ALL.map(Act::name), &acts), [""; 0]);
    assert_eq!(unknown(&lists, |list| List::find(list).is_some()), [""; 0]);
    assert_eq!(unknown(&marks, |mark| DrawingMark::find(mark).is_some()), [""; 0]);
}

#[test]
fn every_question_is_asked_with_all_its_answers() {
    let page = sheet();
    let asked = page.values("input, select", "name");
    let mut known: Names = ASKED.iter().map(|asked| FieldId::Attempt(*asked).name()).collect();
    for field in Field::ALL {
        let name = field.name();
        if matches!(field.scope(), Scope::Link | Scope::Handed) || matches!(field.kind(), FieldType::Count) {
            continue;
        }
        known.insert(name.into());
        let all: Vec<_> = match field.kind() {
            FieldType::Choice(codes) => codes.all.to_vec(),
            FieldType::Unit(_) => field.units().map(|unit| unit.code).collect(),
            _ => continue,
        };
        assert_eq!(missing(&names(&all), &offered(&page, name)), [""; 0], "{name}");
    }
    assert_eq!(missing(&known, &asked), [""; 0], "known to the code, asked nowhere");
    assert_eq!(missing(&asked, &known), [""; 0], "asked by the page, unknown to the code");
}

fn names(all: &[&str]) -> Names {
    all.iter().map(|name| name.to_string()).collect()
}

/// The answers that one question offers: the options of its list, or its radio buttons.
fn offered(page: &Page, name: &str) -> Names {
    let of =
        format!("select[name=\"{name}\"] option, input:is([type=radio], [type=checkbox])[name=\"{name}\"]");
    page.values(&of, "value")
}

/// What is hidden in the file must be what a blank form hides: else the page jumps when it starts.
#[test]
fn the_page_starts_as_the_blank_form_leaves_it() {
    let blank = answer(&rows::form(&[
        "salt.now.unit=[ppm] bag.purity=99.4 show=as-typed treat.acid=31.45 treat.acid.unit=%{HCl} treat.bleach=10",
        "treat.bleach.unit=g/dL treat.calcium=77 treat.powder=100 water.ta.unit=mg/L water.ch.unit=mg/L",
        "replace.drain-rate.unit=L/min replace.water-price.unit=/m3 view=owner at=pool paper=record",
        "risk-level.over=1 risk-level.low=25 risk-level.cap=70 risk-level.enough=75 risk-level.drained=10 risk-level.slack=50",
    ]));
    let page = sheet();
    for element in page.select("[data-when]") {
        // What a template holds is not on the page.
        let is_template = |node: &scraper::Node| node.as_element().is_some_and(|e| e.name() == "template");
        if element.ancestors().any(|node| is_template(node.value())) {
            continue;
        }
        let when = element.attr("data-when").unwrap();
        if when.contains("ready") || when.starts_with("echo.") {
            continue; // The script has not started; echoes keep their place.
        }
        let shown = when.split(' ').all(|state| match state.strip_prefix('!') {
            Some(state) => !blank.holds(state),
            None => blank.holds(state),
        });
        assert_eq!(
            element.attr("hidden").is_some(),
            !shown,
            "<{} data-when={when:?}>",
            element.value().name()
        );
    }
}

#[test]
fn every_unit_has_a_word() {
    let words = sheet().values("data", "value");
    let gates = plan::readiness::gates::GATES.iter().map(|row| row.code);
    let units: Names = UNITS.iter().map(|u| u.code).chain(gates).map(String::from).collect();
    assert_eq!(missing(&units, &words), [""; 0], "units without a word");
    assert_eq!(missing(&words, &units), [""; 0], "words for a unit that is never shown");
}

#[test]
fn no_page_promises_what_it_cannot_keep() {
    for (_, file) in PAGES.map(|page| page[0]) {
        let page = Page::read(file);
        for words in page.words() {
            let promise = |word: &str| ["safe", "safely"].contains(&word) || word.starts_with("guarante");
            let lower = words.to_lowercase();
            assert!(!lower.split(|c: char| !c.is_alphabetic()).any(promise), "{file}: {words}");
        }
    }
}

/// Nothing is fetched from anybody; style and script stand where the page's policy knows them.
#[test]
fn no_page_reaches_out_or_does_what_its_policy_forbids() {
    for (_, file) in PAGES.into_iter().flatten() {
        let page = Page::read(file);
        for element in page.select("*") {
            for (name, value) in element.value().attrs() {
                let inline = name == "style" || name.starts_with("on");
                let away = ["http:", "https:", "//"].iter().any(|begin| value.starts_with(begin));
                let number = (name, value) == ("type", "number");
                assert!(!inline && !away && !number, "{file}: <{} {name}={value:?}>", element.value().name());
            }
        }
        for words in page.words() {
            assert!(!words.contains("http:") && !words.contains("https:"), "{file}: {words}");
        }
    }
}

/// The example of the README is the smallest page, or part of it.
#[test]
fn the_readme_shows_the_smallest_page() {
    let readme = include_str!("../../README.md");
    let page = include_str!("../../www/examples/smallest.html");
    let (_, shown) = readme.split_once("```html\n").unwrap();
    let (shown, _) = shown.split_once("```").unwrap();
    let strange: Vec<_> = shown.lines().filter(|line| !page.lines().any(|other| other == *line)).collect();
    assert_eq!(strange, [""; 0]);
    assert!(page.lines().count() <= 60, "as small as can be");
}
