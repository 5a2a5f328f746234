//! What is the salt worked out from?

use crate::input::answers::{Needs, Typed};
use crate::input::case::{Bag, Band, Case, RiskLevels, taken};
use crate::input::choices::{History, Input, Instrument, Method};
use crate::input::log::{Baseline, Log, MOST_ENTRIES, Reading};
use crate::salt::course::{Course, course};
use crate::salt::job::{Handled, Job};
use chem::{Fraction, Salinity, Volume};

/// The part of a case that the salt is worked out from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SaltInput {
    /// Amount of water.
    pub volume: Option<Volume>,
    /// How it was found; a size that nobody says of counts as remembered, the careful case.
    pub method: Option<Method>,
    /// How far it is typically off, in place of what the method says.
    pub doubt: Typed<Fraction>,
    /// Salt reading.
    pub reading: Typed<Salinity>,
    /// What was read when it was read again at once.
    pub again: Typed<Salinity>,
    /// What it was read with.
    pub instrument: Option<Instrument>,
    /// When, in minutes.
    pub read_at: Typed<i64>,
    /// What was put in and read besides.
    pub log: Typed<Log>,
    /// The water's history.
    pub history: Option<History>,
    /// The generator's band.
    pub band: Option<Band>,
    /// The bags.
    pub bag: Bag,
    /// The fill water's salt.
    pub fill_salt: Option<Salinity>,
    /// Which risks are taken.
    pub levels: Typed<RiskLevels>,
}

impl SaltInput {
    /// Of a case as it stands.
    #[must_use]
    pub fn of(case: &Case) -> Self {
        let Case { volume, method, doubt, reading, again, instrument, read_at, log, .. } = *case;
        let Case { history, band, bag, fill_salt, levels, .. } = *case;
        Self {
            volume,
            method,
            doubt,
            reading,
            again,
            instrument,
            read_at,
            log,
            history,
            band,
            bag,
            fill_salt,
            levels,
        }
    }

    /// Once water of a pool of that volume is replaced: the forecast is the only reading.
    #[must_use]
    pub fn replaced(self, salt: Salinity, volume: Option<Volume>) -> Self {
        Self { volume, reading: Typed::Valid(salt), again: Typed::Missing, log: Typed::Missing, ..self }
    }

    /// The reading, if there is one that was read.
    #[must_use]
    pub fn read(&self) -> Option<Salinity> {
        taken(self.reading, self.instrument)
    }

    pub(crate) fn history(&self) -> History {
        self.history.unwrap_or(History::Unknown)
    }

    /// The risks taken; `None` while they are no levels.
    pub(crate) fn risk_levels(&self) -> Option<RiskLevels> {
        self.levels.or(RiskLevels::default())
    }

    /// What is missing.
    pub(crate) fn needs(&self) -> Needs {
        Needs::of(&[
            (Input::Volume, self.volume.is_some()),
            (Input::Reading, self.read().is_some() || self.log != Typed::Missing),
            (Input::Instrument, self.instrument.is_some() || self.reading == Typed::Missing),
            (Input::BagSize, self.bag.size.is_some()),
            (Input::Purity, self.bag.purity.is_some()),
        ])
    }

    /// What is asked of the estimate, once all of it is there.
    pub(crate) fn job(&self) -> Option<Job> {
        Some(Job {
            volume: self.volume?,
            method: self.method.unwrap_or(Method::Remembered),
            doubt: self.doubt.map(Some).or(None)?,
            bag: self.bag.size?,
            purity: self.bag.purity?,
            in_hand: self.bag.in_hand.or(0).unwrap_or(0), // Where it is invalid, what to buy is not told.
            band: self.band?,
            history: self.history(),
            fill: self.fill_salt,
            handled: Handled::Bags(self.bag.weighed_in),
            levels: self.risk_levels()?,
        })
    }

    /// What was put in and read, unless a part of it can't be used: the rest would tell of another pool.
    pub(crate) fn course(&self) -> Option<Course> {
        let log: Log = self.log.or([None; MOST_ENTRIES])?;
        // Also where the reading would not count, or there is none that they would go with: somebody meant one.
        let (again, when) = (self.again.map(Some).or(None)?, self.read_at.map(Some).or(None)?);
        let baseline = match (self.reading, self.instrument) {
            (Typed::Invalid, _) => return None,
            (Typed::Missing, _) | (_, Some(Instrument::Assumed)) => None,
            (Typed::Valid(salt), Some(instrument)) => {
                Some(Baseline { when, reading: Reading { salt, again, instrument } })
            }
            _ => return None,
        };
        Some(course(baseline, &log))
    }
}
