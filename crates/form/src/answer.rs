//! What goes back to the page: names with texts, states that hold, rows, faults.

use crate::contract::units::Unit;
use crate::read::moment;
use crate::read::number::{self, Signs};

mod serialize;

/// The contract between page and code; see the form's `data-saltwright`.
pub const CONTRACT: u32 = 1;

/// A number as it is shown, and the code of its unit; the page has the unit's word.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// The number, in the page's signs.
    pub text: String,
    /// UCUM code, or none where the page's sentence has the unit.
    pub unit: Option<&'static str>,
    /// The number behind the text in its canonical unit, unrounded, and the unit it is shown in; none for what is
    /// no number.
    pub number: Option<(f64, Option<&'static Unit>)>,
}

/// Outputs by name: of the whole page, or of one row by the name they have inside it.
pub type Row = Vec<(String, Shown)>;

/// One line of a list: its outputs, and the state that holds in it alone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    /// What sort of line it is, if there are several.
    pub state: &'static str,
    /// Its outputs.
    pub cells: Row,
}

/// The answer to a form.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// What each output shows; one that is not here shows a dash.
    pub outputs: Row,
    /// The states that hold.
    pub states: Vec<String>,
    /// The lines of each list.
    pub rows: Vec<(&'static str, Vec<Line>)>,
    /// Where each mark of the drawing lies: from, to, as parts of its scale.
    pub marks: Vec<(&'static str, [f64; 2])>,
    /// What each part of the pool's drawing looks like, in the drawing's own grammar: a path, or where a word goes.
    pub shapes: Vec<(&'static str, String)>,
    /// The fields that can't be used.
    pub faults: Vec<Fault>,
}

/// A field that can't be used, with what its message needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The field.
    pub field: &'static str,
    /// What is wrong.
    pub code: &'static str,
    /// Lowest and highest value allowed, in the unit typed.
    pub limits: Option<[Shown; 2]>,
    /// What was typed.
    pub got: String,
    /// Another way to read it.
    pub other: Option<Shown>,
}

impl Answer {
    /// The text of an output.
    pub fn text(&self, name: &str) -> Option<&str> {
        self.output(name).map(|shown| shown.text.as_str())
    }

    /// An output, if it is shown.
    pub fn output(&self, name: &str) -> Option<&Shown> {
        self.outputs.iter().find(|(n, _)| n == name).map(|(_, shown)| shown)
    }

    /// Does a state hold?
    pub fn holds(&self, state: &str) -> bool {
        self.states.iter().any(|s| s == state)
    }

    /// Without what is nobody's business but this device's: which other jobs it keeps.
    pub fn for_others(&self) -> Self {
        let mut answer = self.clone();
        answer.rows.retain(|(list, _)| *list != "jobs");
        answer
    }

    /// Shows something under a name.
    pub fn put(&mut self, name: &str, shown: Shown) {
        self.outputs.push((name.into(), shown));
    }

    /// Says that something is so.
    pub fn say(&mut self, state: &str) {
        self.states.push(state.into());
    }

    /// Says what several things may bring about.
    pub fn say_once(&mut self, state: &str) {
        if !self.holds(state) {
            self.say(state);
        }
    }
}

impl Shown {
    /// A canonical value in `unit`, with the decimals that unit is shown with.
    pub fn of(value: f64, unit: &'static Unit, signs: Signs) -> Self {
        let x = unit.outward(value);
        let shown = Self::number(x, unit.decimals(x), false, signs);
        Self { unit: Some(unit.code), number: Some((value, Some(unit))), ..shown }
    }

    /// Words, or what else is no number.
    pub fn words(text: String) -> Self {
        Self { text, unit: None, number: None }
    }

    /// The word alone that the page has for a code: of a unit, of a gate.
    pub fn word(code: &'static str) -> Self {
        Self { unit: Some(code), ..Self::words(String::new()) }
    }

    /// A moment, in minutes.
    pub fn moment(minutes: i64) -> Self {
        Self { unit: Some("moment"), ..Self::words(moment::write(minutes)) }
    }

    /// A day of the calendar.
    pub fn day(day: i64) -> Self {
        Self { unit: Some("day"), ..Self::words(moment::write_day(day)) }
    }

    /// A number with a fixed count of decimals.
    pub fn number(x: f64, decimals: usize, signed: bool, signs: Signs) -> Self {
        let text = number::write(x, decimals, signed, signs).unwrap_or_else(|| "–".into());
        Self { text, unit: None, number: Some((x, None)) }
    }

    /// A number with as many decimals as it was typed with, in practice.
    pub fn plain(x: f64, unit: Option<&'static Unit>, signs: Signs) -> Self {
        let mut scale = 1.0;
        let mut decimals = 0;
        while decimals < 6 && ((x * scale).round() - x * scale).abs() > 1e-9 * (x * scale).abs().max(1.0) {
            scale *= 10.0;
            decimals += 1;
        }
        let number = Some((unit.map_or(x, |u| u.inward(x)), unit));
        Self { unit: unit.map(|u| u.code), number, ..Self::number(x, decimals, false, signs) }
    }
}
