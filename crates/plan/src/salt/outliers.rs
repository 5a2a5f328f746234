//! Which readings can be believed?
//!
//! A reading that stands too far from what was expected is an outlier: it is set aside, and nothing is decided
//! from it. The next one settles whether it or the expectation was wrong: the log decides, and nobody is asked.

use crate::input::choices::Instrument;
use crate::input::log::Reading;
use crate::policy;
use crate::policy::uncertainty::{BEFORE_READING, Moments, NO_SALT, Since, instrument_error};
use crate::salt::course::{Course, MOST_VISITS, Visit};
use crate::salt::ekf::{Event, Evidence, MOST_INSTRUMENTS};
use chem::Mass;

/// On which side of what was expected a reading stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Side {
    /// It reads too low.
    Low,
    /// It reads too high.
    High,
}

/// What became of a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum ReadingStatus {
    /// It counts.
    Counts,
    /// It was taken too early after the salt, and leaves nothing.
    Early,
    /// The two readings of the visit can't both be right.
    Differs,
    /// It is an outlier, and waits for another reading.
    Aside(Side),
    /// It was an outlier, and the next one was not: it stays out.
    Out(Side),
}

/// A visit and what became of its reading.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Screened {
    /// The visit.
    pub visit: Visit,
    /// What became of it.
    pub status: ReadingStatus,
    /// `z`: how many of its standard deviations the reading stands above what was expected; nothing for the
    /// first one.
    pub z: Option<f64>,
}

/// All visits, screened.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Screening {
    /// The visits in order of time, from the front.
    pub visits: [Option<Screened>; MOST_VISITS],
    /// The last reading made a pair with one that was set aside: both are outliers, so the expectation was wrong, and
    /// all that waited counts.
    pub pair: bool,
    /// What the estimate goes by. Its events stand beside the visits; while no
    /// reading counts, what went in since is one more.
    pub evidence: Evidence,
    /// Salt to go by while nothing was read.
    unread: Moments,
}

/// There is a reading by a fourth instrument.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct TooManyInstruments;

/// What is expected of the mean of an event's readings, mg/L, by the salt before everything and the evidence
/// before the event. Expected without blunders and with a volume doubted by at most [`policy::OUTLIER_DOUBT`].
pub(crate) type Expect<'a> = &'a dyn Fn(Moments, &Evidence, &Event) -> Moments;

impl Screening {
    /// Screens the visits one after the other, each against what is expected of it.
    ///
    /// `in_bags` counts salt in bags; `unread` is the salt to go by while nothing was read, mg/L. Errors:
    /// [`TooManyInstruments`].
    pub(crate) fn of(
        course: &Course,
        in_bags: impl Fn(Mass) -> f64,
        unread: Moments,
        expect: Expect,
    ) -> Result<Self, TooManyInstruments> {
        let mut all = Self { visits: [None; MOST_VISITS], pair: false, evidence: Evidence::NONE, unread };
        let mut known = [None; MOST_INSTRUMENTS];
        let mut next = 0;
        for &visit in course.visits.iter().flatten() {
            let early = visit.since == Since::Early;
            let Reading { salt, again, instrument } = visit.reading;
            let instrument = if early { 0 } else { all.place_of(instrument, &mut known)? };
            all.evidence.events[next] = Some(Event {
                put_in: in_bags(visit.put_in),
                latest: in_bags(visit.latest),
                undissolved: visit.since.undissolved(),
                between_visits: !early && all.first().is_some(),
                counts: false,
                instrument,
                readings: [salt.mg_per_l(), again.unwrap_or(salt).mg_per_l(), 0.0],
                taken: if again.is_some() { 2 } else { 1 },
            });
            all.screen(next, visit, expect);
            next += 1;
        }
        if all.first().is_none() && course.after > Mass::NONE {
            all.evidence.events[next] = Some(Event { put_in: in_bags(course.after), ..Event::default() });
        }
        Ok(all)
    }

    /// The salt before everything: what is usual while nothing counts; else so wide that the readings speak.
    pub(crate) fn salt_prior(&self) -> Moments {
        if self.first().is_some() { BEFORE_READING } else { self.unread }
    }

    /// The evidence if the readings of a visit counted, whatever became of them.
    pub(crate) fn believing(&self, at: usize) -> Evidence {
        let mut evidence = self.evidence;
        evidence.events[at] = evidence.events[at].map(|event| Event { counts: true, ..event });
        evidence
    }

