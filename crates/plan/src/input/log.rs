//! What was put in and read, as it was noted?

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
pub enum What {
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
    pub what: What,
}

/// All lines, in any order, with gaps.
pub type Log = [Option<Entry>; MOST_ENTRIES];

/// The reading of the case itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Baseline {
    /// When; without a moment it comes before everything in the log.
    pub when: Option<i64>,
    /// What.
    pub reading: Reading,
}
