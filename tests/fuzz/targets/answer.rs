//! Does any form, however filled in, break its answer, put what is no number on the page, or tell a number that a
//! field at fault has a part in?
#![no_main]

mod forms;

use libfuzzer_sys::fuzz_target;
use std::cell::RefCell;
use std::collections::BTreeSet;
use form::answer::Row;
use form::contract::fields::{Answered, find};
use form::contract::names::{self, is_listed};
use form::read::{moment, number};
use form::{Answer, Form, Shown, answer};
use serde_json::Value;

fuzz_target!(|bytes: &[u8]| {
    let form = forms::form(bytes);
    let told = answer(&form);
    let wrong = [
        listed(&form, &told),
        every_figure(&form, &told),
        drawing(&told),
        whole(&told),
        same_again(&form, &told),
        no_better(&form, &told),
        takes_away(&form, &told),
        not_told(&told),
    ];
    for law in wrong {
        law.unwrap_or_else(|wrong| panic!("{wrong}\nfaults {:?}\n{form:?}", told.faults));
    }
});

type Law = Result<(), String>;

fn must(holds: bool, wrong: impl FnOnce() -> String) -> Law {
    if holds { Ok(()) } else { Err(wrong()) }
}

/// Outputs of the page and of all rows.
fn outputs(answer: &Answer) -> impl Iterator<Item = &(String, Shown)> {
    let cells = answer.rows.iter().flat_map(|(_, lines)| lines).flat_map(|line| &line.cells);
    answer.outputs.iter().chain(cells)
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Is {
    Output,
    State,
}

/// Is it in the contract? Asked once a name, since the table is long.
fn is_known(name: &str, is: Is) -> bool {
    thread_local!(static KNOWN: RefCell<BTreeSet<(Is, String)>> = RefCell::default());
    let key = (is, name.to_string());
    if KNOWN.with_borrow(|known| known.contains(&key)) {
        return true;
    }
    let known = match is {
        Is::Output => names::is_output(name),
        Is::State => names::is_state(name) || name == "ready",
    };
    known && KNOWN.with_borrow_mut(|all| all.insert(key))
}

/// All names are of the contract, and each is there once.
fn listed(form: &Form, told: &Answer) -> Law {
    for (told, is) in [
        (told.outputs.iter().map(|(name, _)| name).collect::<Vec<_>>(), Is::Output),
        (told.states.iter().collect(), Is::State),
    ] {
        let mut once = BTreeSet::new();
        for name in told {
            must(is_known(name, is) && once.insert(name), || format!("{name} is {is:?}"))?;
        }
    }
    for (list, lines) in &told.rows {
        must(is_listed(names::ROWS, list), || format!("the list {list}"))?;
        for line in lines {
            let known = line.state.is_empty() || is_listed(names::LINES, line.state);
            must(known, || format!("the line {}", line.state))?;
            for (cell, _) in &line.cells {
                must(is_listed(names::CELLS, &format!("{list}/{cell}")), || {
                    format!("the cell {list}/{cell}")
                })?;
            }
        }
    }
    for (mark, _) in &told.marks {
        must(is_listed(names::MARKS, mark), || format!("the mark {mark}"))?;
    }
    for (name, shown) in outputs(told) {
        let known = |unit| is_listed(names::UNITS, unit) || name == "gate" && is_listed(names::GATES, unit);
        must(shown.unit.is_none_or(known), || format!("{name} in {:?}", shown.unit))?;
    }
    let mut once = BTreeSet::new();
    for fault in &told.faults {
        let known = is_listed(names::FAULTS, fault.code)
            && (names::is_fault(fault.field) || is_listed(names::HANDED, fault.field));
        must(known, || format!("the fault {fault:?}"))?;
        must(once.insert(fault.field), || format!("two faults of {}", fault.field))?;
        must(fault.got == form.text(fault.field), || format!("{fault:?} got something else"))?;
        let [low, high] = fault.limits.as_ref().map_or([""; 2], |limits| [&limits[0].text, &limits[1].text]);
        must(fault.limits.is_none() || low != high && !low.is_empty(), || format!("limits of {fault:?}"))?;
    }
    must(told.faults.iter().all(|fault| fault.code == "no-unit") || told.holds("fault"), || "no fault".into())
}

/// Every text is the number behind it as printed, a moment, a day, a word for a unit, or a person's own words.
fn every_figure(form: &Form, told: &Answer) -> Law {
    let limits = told.faults.iter().flat_map(|fault| fault.limits.iter().flatten().chain(&fault.other));
    for (name, shown) in outputs(told) {
        figure(form, name, shown).map_err(|wrong| format!("{name} shows {shown:?}, {wrong}"))?;
    }
    for shown in limits {
        let plain = shown.number.is_none() && is_plain(&shown.text);
        must(plain || printed(form, shown).is_ok(), || format!("a limit of {shown:?}"))?;
    }
    Ok(())
}

fn figure(form: &Form, name: &str, shown: &Shown) -> Law {
    let field = name.strip_prefix("echo.").filter(|_| shown.number.is_none());
    match (shown.unit, field.and_then(|field| Some((field, &find(field)?.answer)))) {
        (Some("moment"), _) => must(moment::read(&shown.text).is_some(), || "no moment".into()),
        (Some("day"), _) => must(moment::read_day(&shown.text).is_some(), || "no day".into()),
        (_, Some((field, Answered::Text))) => must(shown.text == form.text(field), || "other words".into()),
        (_, Some((_, Answered::List(..)))) => must(shown.text.split("; ").all(is_plain), || "no list".into()),
        _ if shown.number.is_some() => printed(form, shown),
        _ => must(shown.text.is_empty() || name == "edition", || "nothing of the kind".into()),
    }
}

/// Digits and their signs.
fn is_plain(text: &str) -> bool {
    let sign = |c: char| !c.is_alphanumeric() && !c.is_control() || c.is_ascii_digit();
    text.contains(|c: char| c.is_ascii_digit()) && text.chars().all(sign)
}

/// The signs of languages that write so; by others nothing need be read back.
const SIGNS: [(char, char); 8] = [
    ('.', ','),
    (',', '.'),
    ('.', '\u{2019}'),
    (',', ' '),
    (',', '\u{a0}'),
    (',', '\u{202f}'),
    ('.', '\''),
    ('\u{66b}', '\u{66c}'),
];

/// The text of a number, read back, is that number to half its last place.
fn printed(form: &Form, shown: &Shown) -> Law {
    let (exact, unit) = shown.number.ok_or("no number")?;
    let signs = form.signs();
    must(exact.is_finite() && is_plain(&shown.text), || "no number".into())?;
    let minus = shown.text.starts_with('\u{2212}');
    must(!minus || shown.text.contains(|c| ('1'..='9').contains(&c)), || "a nought below zero".into())?;
    if !SIGNS.contains(&(signs.decimal, signs.group)) {
        return Ok(());
    }
    let read = number::read(&shown.text, signs).ok().flatten().ok_or("which does not read")?.value;
    let exact = unit.map_or(exact, |unit| unit.outward(exact));
    let places = shown.text.split(signs.decimal).nth(1).map_or(0, str::len);
    let places = unit.map_or(places, |unit| unit.decimals(exact).max(places));
    let off = (read - exact).abs();
    must(off <= 0.5001 * 0.1_f64.powi(places as i32) + 1e-9 * exact.abs(), || format!("for {exact}"))
}

/// The drawing stays on its paper, 440 by 280, and the marks on their scale.
fn drawing(told: &Answer) -> Law {
    for (name, [from, to]) in &told.marks {
        must(0.0 <= *from && from <= to && *to <= 1.0, || format!("{name} from {from} to {to}"))?;
    }
    for (name, text) in &told.shapes {
        on_paper(text).map_err(|wrong| format!("{name} is {text}: {wrong}"))?;
    }
    Ok(())
}

fn on_paper(text: &str) -> Law {
    let numbers = |text: &str| text.split_ascii_whitespace().map(str::parse).collect::<Result<Vec<i32>, _>>();
    let numbers = |text: &str| numbers(text).map_err(|wrong| wrong.to_string());
    let within = |all: &[i32], [left, top, right, bottom]: [i32; 4]| {
        let pairs = all
            .chunks(2)
            .all(|at| at.len() == 2 && (left..=right).contains(&at[0]) && (top..=bottom).contains(&at[1]));
        must(pairs && !all.is_empty(), || format!("{all:?}"))
    };
    if let Some(place) = text.strip_prefix("translate(").and_then(|text| text.strip_suffix(')')) {
        return within(&numbers(place)?, [0, 0, 440, 280]);
    }
    let letter = |c: char| c.is_alphabetic();
    for (command, part) in text.matches(letter).zip(text.split(letter).skip(1)) {
        let all = numbers(part)?;
        // A number that is none would be drawn at a nought, off the pool's own ground.
        let ground = [84, 24, 356, 258];
        match (command, &all[..]) {
            ("M" | "L" | "C", all) => within(all, ground)?,
            ("A", [wide, high, 0, 0, 1, to @ ..]) => {
                within(to, ground)?;
                within(&[*wide, *high], [0, 0, 272, 200])?;
            }
            ("Z", []) => {}
            _ => return Err(format!("{command} {all:?}")),
        }
    }
    Ok(())
}

/// Nothing that a script gets is no number: JSON has none for it, and says null.
fn whole(told: &Answer) -> Law {
    fn is_whole(value: &Value) -> bool {
        match value {
            Value::Null => false,
            Value::Array(all) => all.iter().all(is_whole),
            Value::Object(all) => all.values().all(is_whole),
            _ => true,
        }
    }
    let value = serde_json::to_value(told).map_err(|wrong| wrong.to_string())?;
    must(is_whole(&value), || format!("no number for a script: {value}"))
}

/// The last text of a name counts, and in which order the names stand does not.
fn same_again(form: &Form, told: &Answer) -> Law {
    let mut backwards = Form::default();
    for (name, text) in form.0.iter().rev() {
        if backwards.0.iter().all(|(there, _)| there != name) {
            backwards.0.push((name.clone(), text.clone()));
        }
    }
    let again = answer(&backwards);
    let differs = || {
        let [states, before] = [&again, told].map(|answer| answer.states.iter().collect::<BTreeSet<_>>());
        let states: Vec<_> = states.symmetric_difference(&before).collect();
        format!("another answer: {:?}, states {states:?}", apart(&again.outputs, &told.outputs))
    };
    must(again == *told, differs)
}

fn apart<'a>(some: &'a Row, others: &Row) -> Option<&'a (String, Shown)> {
    some.iter().find(|one| !others.contains(one))
}

