//! What was put in and read, in order?
//!
//! A log is a list of entries in any order, and its course is what they amount to. To correct an entry
//! is to work out the course of the new log.

use crate::input::choices::Instrument;
use crate::input::log::*;
use crate::policy::uncertainty::Since;
use chem::Mass;

/// A course has no more visits: every entry a reading, and the first one of the case.
pub const MOST_VISITS: usize = MOST_ENTRIES + 1;

/// A reading, and what went in before it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Visit {
    /// The entry of the log; `None` for the case's own reading.
    pub entry: Option<usize>,
    /// What went in since the reading before. Doses with no reading between them count as one.
    pub put_in: Mass,
    /// The latest dose, which may be from before an earlier reading.
    pub latest: Mass,
    /// How long ago it went in.
    pub since: Since,
    /// The reading.
    pub reading: Reading,
}

/// What a log amounts to.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Course {
    /// The readings in order of time, from the front; an assumed one is none.
    pub visits: [Option<Visit>; MOST_VISITS],
    /// What went in after the last of them.
    pub after: Mass,
    /// What went in altogether.
    pub put_in: Mass,
    /// When the last salt went in: the clock of the 48 hours runs from here.
    pub last_dose: Option<i64>,
}

/// The course of a log.
///
/// Entries of the same minute keep their order in the log, the case's own reading first. Total: what no
/// job takes is passed on for [`crate::salt::job`] to name.
///
/// ```
/// use chem::{Mass, Salinity};
/// use saltwright_plan::Instrument;
/// use saltwright_plan::log::*;
/// use saltwright_plan::salt::course::*;
/// use saltwright_plan::policy::Since;
/// let salt = Salinity::from_mg_per_l(2_150.0).unwrap();
/// let read = Reading { salt, again: None, instrument: Instrument::Meter };
/// let six = Mass::from_kilograms(120.0).unwrap();
/// let mut log: Log = [None; MOST_ENTRIES];
/// log[0] = Some(Entry { when: 2_000, what: LogEvent::Reading(read) });
/// log[1] = Some(Entry { when: 0, what: LogEvent::Dose(six) }); // before any reading: an ordinary beginning
/// let course = course(None, &log);
/// let visit = course.visits[0].unwrap();
/// assert_eq!((visit.put_in, visit.since, course.last_dose), (six, Since::Day, Some(0)));
/// ```
#[must_use]
pub fn course(baseline: Option<Baseline>, log: &Log) -> Course {
    let mut events = [None; MOST_VISITS];
    events[0] = baseline.map(|b| (b.when, LogEvent::Reading(b.reading)));
    for (event, entry) in events[1..].iter_mut().zip(log) {
        *event = entry.map(|e| (Some(e.when), e.what));
    }
    let mut course =
        Course { visits: [None; MOST_VISITS], after: Mass::NONE, put_in: Mass::NONE, last_dose: None };
    let (mut latest, mut place) = (Mass::NONE, 0);
    // No moment sorts before any, and of equals the first is taken.
    let earliest = |events: &[Option<(Option<i64>, LogEvent)>]| {
        let there = events.iter().enumerate().filter_map(|(at, event)| event.map(|(when, _)| (at, when)));
        there.min_by_key(|&(_, when)| when)
    };
    while let Some((at, when)) = earliest(&events) {
        match events[at].take() {
            Some((_, LogEvent::Dose(mass))) if mass != Mass::NONE => {
                course.after = sum(course.after, mass);
                course.put_in = sum(course.put_in, mass);
                course.last_dose = when;
                latest = course.after;
            }
            Some((_, LogEvent::Reading(reading))) if reading.instrument != Instrument::Assumed => {
                let elapsed = when.zip(course.last_dose).map(|(now, then)| now.saturating_sub(then));
                course.visits[place] = Some(Visit {
                    entry: at.checked_sub(1),
                    put_in: course.after,
                    latest,
                    since: elapsed.map_or(Since::TwoDays, Since::of_minutes),
                    reading,
                });
                place += 1;
                course.after = Mass::NONE;
            }
            _ => {}
        }
    }
    course
}

/// Two masses together; at most the most that a mass can be, which no job takes.
fn sum(all: Mass, more: Mass) -> Mass {
    let both = Mass::from_kilograms(all.kilograms() + more.kilograms());
    both.unwrap_or_else(|out| Mass::from_kilograms(out.bounds.high).unwrap_or(all))
}
