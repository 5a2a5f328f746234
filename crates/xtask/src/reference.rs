//! How does the table of names become the reference for authors?

use crate::shell;
use anyhow::{Context, Result};
use form::contract::units::{QuantityKind, UNITS};
use form::contract::{
    ASKED, Act, CHOSEN, DrawingMark, DrawingPart, Fact, FaultCode, Field, FieldId, FieldType, List, Output,
    RowFact, RowOutput, Scope, UnitRule, gates,
};
use plan::readiness::gates::GATES;
use std::fmt::Write;
use std::fs;

/// Where it lies, in `www`.
pub const FILE: &str = "names.md";

const HEAD: &str = "\
# Names of contract 1

Made from the one table by `cargo xtask names`; do not edit. A form is `<form data-saltwright=\"1\">`. What stands \
here is never removed and never gets another meaning; new names may come.

| You write | On | What it does |
|---|---|---|
| `name=\"salt.now\"` | input, select, textarea | a question. Names that are not listed are yours: kept, and passed on |
| `name=\"salt.now.unit\"` | select, or hidden input | the unit of that question; hidden, you have settled it |
| `name=\"basic.mass\"` | output | gets the result; a dash where there is none |
| `data-unit=\"kg\"` | output | this result in this unit, whatever is typed |
| `data-when=\"add.yes !held\"` | any element | shown while each listed state holds, and none behind `!` does; begin with `hidden` |
| `data-fault=\"salt.now\"` | any element | the place for what is wrong with that field. `salt.now:low` is shown for that fault alone |
| `<template data-fault=\"*:low\">` | in the form | the words of that fault for every field; inside it the outputs `low`, `high`, `got`, `other` |
| `<template data-each=\"steps\">` | in the form | one copy a row; inside it the row’s own outputs and states |
| `<template data-units>` | in the form | your words: `<data value=\"kg\">kilos</data>` |
| `<template data-say>` | in the form | the sentence that is spoken, once it is new |
| `<template data-lines>` | in the form | one line of the log; N in names is the number of the line |
| `data-hint=\"salt.now\"` | any element | a hint: tied to the field for those who listen |
| `data-act=\"print\"` | button | does that, with the button’s `value` if it needs one |
| `data-scale=\"salt\"` with `data-left`, `data-right` | svg | a scale; children with `data-mark` are put in their places |
| `data-range=\"200 900 50\"` | a question | its figures in numbered exercises: least, most, step; or texts to choose from |
| `readonly`, `value`, `checked`, `selected` | field | HTML’s own: locked, preset |
| `data-keep` | form | keeps the job on the device; two forms on one page then need an `id` each |
| `data-part=\"salt\"` | any element | a part that a link can show alone with `only=` |
| `<template data-part=\"measure\">` | in the form | a part that is in the page only while it is open: `data-act=\"expand\"` and `data-act=\"collapse\"` with its name for `value`. Closed, its fields keep what was typed, and count; so do their presets, locks and ranges |
| `action=\"#place\"` | form | where Enter leads |
";

