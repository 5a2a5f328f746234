//! Which readings can be believed?
//!
//! A reading that stands too far from what was expected is set aside, and nothing is decided from it. The
//! next one settles whether it or the expectation was wrong: the log decides, and nobody is asked.

use crate::input::choices::Instrument;
use crate::input::log::Reading;
use crate::policy;
use crate::policy::uncertainty::{Since, of_reading};
use crate::salt::course::{Course, MOST_VISITS, Visit};
use crate::salt::ekf::{Evidence, MOST_METERS, Step};
use crate::salt::estimate::Estimate;
use crate::salt::prior::Prior;
use chem::Mass;

/// On which side of what was expected a reading is odd.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// It reads too low.
    Low,
    /// It reads too high.
    High,
}

/// What became of a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It counts.
    Counts,
    /// It was taken too early after the salt, and leaves nothing.
    Early,
    /// The two readings of the visit can't both be right.
    Differs,
    /// It is odd, and waits for another reading.
    Aside(Side),
    /// It was odd, and the next one was not: it stays out.
    Out(Side),
}

/// A visit and what became of its reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judged {
    /// The visit.
    pub visit: Visit,
    /// What became of it.
    pub fate: Fate,
    /// How many of its own spreads the reading stands above what was expected; nothing for the first one.
    pub z: Option<f64>,
}

/// All visits, judged.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Judgement {
    /// The visits in order of time, from the front.
    pub visits: [Option<Judged>; MOST_VISITS],
    /// The last reading and one that was set aside are both odd, and both count: the expectation was wrong.
    pub pair: bool,
    /// What the estimate goes by. Its steps stand beside the visits; while no
    /// reading counts, what went in since is one more.
    pub evidence: Evidence,
}

/// There is a reading by a fourth instrument.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct TooManyInstruments;

impl Judgement {
    /// Judges the visits one after the other, each against what was known before it.
    ///
    /// `bag` is the salt in one; `unread` the salt to go by while nothing was read, mean and spread in
    /// mg/L. Errors: [`TooManyInstruments`].
    pub(crate) fn of(
        course: &Course,
        prior: &Prior,
        bag: Mass,
        unread: (f64, f64),
    ) -> Result<Self, TooManyInstruments> {
        let in_bags = |mass: Mass| mass.kilograms() / bag.kilograms();
        let evidence = Evidence { salt: unread, meters: [None; MOST_METERS], steps: [None; MOST_VISITS + 1] };
        let mut all = Self { visits: [None; MOST_VISITS], pair: false, evidence };
        let mut known = [None; MOST_METERS];
        let mut next = 0;
        for &visit in course.visits.iter().flatten() {
            let early = visit.since == Since::Early;
            let Reading { salt, again, instrument } = visit.reading;
            let meter = if early { 0 } else { all.meter(&mut known, instrument)? };
            all.evidence.steps[next] = Some(Step {
                put_in: in_bags(visit.put_in),
                latest: in_bags(visit.latest),
                undissolved: visit.since.undissolved(),
                gap: !early && all.first().is_some(),
                counts: false,
                meter,
                reads: [salt.mg_per_l(), again.unwrap_or(salt).mg_per_l(), 0.0],
                taken: if again.is_some() { 2 } else { 1 },
            });
            all.judge(next, visit, prior);
            next += 1;
        }
        if all.first().is_none() && course.after > Mass::NONE {
            all.evidence.steps[next] = Some(Step { put_in: in_bags(course.after), ..Step::default() });
        }
        Ok(all)
    }

    /// Lets the readings of a visit count, whatever became of them.
    pub(crate) fn believe(&mut self, at: usize) {
        if let Some(step) = &mut self.evidence.steps[at] {
            step.counts = true;
            self.evidence.salt = policy::BEFORE_READING;
        }
    }

    /// The first reading that counts.
    pub(crate) fn first(&self) -> Option<&Judged> {
        self.visits.iter().flatten().find(|judged| judged.fate == Fate::Counts)
    }

    /// The latest reading, and its place.
    pub(crate) fn latest(&self) -> Option<(usize, Judged)> {
        self.visits.iter().flatten().copied().enumerate().last()
    }

