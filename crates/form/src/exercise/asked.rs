//! Which results has the learner to find, what is held back meanwhile, and how near is an attempt?
//!
//! A result that is asked for is held back with its working and all that follows from it, until the attempt
//! is right or somebody has had it revealed. The source of this page is open: this is for learning, it guards
//! nothing.

use crate::answer::{Answer, Fault, Shown};
use crate::contract::codes::Tick;
use crate::contract::units::Unit;
use crate::contract::{
    ASKED, DOSE, Fact, Families, FaultCode, Field, FieldId, Mark, NONE, Output, OutputId, SIZE, State,
};
use crate::form::Form;
use crate::read::number::{self, NotNumber};

/// What is asked for: the names in the form's `ask`, between commas or spaces.
pub fn of(form: &Form) -> impl Iterator<Item = Output> {
    let names = form.text(Field::Ask.name());
    ASKED.into_iter().filter(move |asked| names.split([',', ' ']).any(|name| name == asked.name()))
}

/// Marks the attempts and takes out of the answer what is to be found.
pub fn hold(form: &Form, answer: &mut Answer) {
    let ticked = |field: Field| form.text(field.name()) == Tick::Yes.code();
    let (checked, revealed) = (ticked(Field::AskCheck), ticked(Field::AskReveal));
    let (mut held, mut tried, mut differs) = (NONE, true, false);
    let say = |answer: &mut Answer, state: Option<State>| {
        state.into_iter().for_each(|state| answer.say(state));
    };
    for asked in of(form) {
        answer.say(Fact::Ask);
        say(answer, State::ask(asked));
        let mut mark = mark(form, asked, answer);
        tried &= mark != Mark::Open;
        if !checked {
            mark = Mark::Open;
        }
        say(answer, State::attempt(asked, mark));
        if matches!(mark, Mark::Near | Mark::Off) && !differs {
            differs = true; // What is worked out from it differs too: the first one is to be looked at.
            say(answer, State::first_off(asked));
        }
        if let Some(unit) = answer.shown(asked).and_then(|shown| shown.unit) {
            answer.put(OutputId::AttemptUnit(asked), Shown::word(unit));
        }
        if mark != Mark::Right && !revealed {
            held = held.and(asked.facts().asked);
        }
    }
    if !answer.is(Fact::Ask) {
        return;
    }
    if checked && tried {
        answer.say(Fact::Tried);
    }
    if revealed {
        answer.say(Fact::Revealed);
    }
    if !held.is_none() {
        hold_back(held, answer);
    }
}

/// Takes out of the answer what follows from these families, or works them out.
fn hold_back(held: Families, answer: &mut Answer) {
    answer.say(Fact::Held);
    // Every amount follows from the size.
    let held = if held.meet(SIZE) { held.and(DOSE) } else { held };
    let follows = |output: &OutputId| matches!(output, OutputId::Result(o) if o.families().meet(held));
    answer.outputs.retain(|(output, _)| !follows(output));
    answer.keep_lists(&|list| !list.facts().meet(held));
    if held.meet(DOSE) {
        answer.marks.clear();
    }
}

/// How an attempt compares, whether or not it was checked.
fn mark(form: &Form, asked: Output, answer: &mut Answer) -> Mark {
    let signs = form.signs();
    let text = form.text(&FieldId::Attempt(asked).name());
    let typed = match number::read(text, signs) {
        Ok(Some(typed)) => typed.value,
        Ok(None) => return Mark::Open,
        Err(wrong) => {
            let got = text.to_string();
            let code = if wrong == NotNumber::Unit { FaultCode::UnitInText } else { FaultCode::NotANumber };
            answer.faults.push(Fault {
                field: FieldId::Attempt(asked),
                code,
                limits: None,
                got,
                other: None,
            });
            answer.say(Fact::Fault);
            return Mark::Open;
        }
    };
    // There is none: whatever was typed is not it, and what is hidden may be revealed.
    let Some(shown) = answer.shown(asked) else { return Mark::Off };
    let Ok(Some(printed)) = number::read(&shown.text, signs) else { return Mark::Open };
    let Some((exact, unit)) = shown.number else { return Mark::Open };
    // The attempt may be in a unit of its own.
    let own = form.text(&FieldId::AttemptUnit(asked).name());
    let own = unit.and_then(|unit| Unit::find(unit.kind, own)).or(unit);
    let canonical = own.map_or(typed, |unit| unit.inward(typed));
    let as_shown = unit.map_or(canonical, |unit| unit.outward(canonical));
    // A nought that is not printed was rounded to all the same.
    let printed_decimals = shown.text.split(signs.decimal).nth(1).map_or(0, str::len);
    let decimals = unit.map_or(printed_decimals, |unit| unit.decimals(printed.value));
    let mut allowed = 0.5 * (0..decimals).fold(1.0, |place, _| place / 10.0);
    let mut off = (as_shown - printed.value).abs();
    let within = number::read(form.text(&FieldId::AttemptWithin(asked).name()), signs);
    if let Ok(Some(within)) = within {
        (allowed, off) = (within.value / 100.0 * exact.abs(), (canonical - exact).abs());
    }
    // A hair more, for decimals that binary cannot hold.
    match off {
        _ if off <= allowed * (1.0 + 1e-9) => Mark::Right,
        _ if off <= allowed * 10.0 => Mark::Near,
        _ => Mark::Off,
    }
}