/// The whole text.
pub fn text() -> String {
    let mut out = HEAD.to_string();
    questions(&mut out);
    results(&mut out);
    list(&mut out, "States", "For `data-when`.", Fact::ALL.map(|fact| (fact.name(), fact.meaning())));
    rules(&mut out);
    let line = "In `gate.NAME.wait` and so on, and in `template data-gates` for your words.";
    list(&mut out, "Gates", line, GATES.iter().map(|row| (row.code, gates::meaning(row.gate))));
    list(&mut out, "Rows", "For `data-each`.", List::ALL.map(|list| (list.name(), list.meaning())));
    list(
        &mut out,
        "Outputs of a row",
        "As `list/output`.",
        RowOutput::ALL.map(|cell| (cell.name(), cell.meaning())),
    );
    let line = "Hold inside that row alone.";
    list(&mut out, "States of a row", line, RowFact::ALL.map(|fact| (fact.name(), fact.meaning())));
    list(&mut out, "Faults", "For `data-fault`.", FaultCode::ALL.map(|code| (code.name(), code.meaning())));
    list(&mut out, "Acts", "For `data-act`.", Act::ALL.map(|act| (act.name(), act.meaning())));
    let marks = DrawingMark::ALL.map(|mark| (mark.name(), mark.meaning()));
    let parts = DrawingPart::ALL.map(|part| (part.name(), part.meaning()));
    let line = "For `data-mark`, and for `data-shape`.";
    list(&mut out, "Marks and shapes of drawings", line, marks.into_iter().chain(parts));
    let line = "In a link, `page.html#sw1&pool.volume=50&lock=pool.volume`.";
    list(&mut out, "Terms of a link", line, of_scope(Scope::Link));
    list(
        &mut out,
        "Beside the fields",
        "What a page hands over by itself; a script may give it.",
        of_scope(Scope::Handed),
    );
    let _ = writeln!(out, "| `utc.NAME` | The moment NAME in minutes of UTC |");
    let mut units: Vec<(&str, &str)> = Vec::new();
    for unit in UNITS {
        if !units.iter().any(|(code, _)| *code == unit.code) {
            units.push((unit.code, unit.word));
        }
    }
    let none = [
        ("moment", "Day and time of day, in UTC; no UCUM code"),
        ("day", "Day of the calendar; no UCUM code"),
    ];
    let line = "[UCUM](https://ucum.org) codes, each with our word for it.";
    list(&mut out, "Units", line, units.into_iter().chain(none));
    out
}

fn of_scope(scope: Scope) -> impl Iterator<Item = (&'static str, &'static str)> {
    let of = Field::ALL.into_iter().filter(move |field| field.scope() == scope);
    of.map(|field| (field.name(), field.meaning()))
}

/// Names that follow by rule.
fn rules(out: &mut String) {
    for (begin, codes) in CHOSEN {
        let names: Vec<_> = codes.all.iter().map(|code| format!("`{begin}.{code}`")).collect();
        let _ = writeln!(out, "| {} | That answer was chosen | ", names.join(", "));
    }
    for (name, meaning) in [
        ("`log.N.salt` … `log.N.needs-when`", "A line of the log, by its number: see below"),
        ("`echo.FIELD`", "That field was understood"),
        ("`need.FIELD`", "That field is needed and missing; its dots are hyphens: `need.salt-now`"),
        (
            "`gate.NAME.pass`, `.wait`, `.stop`, `.unknown`, `.exception`",
            "What that gate says; the gates are listed below",
        ),
        ("`ask.RESULT`", "That result is to be found; its dots are hyphens: `ask.basic-mass`"),
        ("`try.RESULT.open`, `.right`, `.near`, `.off`", "How the attempt at it stands, once checked"),
        ("`try.first.RESULT`", "The first result that differs"),
    ] {
        let _ = writeln!(out, "| {name} | {meaning} |");
    }
}

/// Writes it.
pub fn write() -> Result<()> {
    let place = shell::root().join("www").join(FILE);
    fs::write(&place, text()).with_context(|| place.display().to_string())
}

fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

fn list<'a>(out: &mut String, title: &str, line: &str, rows: impl IntoIterator<Item = (&'a str, &'a str)>) {
    let _ = write!(out, "\n## {title}\n\n{line}\n\n| Name | Meaning |\n|---|---|\n");
    for (name, meaning) in rows {
        let _ = writeln!(out, "| `{}` | {} |", cell(name), cell(meaning));
    }
}