/// A fault is never better than nothing typed there: what is told in spite of it is told without it, and is the
/// same.
fn no_better(form: &Form, told: &Answer) -> Law {
    if told.faults.is_empty() {
        return Ok(());
    }
    let faulty = |name: &str| told.faults.iter().any(|fault| fault.field == name);
    let without = answer(&Form(form.0.iter().filter(|(name, _)| !faulty(name)).cloned().collect()));
    // What was understood of a field stands beside it whatever else is asked, and with a fault more is left to do.
    let no_result = |name: &str| name.starts_with("echo.") || name == "ready.left";
    let results = told.outputs.iter().filter(|(name, shown)| !no_result(name) && !shown.text.is_empty());
    all_in(results, &without.outputs)?;
    for (list, lines) in told.rows.iter().filter(|(list, _)| *list != "gates") {
        let there = without.rows.iter().find(|(there, _)| there == list).map_or(&[][..], |(_, lines)| lines);
        must(lines.len() == there.len(), || {
            format!("{} of {list}, {} without the fault", lines.len(), there.len())
        })?;
        for (line, there) in lines.iter().zip(there) {
            must(line.state == there.state, || format!("{}, {} without the fault", line.state, there.state))?;
            all_in(&line.cells, &there.cells)?;
        }
    }
    for go in ["add.yes", "power.yes"] {
        must(!told.holds(go) || without.holds(go), || format!("{go}, but not without the fault"))?;
    }
    Ok(())
}

