//! What is a gate judged by?

use crate::input::answers::Unknown;
use crate::input::case::Case;
use crate::input::choices::Instrument;
use crate::salt::code::Standing;
use crate::salt::salt_plan::SaltPlan;
use crate::water::balance::Balance;
use crate::water::treatment::Treatment;
use chem::{Mass, Salinity};

/// All that a gate may look at.
#[derive(Clone, Copy, Debug)]
pub struct Inputs<'a> {
    /// What is known about the pool.
    pub case: &'a Case,
    /// The last reading.
    pub latest: LatestReading,
    /// The index, today and after what is due.
    pub balance: &'a Result<Balance, Unknown>,
    /// What has to go in before the salt.
    pub treatment: &'a Result<Treatment, Unknown>,
}

/// The last salt reading, whatever is to be done to the water first.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LatestReading {
    /// What was read.
    pub salt: Option<Salinity>,
    /// With what.
    pub instrument: Option<Instrument>,
    /// When, in minutes.
    pub at: Option<i64>,
    /// Where the salt stands by it.
    pub standing: Option<Standing>,
    /// Did salt go in since?
    pub salted_since: bool,
}

impl LatestReading {
    /// Of a case and what follows from its own readings.
    #[must_use]
    pub fn of(case: &Case, today: &SaltPlan) -> Self {
        let visit = today.latest();
        let at = visit.and_then(|visit| match visit.entry {
            Some(line) => case.log.valid().and_then(|log| log[line]).map(|entry| entry.when),
            None => case.read_at.valid(),
        });
        Self {
            salt: visit.map(|visit| visit.reading.salt),
            instrument: visit.map(|visit| visit.reading.instrument),
            at,
            standing: today.standing(),
            salted_since: today.course.is_some_and(|course| course.after > Mass::NONE),
        }
    }
}
