//! Which results has the learner to find, what is held back meanwhile, and how near is an attempt?
//!
//! A result that is asked for is held back with its working and all that follows from it, until the attempt
//! is right or somebody has had it revealed. The source of this page is open: this is for learning, it guards
//! nothing.

use crate::answer::{Answer, Fault};
use crate::contract::units::Unit;
use crate::form::Form;
use crate::read::number::{self, NotNumber};
use crate::text::joined;

/// A result that can be asked for.
#[derive(Debug)]
pub struct Asked {
    /// Its output.
    pub name: &'static str,
    /// The field for the attempt.
    pub attempt: &'static str,
    /// What it is worked out with, and what follows from it.
    pub family: Family,
}

/// Results that follow from one another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// How much water there is; every amount follows from it.
    Size,
    /// How much salt: from the rise to the bags, the stage and what to expect.
    Dose,
    /// The saturation index.
    Index,
    /// How much water to replace.
    Less,
    /// At which setting the generator runs.
    Run,
}

const fn asked(name: &'static str, attempt: &'static str, family: Family) -> Asked {
    Asked { name, attempt, family }
}

/// All that can be asked for, each behind what it is worked out from.
pub const ASKED: [Asked; 15] = [
    asked("measured.volume", "try.measured.volume", Family::Size),
    asked("dose.rise", "try.dose.rise", Family::Dose),
    asked("dose.pure", "try.dose.pure", Family::Dose),
    asked("dose.mass", "try.dose.mass", Family::Dose),
    asked("dose.bags", "try.dose.bags", Family::Dose),
    asked("buy.bags", "try.buy.bags", Family::Dose),
    asked("buy.price", "try.buy.price", Family::Dose),
    asked("now.mass", "try.now.mass", Family::Dose),
    asked("now.plain", "try.now.plain", Family::Dose),
    asked("index.now", "try.index.now", Family::Index),
    asked("index.same", "try.index.same", Family::Index),
    asked("index.free", "try.index.free", Family::Index),
    asked("less.share", "try.less.share", Family::Less),
    asked("less.volume", "try.less.volume", Family::Less),
    asked("run.setting", "try.run.setting", Family::Run),
];

/// How an attempt compares with the result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Nothing that can be read, or not checked yet.
    Open,
    /// As printed, or within what the author allows.
    Right,
    /// Within ten times that.
    Near,
    /// Farther.
    Off,
}

impl Mark {
    const fn code(self) -> &'static str {
        match self {
            Self::Open => ".open",
            Self::Right => ".right",
            Self::Near => ".near",
            Self::Off => ".off",
        }
    }
}

impl Family {
    /// How the names of its outputs and of its lists begin.
    const fn begins(self) -> &'static [&'static str] {
        const DOSE: &[&str] = &[
            "dose.rise",
            "dose.pure",
            "dose.mass",
            "dose.bags",
            "buy.",
            "now.",
            "sums.",
            "cap",
            "risk.",
            "found.need",
            "index.salt.",
            "visits",
            "pays.",
        ];
        match self {
            Self::Size => &[
                "measured.",
                "used.volume",
                "stated.",
                "found.volume",
                "dosing.",
                "less.",
                "passes",
                "treat",
                "run.",
                "season.",
            ],
            Self::Dose => DOSE,
            Self::Index => &["index.", "treat", "less.index"],
            Self::Less => &["less.", "passes"],
            Self::Run => &["run.", "season."],
        }
    }

    /// Does something of this name follow from it, or is it worked out with it?
    fn holds(self, name: &str) -> bool {
        let begins = |family: Self| family.begins().iter().any(|begin| name.starts_with(begin));
        begins(self) || self == Self::Size && begins(Self::Dose)
    }
}

/// What is asked for: the names in the form's `ask`, between commas or spaces.
pub fn of(form: &Form) -> impl Iterator<Item = &'static Asked> {
    let names = form.text("ask");
    ASKED.iter().filter(move |asked| names.split([',', ' ']).any(|name| name == asked.name))
}

/// Marks the attempts and takes out of the answer what is to be found.
pub fn hold(form: &Form, answer: &mut Answer) {
    let (checked, revealed) = (form.text("ask.check") == "yes", form.text("ask.reveal") == "yes");
    let (mut held, mut tried, mut differs) = (Vec::new(), true, false);
    for asked in of(form) {
        answer.say_once("ask");
        let state = asked.name.replace('.', "-");
        answer.say(&joined(&["ask.", &state]));
        let mut mark = mark(form, asked, answer);
        tried &= mark != Mark::Open;
        if !checked {
            mark = Mark::Open;
        }
        answer.say(&joined(&["try.", &state, mark.code()]));
        if matches!(mark, Mark::Near | Mark::Off) && !differs {
            differs = true; // What is worked out from it differs too: the first one is to be looked at.
            answer.say(&joined(&["try.first.", &state]));
        }
        if let Some(unit) = answer.output(asked.name).and_then(|shown| shown.unit) {
            answer.put(&joined(&[asked.attempt, ".unit"]), crate::Shown::word(unit));
        }
        if mark != Mark::Right && !revealed {
            held.push(asked.family);
        }
    }
    if !answer.holds("ask") {
        return;
    }
    if checked && tried {
        answer.say("tried");
    }
    if revealed {
        answer.say("revealed");
    }
    if held.is_empty() {
        return;
    }
    answer.say("held");
    let of_a_held = |name: &str| held.iter().any(|family| family.holds(name));
    let own = |name: &str| name.starts_with("try.");
    answer.outputs.retain(|(name, _)| own(name) || !of_a_held(name));
    answer.rows.retain(|(name, _)| !of_a_held(name));
    if held.contains(&Family::Size) || held.contains(&Family::Dose) {
        answer.marks.clear();
    }
}

/// How an attempt compares, whether or not it was checked.
fn mark(form: &Form, asked: &Asked, answer: &mut Answer) -> Mark {
    let signs = form.signs();
    let text = form.text(asked.attempt);
    let typed = match number::read(text, signs) {
        Ok(Some(typed)) => typed.value,
        Ok(None) => return Mark::Open,
        Err(wrong) => {
            let got = text.to_string();
            let code = if wrong == NotNumber::Unit { "unit-in-text" } else { "not-a-number" };
            answer.faults.push(Fault { field: asked.attempt, code, limits: None, got, other: None });
            answer.say_once("fault");
            return Mark::Open;
        }
    };
    // There is none: whatever was typed is not it, and what is hidden may be revealed.
    let Some(shown) = answer.output(asked.name) else { return Mark::Off };
    let Ok(Some(printed)) = number::read(&shown.text, signs) else { return Mark::Open };
    let Some((exact, unit)) = shown.number else { return Mark::Open };
    // The attempt may be in a unit of its own.
    let own = form.text(&joined(&[asked.attempt, ".unit"]));
    let own = unit.and_then(|unit| Unit::find(unit.kind, own)).or(unit);
    let canonical = own.map_or(typed, |unit| unit.inward(typed));
    let as_shown = unit.map_or(canonical, |unit| unit.outward(canonical));
    // A nought that is not printed was rounded to all the same.
    let printed_decimals = shown.text.split(signs.decimal).nth(1).map_or(0, str::len);
    let decimals = unit.map_or(printed_decimals, |unit| unit.decimals(printed.value));
    let mut allowed = 0.5 * (0..decimals).fold(1.0, |place, _| place / 10.0);
    let mut off = (as_shown - printed.value).abs();
    let within = number::read(form.text(&joined(&[asked.attempt, ".within"])), signs);
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