/// Garbling what was typed last takes away, and changes nothing that is still told. How much is left to do may change,
/// and what was understood.
fn takes_away(form: &Form, told: &Answer) -> Law {
    let Some((name, text)) = form.0.last().filter(|(name, text)| find(name).is_some() && !text.is_empty()) else {
        return Ok(());
    };
    let mut garbled = form.clone();
    garbled.0.push((name.clone(), [text, "\u{1}x"].concat()));
    let aside = |output: &str| name == "show" || output == "ready.left" || output.starts_with("echo.");
    let now = answer(&garbled);
    let still = now.outputs.iter().filter(|(output, shown)| !aside(output) && !shown.text.is_empty());
    all_in(still, &told.outputs).map_err(|wrong| format!("{name} garbled: {wrong}"))
}

/// Figures that others have, too; what hangs on no size of the pool is the same for any but for the last bits.
fn all_in<'a>(some: impl IntoIterator<Item = &'a (String, Shown)>, others: &Row) -> Law {
    let value = |shown: &Shown| shown.number.map_or(0.0, |(x, _)| x);
    for (name, a) in some {
        let there = others.iter().find(|(there, _)| there == name).map(|(_, shown)| shown);
        let same = there.is_some_and(|b| {
            let near = (value(a) - value(b)).abs() <= 1e-9 * value(a).abs().max(1.0);
            near && (&a.text, a.unit) == (&b.text, b.unit)
        });
        must(same, || format!("{name} is {a:?}, and {there:?} without the fault"))?;
    }
    Ok(())
}

