//! What goes back to the page: results, states that hold, rows, faults.

use crate::contract::units::Unit;
use crate::contract::{
    DrawingMark, DrawingPart, FaultCode, FieldId, List, Output, OutputId, RowOutput, State, States,
};
use crate::read::moment;
use crate::read::number::{self, Signs};

mod serialize;

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

/// Outputs: of the whole page, or of one line of a list.
pub type Row = Vec<(OutputId, Shown)>;

/// One line of a list: its outputs, and the state that holds in it alone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    /// What sort of line it is, if there are several.
    pub state: Option<State>,
    /// Its outputs.
    pub cells: Row,
}

/// The answer to a form.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// What each output shows; one that is not here shows a dash.
    pub outputs: Row,
    /// The states that hold.
    pub states: States,
    /// The lines of each list.
    pub rows: Vec<(List, Vec<Line>)>,
    /// Where each mark of the drawing lies: from, to, as parts of its scale.
    pub marks: Vec<(DrawingMark, [f64; 2])>,
    /// What each part of the pool's drawing looks like, in the drawing's own grammar: a path, or where a word goes.
    pub shapes: Vec<(Part, String)>,
    /// The fields that can't be used.
    pub faults: Vec<Fault>,
}

/// A part of the pool's drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// A path.
    Path(DrawingPart),
    /// The place of this result.
    Label(Output),
}

impl Part {
    /// The result, of a label.
    #[must_use]
    pub fn label(self) -> Option<Output> {
        match self {
            Self::Path(_) => None,
            Self::Label(output) => Some(output),
        }
    }

    /// The name under which a page has it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Path(part) => part.name(),
            Self::Label(output) => output.name(),
        }
    }
}

/// A field that can't be used, with what its message needs.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The field.
    pub field: FieldId,
    /// What is wrong.
    pub code: FaultCode,
    /// Lowest and highest value allowed, in the unit typed.
    pub limits: Option<[Shown; 2]>,
    /// What was typed.
    pub got: String,
    /// Another way to read it.
    pub other: Option<Shown>,
}

impl Line {
    /// Shows something, if there is anything to show.
    pub fn put(&mut self, output: RowOutput, shown: Option<Shown>) {
        if let Some(shown) = shown {
            self.cells.push((output.into(), shown));
        }
    }
}

impl Answer {
    /// The text of the output of that name.
    #[must_use]
    pub fn text(&self, name: &str) -> Option<&str> {
        self.output(name).map(|shown| shown.text.as_str())
    }

    /// The output of that name, if it is shown.
    #[must_use]
    pub fn output(&self, name: &str) -> Option<&Shown> {
        self.shown(OutputId::find(name)?)
    }

    /// Does the state of that name hold?
    #[must_use]
    pub fn holds(&self, name: &str) -> bool {
        State::find(name).is_some_and(|state| self.is(state))
    }

    /// An output, if it is shown.
    #[must_use]
    pub fn shown(&self, output: impl Into<OutputId>) -> Option<&Shown> {
        let output = output.into();
        self.outputs.iter().find(|(id, _)| *id == output).map(|(_, shown)| shown)
    }

    /// The lines of a list.
    #[must_use]
    pub fn lines(&self, list: List) -> &[Line] {
        self.rows.iter().find(|(of, _)| *of == list).map_or(&[], |(_, lines)| lines)
    }

    /// Does a state hold?
    #[must_use]
    pub fn is(&self, state: impl Into<State>) -> bool {
        self.states.hold(state.into())
    }

    /// Without what is nobody's business but this device's: which other jobs it keeps.
    #[must_use]
    pub fn for_others(&self) -> Self {
        let mut answer = self.clone();
        answer.keep_lists(&|list| list != List::Jobs);
        answer
    }

    /// Keeps the lists that are wanted.
    pub fn keep_lists(&mut self, wanted: &dyn Fn(List) -> bool) {
        self.rows.retain(|(list, _)| wanted(*list));
    }

    /// Shows something.
    pub fn put(&mut self, output: impl Into<OutputId>, shown: Shown) {
        self.push(output.into(), shown);
    }

    /// Once, and not again wherever something is shown.
    #[inline(never)]
    fn push(&mut self, output: OutputId, shown: Shown) {
        self.outputs.push((output, shown));
    }

    /// Says that something is so.
    pub fn say(&mut self, state: impl Into<State>) {
        self.states.say(state.into());
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
