//! Which states are there, and which hold? Those of the table, and those that follow by rule.

use crate::contract::codes::{self, Codes};
use crate::contract::facts::{Fact, LineFact, RowFact};
use crate::contract::field_id::{FieldId, LINES, PLACES};
use crate::contract::fields::Field;
use crate::contract::outputs::{ASKED, Output};
use crate::text::joined;
use plan::log::MOST_ENTRIES;
use plan::readiness::gates::{GATES, Gate};
use plan::{Instrument, Method, Surface, Verdict};

/// Something that may be so, by its place among all that may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct State(u16);

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

const MARKS: [&str; 4] = ["open", "right", "near", "off"];
const VERDICTS: [&str; 5] = ["pass", "wait", "stop", "unknown", "exception"];

/// Choices whose answer is a state: how its name begins, and the codes.
pub const CHOSEN: [(&str, &Codes); 6] = [
    ("method", &codes::METHOD),
    ("instrument", &codes::INSTRUMENT),
    ("is", &codes::SURFACE),
    ("shape", &codes::SHAPE),
    ("floor", &codes::FLOOR),
    ("view", &codes::VIEW),
];
/// The most codes that one of them has.
const MOST_CODES: usize = 8;
const _: () = {
    let mut choice = 0;
    while choice < CHOSEN.len() {
        assert!(CHOSEN[choice].1.all.len() <= MOST_CODES, "a code would be taken for one of the next choice");
        choice += 1;
    }
};

/// Where each sort of state begins.
const ROW_FACTS: usize = Fact::ALL.len();
const LINE_FACTS: usize = ROW_FACTS + RowFact::ALL.len();
const CHOICES: usize = LINE_FACTS + LineFact::ALL.len() * MOST_ENTRIES;
const OF_GATES: usize = CHOICES + CHOSEN.len() * MOST_CODES;
const NEEDS: usize = OF_GATES + GATES.len() * VERDICTS.len();
const ECHOES: usize = NEEDS + Field::ALL.len();
const ASKS: usize = ECHOES + PLACES;
const TRIES: usize = ASKS + ASKED.len();
const FIRSTS: usize = TRIES + ASKED.len() * MARKS.len();
const COUNT: usize = FIRSTS + ASKED.len();

impl From<Fact> for State {
    fn from(fact: Fact) -> Self {
        Self(fact as u16)
    }
}

impl From<RowFact> for State {
    fn from(fact: RowFact) -> Self {
        Self::at(ROW_FACTS, fact as usize)
    }
}

impl From<Method> for State {
    fn from(method: Method) -> Self {
        Self::chosen(0, method as usize)
    }
}

impl From<Instrument> for State {
    fn from(instrument: Instrument) -> Self {
        Self::chosen(1, instrument as usize)
    }
}

impl From<Surface> for State {
    fn from(surface: Surface) -> Self {
        Self::chosen(2, surface as usize)
    }
}

impl From<codes::Shape> for State {
    fn from(shape: codes::Shape) -> Self {
        Self::chosen(3, shape as usize)
    }
}

impl From<codes::FloorShape> for State {
    fn from(floor: codes::FloorShape) -> Self {
        Self::chosen(4, floor as usize)
    }
}

impl From<codes::View> for State {
    fn from(view: codes::View) -> Self {
        Self::chosen(5, view as usize)
    }
}

impl State {
    const fn at(begin: usize, place: usize) -> Self {
        Self((begin + place) as u16)
    }

    const fn chosen(choice: usize, code: usize) -> Self {
        Self::at(CHOICES, choice * MOST_CODES + code)
    }

    /// Of the line of the log with this number, from 1.
    #[must_use]
    pub const fn line(fact: LineFact, line: u8) -> Self {
        Self::at(LINE_FACTS, (line as usize - 1) * LineFact::ALL.len() + fact as usize)
    }

    /// What a gate says.
    #[must_use]
    pub const fn gate(gate: Gate, verdict: Verdict) -> Self {
        Self::at(OF_GATES, gate as usize * VERDICTS.len() + verdict as usize)
    }

    /// A result lacks the answer to this question.
    #[must_use]
    pub const fn need(field: Field) -> Self {
        Self::at(NEEDS, field as usize)
    }

    /// What stands in a field was understood; nothing for an attempt, which is not told of so.
    #[must_use]
    pub fn echo(field: FieldId) -> Option<Self> {
        Some(Self::at(ECHOES, field.place()?))
    }

    /// A result is to be found; nothing for one that can't be asked for.
    #[must_use]
    pub fn ask(output: Output) -> Option<Self> {
        Some(Self::at(ASKS, place_of(output)?))
    }

    /// How an attempt compares.
    #[must_use]
    pub fn attempt(output: Output, mark: Mark) -> Option<Self> {
        Some(Self::at(TRIES, place_of(output)? * MARKS.len() + mark as usize))
    }

    /// The attempt is the first that differs.
    #[must_use]
    pub fn first_off(output: Output) -> Option<Self> {
        Some(Self::at(FIRSTS, place_of(output)?))
    }

    /// All of them.
    pub fn all() -> impl Iterator<Item = Self> {
        (0..COUNT as u16).map(Self).filter(|state| !state.name().is_empty())
    }