/// Which results a field has a part in: by the beginnings of their names.
const PARTS: [(&[&str], &[&str]); 7] = [
    (
        &[
            "pool.volume",
            "pool.method",
            "pool.accuracy",
            "salt.now",
            "salt.repeat",
            "salt.method",
            "water.history",
            "salt.target",
            "salt.low",
            "salt.high",
            "bag.size",
            "bag.purity",
            "risk-level.",
            "log.",
        ],
        &["stage.", "buy.", "risk.over", "risk.low", "risk.in", "estimate.need", "estimate.volume"],
    ),
    (&["water.temperature", "water.ph", "water.ta", "water.ch", "water.cya"], &["index."]),
    (&["bag.on-hand", "bag.price"], &["buy.price"]),
    (&["goal.", "treat."], &["treatment"]),
    (&["run."], &["run.setting"]),
    (&["season."], &["season."]),
    (&["replace.most"], &["passes"]),
];

/// No number while a fault stands that it goes by.
fn not_told(told: &Answer) -> Law {
    for (fields, results) in PARTS {
        let Some(fault) = told.faults.iter().find(|f| fields.iter().any(|begin| f.field.starts_with(begin)))
        else {
            continue;
        };
        let of_it = |name: &str| results.iter().any(|begin| name.starts_with(begin));
        let figure = told.outputs.iter().find(|(name, _)| of_it(name));
        must(figure.is_none(), || format!("{figure:?} in spite of {fault:?}"))?;
        let list = told.rows.iter().find(|(list, lines)| of_it(list) && !lines.is_empty());
        must(list.is_none(), || format!("{list:?} in spite of {fault:?}"))?;
    }
    Ok(())
}