    /// The first reading that counts.
    pub(crate) fn first(&self) -> Option<&Screened> {
        self.visits.iter().flatten().find(|screened| screened.status == ReadingStatus::Counts)
    }

    /// The latest reading, and its place.
    pub(crate) fn latest(&self) -> Option<(usize, Screened)> {
        self.visits.iter().flatten().copied().enumerate().last()
    }

    /// The place of an instrument among those that are followed.
    fn place_of(
        &mut self,
        instrument: Instrument,
        known: &mut [Option<Instrument>; MOST_INSTRUMENTS],
    ) -> Result<usize, TooManyInstruments> {
        let place = known.iter().position(|k| k.is_none() || *k == Some(instrument));
        let place = place.ok_or(TooManyInstruments)?;
        known[place] = Some(instrument);
        self.evidence.instruments[place] = instrument_error(instrument);
        Ok(place)
    }

    fn screen(&mut self, at: usize, visit: Visit, expect: Expect) {
        self.pair = false;
        let (mut status, mut z) = (ReadingStatus::Counts, None);
        if visit.since == Since::Early {
            status = ReadingStatus::Early;
        } else {
            let by = visit.reading.instrument;
            if self.first().is_some() {
                let stands = self.z(at, BEFORE_READING, expect);
                z = Some(stands);
                status = self.weigh(stands, by);
            } else if visit.latest > Mass::NONE {
                // Salt went in before anybody read: less than it alone brings can't be believed either.
                status = self.weigh(self.z(at, NO_SALT, expect).min(0.0), by);
            }
            if differs(&visit.reading) {
                status = ReadingStatus::Differs;
            }
        }
        match status {
            // An outlier that has been borne out, or has not.
            ReadingStatus::Counts if self.pair => self.settle(|_| ReadingStatus::Counts),
            ReadingStatus::Counts => self.settle(ReadingStatus::Out),
            _ => self.pair = false,
        }
        self.visits[at] = Some(Screened { visit, status, z });
        for (event, screened) in self.evidence.events.iter_mut().zip(&self.visits) {
            if let (Some(event), Some(screened)) = (event, screened) {
                event.counts = screened.status == ReadingStatus::Counts;
            }
        }
    }

    /// `z = (ȳ - μ)/√v`: how far the mean of a visit's readings stands above what was expected of it.
    fn z(&self, at: usize, salt: Moments, expect: Expect) -> f64 {
        let Some(event) = &self.evidence.events[at] else { return 0.0 };
        let expected = expect(salt, &self.evidence, event);
        (event.mean() - expected.mean) / expected.std_dev
    }

    /// An outlier or not; and if so, does one that waits make a pair with it? By another instrument, on either
    /// side: two that contradict each other widen what is known, and a reading follows. By any if both are too
    /// high: then less is added, so no harm. Low twice by the same stays refused, because its calibration may be
    /// what is wrong.
    fn weigh(&mut self, z: f64, by: Instrument) -> ReadingStatus {
        let [low, high] = policy::OUTLIER_Z;
        let side = match z {
            z if z < -low => Side::Low,
            z if z > high => Side::High,
            _ => return ReadingStatus::Counts,
        };
        self.pair = self.visits.iter().flatten().any(|screened| match screened.status {
            ReadingStatus::Aside(other) => {
                screened.visit.reading.instrument != by || (side, other) == (Side::High, Side::High)
            }
            _ => false,
        });
        if self.pair { ReadingStatus::Counts } else { ReadingStatus::Aside(side) }
    }

    /// Ends the waiting of the readings set aside.
    fn settle(&mut self, status: fn(Side) -> ReadingStatus) {
        for screened in self.visits.iter_mut().flatten() {
            if let ReadingStatus::Aside(side) = screened.status {
                screened.status = status(side);
            }
        }
    }
}

/// Can the two readings of a visit not both be right? `|a - b| > 3 √(2 var e)`, `var e` at their mean.
fn differs(reading: &Reading) -> bool {
    let (Some(again), Some(error)) = (reading.again, instrument_error(reading.instrument)) else {
        return false;
    };
    let (a, b) = (reading.salt.mg_per_l(), again.mg_per_l());
    libm::fabs(a - b) > policy::REPEAT_APART * libm::sqrt(2.0 * error.variance(0.5 * (a + b)))
}
