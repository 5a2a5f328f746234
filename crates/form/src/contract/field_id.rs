//! Which field of a form is meant, also in a line of the log and for an attempt?

use crate::contract::fields::Field;
use crate::contract::outputs::Output;
use crate::text::joined;
use core::ops::RangeInclusive;
use plan::log::MOST_ENTRIES;

/// A field of a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldId {
    /// A question that stands once in a form.
    Field(Field),
    /// A question of the line of the log with this number, from 1.
    Line(Field, u8),
    /// What a learner types for a result.
    Attempt(Output),
    /// In which unit.
    AttemptUnit(Output),
    /// Within how much of the result it is right, in percent.
    AttemptWithin(Output),
}

impl From<Field> for FieldId {
    fn from(field: Field) -> Self {
        Self::Field(field)
    }
}

/// How the names of lines begin; then comes the number, a point, and what is asked.
const LOG: &str = "log.";
const ANY_LINE: &str = "log.N.";
/// How the name of an attempt begins; then comes the result's.
pub const ATTEMPT: &str = "try.";

/// Is this the name of an attempt, or of what goes with one?
#[must_use]
pub fn is_attempt(name: &str) -> bool {
    name.starts_with(ATTEMPT)
}

/// The questions of one line of the log.
pub const OF_A_LINE: [Field; 7] = [
    Field::LogKind,
    Field::LogMass,
    Field::LogMassUnit,
    Field::LogSalt,
    Field::LogRepeat,
    Field::LogMethod,
    Field::LogWhen,
];

/// The numbers of the lines of the log.
pub const LINES: RangeInclusive<u8> = 1..=MOST_ENTRIES as u8;

/// So many fields have a place of their own in a form, attempts apart.
pub const PLACES: usize = Field::ALL.len() + OF_A_LINE.len() * MOST_ENTRIES;

impl Field {
    /// This question in a line of the log.
    #[must_use]
    pub const fn in_line(self, line: u8) -> FieldId {
        FieldId::Line(self, line)
    }
}

impl FieldId {
    /// The field of that name.
    ///
    /// ```
    /// use saltwright_form::contract::{Field, FieldId};
    /// assert_eq!(FieldId::find("salt.now"), Some(Field::SaltNow.into()));
    /// assert_eq!(FieldId::find("log.3.mass.unit"), Some(Field::LogMassUnit.in_line(3)));
    /// assert_eq!(FieldId::find("log.0.mass"), None);
    /// assert_eq!(FieldId::find("salt.nwo"), None);
    /// ```
    #[must_use]
    pub fn find(name: &str) -> Option<Self> {
        if let Some(attempt) = name.strip_prefix(ATTEMPT) {
            return Self::attempt(attempt);
        }
        let Some((line, asked)) = name.strip_prefix(LOG).and_then(|rest| rest.split_once('.')) else {
            return Field::find(name).map(Self::Field);
        };
        let field = Field::find(&joined(&[ANY_LINE, asked]))?;
        if line == "N" {
            return Some(Self::Field(field)); // It stands for all lines.
        }
        // As it is written, and no other way: 3 and not 03.
        let line = LINES.into_iter().find(|n| n.to_string() == line)?;
        Some(Self::Line(field, line))
    }

    fn attempt(name: &str) -> Option<Self> {
        let (name, of): (_, fn(Output) -> Self) = match name.rsplit_once('.') {
            Some((name, "unit")) => (name, Self::AttemptUnit),
            Some((name, "within")) => (name, Self::AttemptWithin),
            _ => (name, Self::Attempt),
        };
        Output::find(name).filter(|output| output.is_asked()).map(of)
    }

    /// The question; nothing for an attempt.
    #[must_use]
    pub fn field(self) -> Option<Field> {
        match self {
            Self::Field(field) | Self::Line(field, _) => Some(field),
            _ => None,
        }
    }

    /// The question that answers its unit, in the same line of the log.
    #[must_use]
    pub fn unit(self) -> Option<Self> {
        let asked = self.field()?.unit()?;
        Some(match self {
            Self::Line(_, line) if OF_A_LINE.contains(&asked) => Self::Line(asked, line),
            _ => Self::Field(asked),
        })
    }

    /// The name of the question that answers the unit of the field of this name.
    ///
    /// ```
    /// use saltwright_form::contract::FieldId;
    /// assert_eq!(FieldId::unit_name("log.2.mass").as_deref(), Some("log.2.mass.unit"));
    /// assert_eq!(FieldId::unit_name("water.ph"), None);
    /// ```
    #[must_use]
    pub fn unit_name(name: &str) -> Option<String> {
        Some(Self::find(name)?.unit()?.name())
    }

    /// Where its text stands among those of [`PLACES`]; nothing for an attempt.
    #[must_use]
    pub fn place(self) -> Option<usize> {
        match self {
            Self::Field(field) => Some(field as usize),
            Self::Line(field, line) => {
                let asked = OF_A_LINE.iter().position(|of_a_line| *of_a_line == field)?;
                Some(Field::ALL.len() + usize::from(line - 1) * OF_A_LINE.len() + asked)
            }
            _ => None,
        }
    }

    /// The field at that place.
    #[must_use]
    pub fn at(place: usize) -> Option<Self> {
        if let Some(field) = Field::ALL.get(place) {
            return Some(Self::Field(*field));
        }
        let place = place - Field::ALL.len();
        let line = place / OF_A_LINE.len() + 1;
        (line <= MOST_ENTRIES).then(|| Self::Line(OF_A_LINE[place % OF_A_LINE.len()], line as u8))
    }

    /// Its name.
    #[must_use]
    pub fn name(self) -> String {
        match self {
            Self::Field(field) => field.name().into(),
            Self::Line(field, line) => {
                let asked = field.name().strip_prefix(ANY_LINE).unwrap_or_default();
                joined(&[LOG, &line.to_string(), ".", asked])
            }
            Self::Attempt(output) => joined(&[ATTEMPT, output.name()]),
            Self::AttemptUnit(output) => joined(&[ATTEMPT, output.name(), ".unit"]),
            Self::AttemptWithin(output) => joined(&[ATTEMPT, output.name(), ".within"]),
        }
    }
}