    /// The place of an instrument among those that are followed.
    fn meter(
        &mut self,
        known: &mut [Option<Instrument>; MOST_METERS],
        instrument: Instrument,
    ) -> Result<usize, TooManyInstruments> {
        let place = known.iter().position(|k| k.is_none() || *k == Some(instrument));
        let place = place.ok_or(TooManyInstruments)?;
        known[place] = Some(instrument);
        self.evidence.meters[place] = of_reading(instrument);
        Ok(place)
    }

    fn judge(&mut self, at: usize, visit: Visit, prior: &Prior) {
        self.pair = false;
        let (mut fate, mut z) = (Fate::Counts, None);
        if visit.since == Since::Early {
            fate = Fate::Early;
        } else {
            let by = visit.reading.instrument;
            if self.first().is_some() {
                let surprise = self.surprise(at, prior);
                z = Some(surprise);
                fate = self.weigh(surprise, by);
            } else if visit.latest > Mass::NONE {
                // Salt went in before anybody read: less than it alone brings can't be believed either.
                let unread = core::mem::replace(&mut self.evidence.salt, policy::NO_SALT);
                fate = self.weigh(self.surprise(at, prior).min(0.0), by);
                self.evidence.salt = unread;
            }
            if differs(&visit.reading) {
                fate = Fate::Differs;
            }
        }
        match fate {
            // An odd one that has been borne out, or has not.
            Fate::Counts => self.settle(if self.pair { |_| Fate::Counts } else { Fate::Out }),
            _ => self.pair = false,
        }
        self.visits[at] = Some(Judged { visit, fate, z });
        for (step, judged) in self.evidence.steps.iter_mut().zip(&self.visits) {
            if let (Some(step), Some(judged)) = (step, judged) {
                step.counts = judged.fate == Fate::Counts;
            }
        }
        if self.first().is_some() {
            self.evidence.salt = policy::BEFORE_READING;
        }
    }

    /// How many of its own spreads the mean of a visit's readings stands above what was expected of it.
    ///
    /// `z = (r - m)/√v`, expected without blunders and with a volume doubted by at most
    /// [`policy::ODD_DOUBT`].
    fn surprise(&self, at: usize, prior: &Prior) -> f64 {
        let Some(step) = &self.evidence.steps[at] else { return 0.0 };
        let before = Estimate::new(&prior.strict(policy::ODD_DOUBT), &self.evidence);
        let expected = before.foresee(&self.evidence, step).about();
        (step.mean() - expected.mean) / expected.spread
    }

    /// Odd or not; and if odd, does one that waits make a pair with it? By another instrument, on either side: two
    /// that contradict each other widen what is known, and a reading follows. By any if both are too high: then less is added, so no harm. Low twice by the same stays refused, because its
    /// calibration may be what is wrong.
    fn weigh(&mut self, z: f64, by: Instrument) -> Fate {
        let [low, high] = policy::ODD;
        let side = match z {
            z if z < -low => Side::Low,
            z if z > high => Side::High,
            _ => return Fate::Counts,
        };
        self.pair = self.visits.iter().flatten().any(|judged| match judged.fate {
            Fate::Aside(other) => {
                judged.visit.reading.instrument != by || (side, other) == (Side::High, Side::High)
            }
            _ => false,
        });
        if self.pair { Fate::Counts } else { Fate::Aside(side) }
    }

    /// Ends the waiting of the readings set aside.
    fn settle(&mut self, fate: fn(Side) -> Fate) {
        for judged in self.visits.iter_mut().flatten() {
            if let Fate::Aside(side) = judged.fate {
                judged.fate = fate(side);
            }
        }
    }
}

/// Can the two readings of a visit not both be right? `|a - b| > 3 √(2 var e)`, `var e` at their mean.
fn differs(reading: &Reading) -> bool {
    let (Some(again), Some(meter)) = (reading.again, of_reading(reading.instrument)) else { return false };
    let (a, b) = (reading.salt.mg_per_l(), again.mg_per_l());
    let apart = policy::REPEAT_APART * libm::sqrt(2.0 * meter.each_time(0.5 * (a + b)));
    libm::fabs(a - b) > apart
}