fn questions(out: &mut String) {
    out.push_str("\n## Questions\n\n| Name | Answer | Meaning |\n|---|---|---|\n");
    for field in Field::ALL.into_iter().filter(|f| !matches!(f.scope(), Scope::Link | Scope::Handed)) {
        let _ =
            writeln!(out, "| `{}` | {} | {} |", field.name(), cell(&answer(field)), cell(field.meaning()));
    }
    for asked in ASKED {
        let attempt = FieldId::Attempt(asked).name();
        let of = asked.name();
        let _ = writeln!(
            out,
            "| `{attempt}` | number | Attempt at `{of}`, which is held back until it is found |"
        );
    }
    out.push_str(
        "| `try.RESULT.within` | number | How far the attempt may be off, in percent; without it, the printed rounding |\n\
         | `try.RESULT.unit` | unit | Unit of the attempt, if it is another than the result’s |\n",
    );
}

/// What a question takes.
fn answer(field: Field) -> String {
    match field.kind() {
        FieldType::Choice(codes) => {
            let all = codes.all.iter().zip(codes.meanings);
            let all: Vec<_> = all
                .map(|(code, meaning)| format!("`{code}` ({})", meaning.trim().trim_end_matches('.')))
                .collect();
            all.join(", ")
        }
        FieldType::Unit(_) => units_of(field),
        FieldType::Moment => "moment, as 2027-05-21T09:00".into(),
        FieldType::Day => "day, as 2027-05-21".into(),
        FieldType::Text => "text".into(),
        FieldType::Count => "whole number".into(),
        FieldType::Names => "names, between commas".into(),
        FieldType::Number(bounds, rule) => {
            format!("number{}, {} to {}{}", in_unit(rule), bounds.low, bounds.high, inside(rule))
        }
        FieldType::List(bounds, rule) => {
            let [low, high] = [bounds.low, bounds.high];
            format!("numbers parted by semicolons{}, each {low} to {high}{}", in_unit(rule), inside(rule))
        }
    }
}

fn in_unit(rule: &UnitRule) -> String {
    match rule {
        UnitRule::Bare => String::new(),
        UnitRule::Fixed(_, code) => format!(" in {code}"),
        UnitRule::Asked(_, asked) => format!(" in `{}`", asked.name()),
        UnitRule::Squared(asked) => format!(" in the square of `{}`", asked.name()),
        UnitRule::Usual(_, asked, usual) => format!(" in `{}`, or {usual}", asked.name()),
    }
}

/// The unit that the limits are in.
fn inside(rule: &UnitRule) -> String {
    let kind = match rule {
        UnitRule::Bare => return String::new(),
        UnitRule::Squared(_) => QuantityKind::Area,
        UnitRule::Fixed(kind, _) | UnitRule::Asked(kind, _) | UnitRule::Usual(kind, ..) => *kind,
    };
    let unit = UNITS.iter().find(|unit| unit.kind == kind);
    unit.map_or(String::new(), |unit| format!(" {}", unit.canonical())).replace(" 1", " (part of 1)")
}

/// The codes that a question for a unit takes.
fn units_of(unit: Field) -> String {
    let codes: Vec<_> = unit.units().map(|unit| format!("`{}`", unit.code)).collect();
    codes.join(", ")
}

fn results(out: &mut String) {
    out.push_str("\n## Results\n\n| Name | Measures | Meaning |\n|---|---|---|\n");
    for output in Output::ALL {
        let measures = output.facts().measures.words();
        let _ = writeln!(out, "| `{}` | {measures} | {} |", output.name(), cell(output.meaning()));
    }
    out.push_str(
        "| `echo.FIELD` | as the field | What was understood, in its own unit |\n\
         | `echo.FIELD.also` | as the field | The same in the other system |\n\
         | `echo.FIELD.count` | number | How many figures of a list were understood |\n\
         | `try.RESULT.unit` | the unit alone | Unit in which the attempt is taken |\n",
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_reference_is_what_the_table_makes() {
        let there = fs::read_to_string(shell::root().join("www").join(FILE)).unwrap();
        assert!(there == text(), "run `cargo xtask names`");
    }
}
