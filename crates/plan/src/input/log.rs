//! What was put in and read, as it was noted?

#[cfg(feature = "serde")]
use crate::input::answers::Typed;
use crate::input::choices::Instrument;
use chem::{Mass, Salinity};

/// A log holds no more entries.
pub const MOST_ENTRIES: usize = 24;

/// A salt reading.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Reading {
    /// What was read.
    pub salt: Salinity,
    /// What was read when it was done again at once.
    pub again: Option<Salinity>,
    /// What it was read with.
    pub instrument: Instrument,
}

/// What an entry tells of.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum LogEvent {
    /// Salt put in.
    Dose(Mass),
    /// Salt read.
    Reading(Reading),
}

/// A line of the log.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Entry {
    /// When, in minutes from any one moment, elapsed time.
    pub when: i64,
    /// What.
    pub what: LogEvent,
}

/// All lines, in any order, with gaps.
pub type Log = [Option<Entry>; MOST_ENTRIES];

/// The lines up to the last one that is there, as a file has them: one that is left free in between is `null`.
#[cfg(feature = "serde")]
struct Lines(Log);

#[cfg(feature = "serde")]
impl serde::Serialize for Lines {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let end = self.0.iter().rposition(Option::is_some).map_or(0, |last| last + 1);
        to.collect_seq(&self.0[..end])
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Lines {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let (log, _) = crate::serialize::list(from, ([None; MOST_ENTRIES], 0), |(mut log, place), line| {
            *log.get_mut(place)? = line;
            Some((log, place + 1))
        })?;
        Ok(Self(log))
    }
}

#[cfg(feature = "serde")]
pub(crate) fn serialize<S: serde::Serializer>(log: &Typed<Log>, to: S) -> Result<S::Ok, S::Error> {
    serde::Serialize::serialize(&log.map(Lines), to)
}

#[cfg(feature = "serde")]
pub(crate) fn deserialize<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Typed<Log>, D::Error> {
    <Typed<Lines> as serde::Deserialize>::deserialize(from).map(|log| log.map(|Lines(log)| log))
}

/// The reading of the case itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Baseline {
    /// When; without a moment it comes before everything in the log.
    pub when: Option<i64>,
    /// What.
    pub reading: Reading,
}
