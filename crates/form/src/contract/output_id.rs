//! Which output is meant, also in the lines of a list, of what was understood, and for an attempt?

use crate::contract::field_id::FieldId;
use crate::contract::lists::RowOutput;
use crate::contract::outputs::Output;
use crate::text::joined;

/// What an output shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutputId {
    /// A result.
    Result(Output),
    /// What was understood of a field.
    Echo(FieldId),
    /// The same in the other system of units.
    EchoAlso(FieldId),
    /// How many figures of a list were understood.
    EchoCount(FieldId),
    /// The unit that an attempt at a result is in.
    AttemptUnit(Output),
    /// A result in a line of a list.
    Row(RowOutput),
}

impl From<Output> for OutputId {
    fn from(output: Output) -> Self {
        Self::Result(output)
    }
}

impl From<RowOutput> for OutputId {
    fn from(cell: RowOutput) -> Self {
        Self::Row(cell)
    }
}

const ECHO: &str = "echo.";
const ALSO: &str = ".also";
const COUNT: &str = ".count";

impl OutputId {
    /// The output of that name outside lists.
    ///
    /// ```
    /// use saltwright_form::contract::{Field, FieldId, Output, OutputId};
    /// assert_eq!(OutputId::find("measured.volume"), Some(Output::MeasuredVolume.into()));
    /// let echo = FieldId::Field(Field::PoolVolume);
    /// assert_eq!(OutputId::find("echo.pool.volume.also"), Some(OutputId::EchoAlso(echo)));
    /// assert_eq!(OutputId::find("measured.volum"), None);
    /// ```
    #[must_use]
    pub fn find(name: &str) -> Option<Self> {
        if let Some(field) = name.strip_prefix(ECHO) {
            return match (field.strip_suffix(ALSO), field.strip_suffix(COUNT)) {
                (Some(field), _) => FieldId::find(field).map(Self::EchoAlso),
                (_, Some(field)) => FieldId::find(field).map(Self::EchoCount),
                _ => FieldId::find(field).map(Self::Echo),
            };
        }
        match FieldId::find(name) {
            Some(FieldId::AttemptUnit(output)) => Some(Self::AttemptUnit(output)),
            _ => Output::find(name).map(Self::Result),
        }
    }

    /// Is this its name?
    #[must_use]
    pub fn is_called(self, name: &str) -> bool {
        match self {
            Self::Result(output) => output.name() == name,
            Self::Row(cell) => cell.in_list() == name,
            other => other.name() == name,
        }
    }

    /// Does it say once more, in the other system, what another output says?
    #[must_use]
    pub fn is_also(self) -> bool {
        matches!(self, Self::EchoAlso(_) | Self::Result(Output::MeasuredVolumeAlso))
    }

    /// Its name.
    #[must_use]
    pub fn name(self) -> String {
        let echo = |field: FieldId, end| joined(&[ECHO, &field.name(), end]);
        match self {
            Self::Result(output) => output.name().into(),
            Self::Echo(field) => echo(field, ""),
            Self::EchoAlso(field) => echo(field, ALSO),
            Self::EchoCount(field) => echo(field, COUNT),
            Self::AttemptUnit(output) => FieldId::AttemptUnit(output).name(),
            Self::Row(cell) => cell.in_list().into(),
        }
    }
}
