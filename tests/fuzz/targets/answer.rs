//! Does any form, however filled in, break its answer, put what is no number on the page, or tell a number that a
//! field at fault has a part in?
#![no_main]

mod forms;

use evidence::named;
use form::answer::Row;
use form::contract::lint::Known;
use form::contract::{
    FaultCode, Field, FieldId, FieldType, List, Output, OutputId, RowFact, RowOutput, Scope, State,
};
use form::read::{moment, number};
use form::{Answer, Form, Shown, answer};
use libfuzzer_sys::fuzz_target;
use serde_json::Value;
use std::collections::BTreeSet;
use std::sync::LazyLock;

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
fn outputs(answer: &Answer) -> impl Iterator<Item = &(OutputId, Shown)> {
    let cells = answer.rows.iter().flat_map(|(_, lines)| lines).flat_map(|line| &line.cells);
    answer.outputs.iter().chain(cells)
}

static KNOWN: LazyLock<Known> = LazyLock::new(Known::of_the_contract);
/// What stands for a unit where no number is.
const MOMENTS: [&str; 2] = ["moment", "day"];

/// All names are of the contract and mean what they are said for, and each is there once.
fn listed(form: &Form, told: &Answer) -> Law {
    let mut once = BTreeSet::new();
    for (output, _) in &told.outputs {
        let name = output.name();
        must(OutputId::find(&name) == Some(*output) && once.insert(name), || format!("{output:?}"))?;
    }
    for state in told.states.iter() {
        must(State::find(&state.name()) == Some(state), || format!("the state {}", state.name()))?;
    }
    for (list, lines) in &told.rows {
        for line in lines {
            let known = line.state.is_none_or(|state| RowFact::find(&state.name()).is_some());
            must(known, || format!("the line {:?}", line.state))?;
            for (output, _) in &line.cells {
                let of_list = |cell: &RowOutput| cell.name() == [list.name(), "/", cell.in_list()].concat();
                must(matches!(output, OutputId::Row(cell) if of_list(cell)), || {
                    format!("the cell {output:?} of {list:?}")
                })?;
            }
        }
    }
    let has = |all: &[String], code: &str| all.iter().any(|known| known == code);
    for (output, shown) in outputs(told) {
        let gate = *output == OutputId::Row(RowOutput::GatesGate);
        let known =
            |unit| has(&KNOWN.units, unit) || MOMENTS.contains(&unit) || gate && has(&KNOWN.gates, unit);
        must(shown.unit.is_none_or(known), || format!("{output:?} in {:?}", shown.unit))?;
    }
    let mut once = BTreeSet::new();
    for fault in &told.faults {
        let field = fault.field.name();
        let known = FaultCode::find(fault.code.name()) == Some(fault.code)
            && FieldId::find(&field) == Some(fault.field);
        must(known, || format!("the fault {fault:?}"))?;
        must(fault.got == form.text(&field), || format!("{fault:?} got something else"))?;
        must(once.insert(field), || format!("two faults: {fault:?}"))?;
        let [low, high] = fault.limits.as_ref().map_or([""; 2], |limits| [&limits[0].text, &limits[1].text]);
        must(fault.limits.is_none() || low != high && !low.is_empty(), || format!("limits of {fault:?}"))?;
    }
    must(told.faults.iter().all(|fault| fault.code == FaultCode::NoUnit) || told.holds("fault"), || {
        "no fault".into()
    })
}

/// Every text is the number behind it as printed, a moment, a day, a word for a unit, or a person's own words.
fn every_figure(form: &Form, told: &Answer) -> Law {
    let limits = told.faults.iter().flat_map(|fault| fault.limits.iter().flatten().chain(&fault.other));
    for (output, shown) in outputs(told) {
        figure(form, *output, shown).map_err(|wrong| format!("{output:?} shows {shown:?}, {wrong}"))?;
    }
    for shown in limits {
        let plain = shown.number.is_none() && is_plain(&shown.text);
        must(plain || printed(form, shown).is_ok(), || format!("a limit of {shown:?}"))?;
    }
    Ok(())
}

fn figure(form: &Form, output: OutputId, shown: &Shown) -> Law {
    let asked = match output {
        OutputId::Echo(field) if shown.number.is_none() => field.field().map(|asked| (field, asked.kind())),
        _ => None,
    };
    match (shown.unit, asked) {
        (Some("moment"), _) => must(moment::read(&shown.text).is_some(), || "no moment".into()),
        (Some("day"), _) => must(moment::read_day(&shown.text).is_some(), || "no day".into()),
        (_, Some((field, FieldType::Text))) => {
            must(shown.text == form.text(&field.name()), || "other words".into())
        }
        (_, Some((_, FieldType::List(..)))) => {
            must(shown.text.split("; ").all(is_plain), || "no list".into())
        }
        _ if shown.number.is_some() => printed(form, shown),
        _ => must(shown.text.is_empty() || output == Output::Edition.into(), || "nothing of the kind".into()),
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
        must(0.0 <= *from && from <= to && *to <= 1.0, || format!("{name:?} from {from} to {to}"))?;
    }
    for (name, text) in &told.shapes {
        on_paper(text).map_err(|wrong| format!("{name:?} is {text}: {wrong}"))?;
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
        let [states, before] =
            [&again, told].map(|answer| named::states(answer).into_iter().collect::<BTreeSet<_>>());
        let states: Vec<_> = states.symmetric_difference(&before).collect();
        format!("another answer: {:?}, states {states:?}", apart(&again.outputs, &told.outputs))
    };
    must(again == *told, differs)
}