    /// The state of that name.
    ///
    /// ```
    /// use saltwright_form::contract::{Fact, State};
    /// assert_eq!(State::find("add.yes"), Some(Fact::AddYes.into()));
    /// for name in ["need.salt-now", "gate.finish-age.wait", "echo.log.3.mass", "try.index-now.right"] {
    ///     assert_eq!(State::find(name).unwrap().name(), name);
    /// }
    /// assert_eq!(State::find("gate.finish.wait"), None);
    /// ```
    #[must_use]
    pub fn find(name: &str) -> Option<Self> {
        if let Some(fact) = Fact::find(name) {
            return Some(fact.into());
        }
        if let Some(fact) = RowFact::find(name) {
            return Some(fact.into());
        }
        let (begin, rest) = name.split_once('.')?;
        let (middle, end) = rest.rsplit_once('.').unwrap_or(("", rest));
        match begin {
            "log" => {
                let line = LINES.into_iter().find(|n| n.to_string() == middle)?;
                Some(Self::line(LineFact::find(&joined(&["log.N.", end]))?, line))
            }
            "gate" => {
                let row = GATES.iter().find(|row| row.code == middle)?;
                let verdict = VERDICTS.iter().position(|verdict| *verdict == end)?;
                Some(Self::at(OF_GATES, row.gate as usize * VERDICTS.len() + verdict))
            }
            "need" => Field::ALL.into_iter().find(|field| is_hyphened(field.name(), rest)).map(Self::need),
            "echo" => Self::echo(FieldId::find(rest)?),
            "ask" => Self::ask(asked(rest)?),
            "try" if middle == "first" => Self::first_off(asked(end)?),
            "try" => {
                let mark = MARKS.iter().position(|mark| *mark == end)?;
                Some(Self::at(TRIES, place_of(asked(middle)?)? * MARKS.len() + mark))
            }
            _ => {
                let choice = CHOSEN.iter().position(|(name, _)| *name == begin)?;
                let code = CHOSEN[choice].1.all.iter().position(|code| *code == rest)?;
                Some(Self::chosen(choice, code))
            }
        }
    }

    /// Its name; empty for a place that nothing has.
    #[must_use]
    pub fn name(self) -> String {
        let at = usize::from(self.0);
        let output = |place: usize| ASKED[place].name().replace('.', "-");
        match at {
            _ if at < ROW_FACTS => Fact::ALL[at].name().into(),
            _ if at < LINE_FACTS => RowFact::ALL[at - ROW_FACTS].name().into(),
            _ if at < CHOICES => {
                let (line, fact) = parted(at - LINE_FACTS, LineFact::ALL.len());
                LineFact::ALL[fact].name().replace('N', &(line + 1).to_string())
            }
            _ if at < OF_GATES => {
                let (choice, code) = parted(at - CHOICES, MOST_CODES);
                let (begin, codes) = CHOSEN[choice];
                codes.all.get(code).map_or(String::new(), |code| joined(&[begin, ".", code]))
            }
            _ if at < NEEDS => {
                let (gate, verdict) = parted(at - OF_GATES, VERDICTS.len());
                joined(&["gate.", GATES[gate].code, ".", VERDICTS[verdict]])
            }
            _ if at < ECHOES => joined(&["need.", &Field::ALL[at - NEEDS].name().replace('.', "-")]),
            _ if at < ASKS => {
                let field = FieldId::at(at - ECHOES).map_or(String::new(), FieldId::name);
                joined(&["echo.", &field])
            }
            _ if at < TRIES => joined(&["ask.", &output(at - ASKS)]),
            _ if at < FIRSTS => {
                let (attempt, mark) = parted(at - TRIES, MARKS.len());
                joined(&["try.", &output(attempt), ".", MARKS[mark]])
            }
            _ => joined(&["try.first.", &output(at - FIRSTS)]),
        }
    }
}

/// Which whole, and which part of it?
fn parted(place: usize, parts: usize) -> (usize, usize) {
    (place / parts, place % parts)
}

fn place_of(output: Output) -> Option<usize> {
    ASKED.iter().position(|asked| *asked == output)
}

fn asked(hyphened: &str) -> Option<Output> {
    ASKED.into_iter().find(|output| is_hyphened(output.name(), hyphened))
}

/// Is the second the first with its dots made hyphens?
fn is_hyphened(name: &str, hyphened: &str) -> bool {
    let same = |(a, b): (u8, u8)| a == b || a == b'.' && b == b'-';
    name.len() == hyphened.len() && name.bytes().zip(hyphened.bytes()).all(same)
}

const WORD: usize = u32::BITS as usize;

/// The states that hold, a bit each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct States([u32; COUNT.div_ceil(WORD)]);

impl Default for States {
    fn default() -> Self {
        Self([0; COUNT.div_ceil(WORD)])
    }
}

impl States {
    /// Says that something is so.
    #[inline(never)] // Once, and not again wherever it is said.
    pub fn say(&mut self, state: State) {
        let (word, bit) = parted(state.0.into(), WORD);
        self.0[word] |= 1 << bit;
    }

    /// Does it hold?
    #[must_use]
    pub fn hold(&self, state: State) -> bool {
        let (word, bit) = parted(state.0.into(), WORD);
        self.0[word] >> bit & 1 != 0
    }

    /// Those that hold, in the order of the tables.
    pub fn iter(&self) -> impl Iterator<Item = State> + '_ {
        (0..COUNT as u16).map(State).filter(|state| self.hold(*state))
    }
}
