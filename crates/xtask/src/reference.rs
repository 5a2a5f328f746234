//! How does the table of names become the reference for authors?

use crate::shell;
use anyhow::{Context, Result};
use form::contract::fields::{self, Answered, In};
use form::contract::names::{self, Name};
use form::contract::units::{Kind, UNITS};
use form::exercise::asked::ASKED;
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
| `name=\"dose.mass\"` | output | gets the result; a dash where there is none |
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
    fields(&mut out);
    outputs(&mut out);
    list(&mut out, "States", "For `data-when`.", names::STATES);
    let rules = [
        ("`echo.FIELD`", "That field was understood"),
        ("`need.FIELD`", "That field is needed and missing; its dots are hyphens: `need.salt-now`"),
        (
            "`gate.NAME.pass`, `.wait`, `.stop`, `.unknown`, `.over`",
            "What that gate says; the gates are listed below",
        ),
        ("`ask.RESULT`", "That result is to be found; its dots are hyphens: `ask.dose-mass`"),
        ("`try.RESULT.open`, `.right`, `.near`, `.off`", "How the attempt at it stands, once checked"),
        ("`try.first.RESULT`", "The first result that differs"),
    ];
    for (name, meaning) in rules {
        let _ = writeln!(out, "| {name} | {meaning} |");
    }
    list(
        &mut out,
        "Gates",
        "In `gate.NAME.wait` and so on, and in `template data-gates` for your words.",
        names::GATES,
    );
    list(&mut out, "Rows", "For `data-each`.", names::ROWS);
    list(&mut out, "Outputs of a row", "As `list/output`.", names::CELLS);
    list(&mut out, "States of a row", "Hold inside that row alone.", names::LINES);
    list(&mut out, "Faults", "For `data-fault`.", names::FAULTS);
    list(&mut out, "Acts", "For `data-act`.", names::ACTS);
    list(&mut out, "Marks and shapes of drawings", "For `data-mark`, and for `data-shape`.", names::MARKS);
    rows(&mut out, names::SHAPES);
    list(
        &mut out,
        "Terms of a link",
        "In a link, `page.html#sw1&pool.volume=50&lock=pool.volume`.",
        names::TERMS,
    );
    list(
        &mut out,
        "Beside the fields",
        "What a page hands over by itself; a script may give it.",
        names::HANDED,
    );
    list(&mut out, "Units", "[UCUM](https://ucum.org) codes, each with our word for it.", names::UNITS);
    out
}

/// Writes it.
pub fn write() -> Result<()> {
    let place = shell::root().join("www").join(FILE);
    fs::write(&place, text()).with_context(|| place.display().to_string())
}

fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

fn list(out: &mut String, title: &str, line: &str, names: &[Name]) {
    let _ = write!(out, "\n## {title}\n\n{line}\n\n| Name | Meaning |\n|---|---|\n");
    rows(out, names);
}

fn rows(out: &mut String, names: &[Name]) {
    for row in names {
        let _ = writeln!(out, "| `{}` | {} |", cell(row.name), cell(row.meaning));
    }
}

fn fields(out: &mut String) {
    out.push_str("\n## Questions\n\n| Name | Answer | Meaning |\n|---|---|---|\n");
    for row in names::FIELDS {
        let _ = writeln!(out, "| `{}` | {} | {} |", row.name, cell(&answer(row.name)), cell(row.meaning));
    }
    for asked in ASKED {
        let _ = writeln!(
            out,
            "| `{}` | number | Attempt at `{}`, which is held back until it is found |",
            asked.attempt, asked.name
        );
    }
    out.push_str(
        "| `try.RESULT.within` | number | How far the attempt may be off, in percent; without it, the printed rounding |\n\
         | `try.RESULT.unit` | unit | Unit of the attempt, if it is another than the result’s |\n",
    );
}