fn apart<'a>(some: &'a Row, others: &Row) -> Option<&'a (OutputId, Shown)> {
    some.iter().find(|one| !others.contains(one))
}

/// A fault is never better than nothing typed there: what is told in spite of it is told without it, and is the
/// same.
fn no_better(form: &Form, told: &Answer) -> Law {
    if told.faults.is_empty() {
        return Ok(());
    }
    let faulty: BTreeSet<String> = told.faults.iter().map(|fault| fault.field.name()).collect();
    let without = answer(&Form(form.0.iter().filter(|(name, _)| !faulty.contains(name)).cloned().collect()));
    // What was understood of a field stands beside it whatever else is asked, and with a fault more is left to do.
    let results = told.outputs.iter().filter(|(output, shown)| !aside(*output) && !shown.text.is_empty());
    all_in(results, &without.outputs)?;
    for (list, lines) in told.rows.iter().filter(|(list, _)| *list != List::Gates) {
        let there = without.rows.iter().find(|(there, _)| there == list).map_or(&[][..], |(_, lines)| lines);
        must(lines.len() == there.len(), || {
            format!("{} of {list:?}, {} without the fault", lines.len(), there.len())
        })?;
        for (line, there) in lines.iter().zip(there) {
            must(line.state == there.state, || {
                format!("{:?}, {:?} without the fault", line.state, there.state)
            })?;
            all_in(&line.cells, &there.cells)?;
        }
    }
    for go in ["add.yes", "power.yes"] {
        must(!told.holds(go) || without.holds(go), || format!("{go}, but not without the fault"))?;
    }
    Ok(())
}

/// What was understood of a field, and how much is left to do, are no results.
fn aside(output: OutputId) -> bool {
    let understood = matches!(output, OutputId::Echo(_) | OutputId::EchoAlso(_) | OutputId::EchoCount(_));
    understood || output == Output::ReadyLeft.into()
}

/// Garbling what was typed last takes away, and changes nothing that is still told. How much is left to do may change,
/// and what was understood.
fn takes_away(form: &Form, told: &Answer) -> Law {
    let asked = |name: &str| FieldId::find(name).and_then(FieldId::field).map(Field::scope);
    let typed = |name: &str| asked(name).is_some_and(|scope| !matches!(scope, Scope::Handed | Scope::Link));
    let Some((name, text)) = form.0.last().filter(|(name, text)| typed(name) && !text.is_empty()) else {
        return Ok(());
    };
    let mut garbled = form.clone();
    garbled.0.push((name.clone(), [text, "\u{1}x"].concat()));
    let now = answer(&garbled);
    let still = now
        .outputs
        .iter()
        .filter(|(output, shown)| name != Field::Show.name() && !aside(*output) && !shown.text.is_empty());
    all_in(still, &told.outputs).map_err(|wrong| format!("{name} garbled: {wrong}"))
}

/// Figures that others have, too; what hangs on no size of the pool is the same for any but for the last bits.
fn all_in<'a>(some: impl IntoIterator<Item = &'a (OutputId, Shown)>, others: &Row) -> Law {
    let value = |shown: &Shown| shown.number.map_or(0.0, |(x, _)| x);
    for (name, a) in some {
        let there = others.iter().find(|(there, _)| there == name).map(|(_, shown)| shown);
        let same = there.is_some_and(|b| {
            let near = (value(a) - value(b)).abs() <= 1e-9 * value(a).abs().max(1.0);
            near && (&a.text, a.unit) == (&b.text, b.unit)
        });
        must(same, || format!("{name:?} is {a:?}, and {there:?} without the fault"))?;
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
        let Some(fault) =
            told.faults.iter().find(|f| fields.iter().any(|begin| f.field.name().starts_with(begin)))
        else {
            continue;
        };
        let of_it = |name: &str| results.iter().any(|begin| name.starts_with(begin));
        let figure = told.outputs.iter().find(|(output, _)| of_it(&output.name()));
        must(figure.is_none(), || format!("{figure:?} in spite of {fault:?}"))?;
        let list = told.rows.iter().find(|(list, lines)| of_it(list.name()) && !lines.is_empty());
        must(list.is_none(), || format!("{list:?} in spite of {fault:?}"))?;
    }
    Ok(())
}