/// What a question takes.
fn answer(name: &str) -> String {
    if name.ends_with(".unit") {
        return units_of(name);
    }
    match fields::FIELDS.iter().find(|field| field.name == name).map(|field| &field.answer) {
        None => codes(name).unwrap_or("text".into()),
        Some(Answered::Choice(_)) => codes(name).unwrap_or_default(),
        Some(Answered::Moment) => "moment, as 2027-05-21T09:00".into(),
        Some(Answered::Day) => "day, as 2027-05-21".into(),
        Some(Answered::Text) => "text".into(),
        Some(Answered::Number(bounds, unit)) => {
            format!("number{}, {} to {}{}", in_unit(unit), bounds.low, bounds.high, inside(unit))
        }
        Some(Answered::List(bounds, unit)) => {
            format!(
                "numbers parted by semicolons{}, each {} to {}{}",
                in_unit(unit),
                bounds.low,
                bounds.high,
                inside(unit)
            )
        }
    }
}

fn codes(name: &str) -> Option<String> {
    let of = |row: &&Name| row.name.split_once('=').is_some_and(|(field, _)| field == name);
    let code =
        |row: &Name| format!("`{}` ({})", row.name.split_once('=').expect("field=code").1, row.meaning);
    let all: Vec<_> = names::CHOICES.iter().filter(of).map(code).collect();
    (!all.is_empty()).then(|| all.join(", "))
}

fn in_unit(unit: &In) -> String {
    match unit {
        In::Bare => String::new(),
        In::Fixed(_, code) => format!(" in {code}"),
        In::Asked(_, asked) => format!(" in `{asked}`"),
        In::Squared(asked) => format!(" in the square of `{asked}`"),
        In::Usual(_, asked, usual) => format!(" in `{asked}`, or {usual}"),
    }
}

/// The unit that the limits are in.
fn inside(unit: &In) -> String {
    let kind = match unit {
        In::Bare => return String::new(),
        In::Squared(_) => Kind::Area,
        In::Fixed(kind, _) | In::Asked(kind, _) | In::Usual(kind, ..) => *kind,
    };
    let unit = UNITS.iter().find(|unit| unit.kind == kind);
    unit.map_or(String::new(), |unit| format!(" {}", unit.canonical())).replace(" 1", " (part of 1)")
}

/// The codes that a question for a unit takes.
fn units_of(name: &str) -> String {
    let mut kinds: Vec<Kind> = Vec::new();
    for field in fields::FIELDS {
        if let Answered::Number(_, In::Asked(kind, asked) | In::Usual(kind, asked, _))
        | Answered::List(_, In::Asked(kind, asked)) = &field.answer
            && *asked == name
            && !kinds.contains(kind)
        {
            kinds.push(*kind);
        }
    }
    let codes: Vec<_> = UNITS
        .iter()
        .filter(|unit| kinds.contains(&unit.kind))
        .map(|unit| format!("`{}`", unit.code))
        .collect();
    codes.join(", ")
}

fn outputs(out: &mut String) {
    out.push_str("\n## Results\n\n| Name | Measures | Meaning |\n|---|---|---|\n");
    for row in names::OUTPUTS {
        let _ = writeln!(out, "| `{}` | {} | {} |", row.name, row.kind, cell(row.meaning));
    }
    out.push_str(
        "| `echo.FIELD` | as the field | What was understood, in its own unit |\n\
         | `echo.FIELD.also` | as the field | The same in the other system |\n\
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

    #[test]
    fn every_question_has_a_row_and_every_choice_its_codes() {
        for field in fields::FIELDS {
            assert!(names::FIELDS.iter().any(|row| row.name == field.name), "{} has no meaning", field.name);
            if let Answered::Choice(all) = &field.answer {
                for code in *all {
                    let of = format!("{}={code}", field.name);
                    assert!(names::CHOICES.iter().any(|row| row.name == of), "{of} has no meaning");
                }
            }
        }
    }
}
