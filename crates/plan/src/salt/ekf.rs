//! If the volume were known: what do doses and readings say about the salt?
//!
//! An iterated extended Kalman filter over the salt `C` and over what each instrument shares among its
//! readings: an offset `o` and a gain `g`. They cancel in part in a difference, and never average out.

use crate::policy::uncertainty::{DRIFT_STD_DEV, InstrumentError, Moments};
use crate::salt::course::MOST_VISITS;

/// More instruments than this in one job are asked about, not followed. Our choice.
pub(crate) const MOST_INSTRUMENTS: usize = 3;
/// Salt, then offset and gain of each instrument.
const MOST_STATES: usize = 1 + 2 * MOST_INSTRUMENTS;
/// Of one visit: two readings, and one more to see whether it would pay.
const MOST_READINGS: usize = 3;
/// How often a reading is linearised.
const ITERATIONS: usize = 3;

/// A visit as the filter meets it, salt in bags.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Event {
    /// Put in since the event before.
    pub put_in: f64,
    /// The latest dose, `n`.
    pub latest: f64,
    /// The part of it that is not dissolved yet, `u`.
    pub undissolved: Moments,
    /// Water came and went since the event before.
    pub between_visits: bool,
    /// The readings count.
    pub counts: bool,
    /// Which instrument.
    pub instrument: usize,
    /// The readings `y`, mg/L.
    pub readings: [f64; MOST_READINGS],
    /// How many of them.
    pub taken: usize,
}

impl Event {
    /// Mean of the readings.
    pub(crate) fn mean(&self) -> f64 {
        self.readings[..self.taken].iter().sum::<f64>() / self.taken as f64
    }

    /// With the same reading once more, at the mean.
    pub(crate) fn repeated(mut self) -> Self {
        if self.taken < MOST_READINGS {
            self.readings[self.taken] = self.mean();
            self.taken += 1;
        }
        self
    }
}

/// All that the filter meets, in order of time.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Evidence {
    /// The instruments.
    pub instruments: [Option<InstrumentError>; MOST_INSTRUMENTS],
    /// Their visits, and a last event for what went in since.
    pub events: [Option<Event>; MOST_VISITS + 1],
}

impl Evidence {
    /// Nothing yet.
    pub(crate) const NONE: Self =
        Self { instruments: [None; MOST_INSTRUMENTS], events: [None; MOST_VISITS + 1] };

    /// The events before the first dose, in which the volume has no say, and the others.
    pub(crate) fn around_first_dose(&self) -> (&[Option<Event>], &[Option<Event>]) {
        let dosed = |event: &Option<Event>| event.is_some_and(|event| event.put_in > 0.0);
        self.events.split_at(self.events.iter().position(dosed).unwrap_or(self.events.len()))
    }
}

/// What is known at one volume.
#[derive(Clone, Copy)]
pub(crate) struct Ekf {
    mean: [f64; MOST_STATES],
    cov: [[f64; MOST_STATES]; MOST_STATES],
    /// How much of them is in use.
    size: usize,
    /// Logarithm of how likely the readings were, less what all volumes share.
    pub log_likelihood: f64,
}

/// A reading, predicted.
pub(crate) struct Prediction {
    /// `h`: what will be read, mg/L.
    mean: f64,
    /// `S`: its variance.
    variance: f64,
    /// `H`: its slopes with salt, offset and gain.
    jacobian: [f64; 3],
    /// `PHᵀ`: its covariance with all of the state.
    cross_cov: [f64; MOST_STATES],
}

impl Prediction {
    /// Mean and standard deviation of what will be read.
    pub(crate) fn moments(&self) -> Moments {
        Moments { mean: self.mean, std_dev: libm::sqrt(self.variance) }
    }
}

impl Ekf {
    /// Before everything: `salt` in the water, mg/L, and instruments that are right on the average.
    pub(crate) fn new(salt: Moments, instruments: &[Option<InstrumentError>]) -> Self {
        let mut new = Self {
            mean: [0.0; MOST_STATES],
            cov: [[0.0; MOST_STATES]; MOST_STATES],
            size: 1,
            log_likelihood: 0.0,
        };
        new.mean[0] = salt.mean;
        new.cov[0][0] = salt.std_dev * salt.std_dev;
        for instrument in instruments.iter().flatten() {
            let at = new.size;
            new.cov[at][at] = instrument.offset * instrument.offset;
            new.cov[at + 1][at + 1] = instrument.gain * instrument.gain;
            new.size += 2;
        }
        new
    }

    /// The salt, mg/L; its variance never less than a number can tell.
    pub(crate) fn salt(&self) -> Moments {
        Moments { mean: self.mean[0], std_dev: libm::sqrt(libm::fmax(self.cov[0][0], 1e-6)) }
    }

    /// After these events, where a bag gives `x` mg/L.
    pub(crate) fn after(
        mut self,
        events: &[Option<Event>],
        instruments: &[Option<InstrumentError>],
        x: f64,
    ) -> Self {
        for event in events.iter().flatten() {
            self.mean[0] += event.put_in * x;
            if event.between_visits {
                let drift = DRIFT_STD_DEV * libm::fmax(self.mean[0], 0.0);
                self.cov[0][0] += drift * drift;
            }
            if let (true, Some(instrument)) = (event.counts, &instruments[event.instrument]) {
                for &y in &event.readings[..event.taken] {
                    self.update(y, event, instrument, x);
                }
            }
        }
        self
    }

    /// What the mean of the event's readings will be.
    pub(crate) fn predict(&self, event: &Event, instrument: &InstrumentError, x: f64) -> Prediction {
        self.linearised(&self.mean, event, instrument, x, 1.0 / event.taken as f64)
    }

    /// The reading `h = (1 + g)(C - u n x) + o`, linearised about the state `at`; its own noise in that part.
    fn linearised(
        &self,
        at: &[f64; MOST_STATES],
        event: &Event,
        instrument: &InstrumentError,
        x: f64,
        part: f64,
    ) -> Prediction {
        let [offset, gain] = [1, 2].map(|which| which + 2 * event.instrument);
        let latest = event.latest * x;
        let dissolved = at[0] - event.undissolved.mean * latest;
        let jacobian = [1.0 + at[gain], 1.0, dissolved];
        let mut cross_cov = [0.0; MOST_STATES];
        let rows = [&self.cov[0], &self.cov[offset], &self.cov[gain]];
        for (i, cov) in cross_cov[..self.size].iter_mut().enumerate() {
            *cov = jacobian[0] * rows[0][i] + rows[1][i] + jacobian[2] * rows[2][i];
        }
        let undissolved = jacobian[0] * event.undissolved.std_dev * latest;
        let noise = instrument.variance(dissolved) * part + undissolved * undissolved;
        let variance = noise + jacobian[0] * cross_cov[0] + cross_cov[offset] + jacobian[2] * cross_cov[gain];
        Prediction { mean: jacobian[0] * dissolved + at[offset], variance, jacobian, cross_cov }
    }

    /// Takes a reading in. It is not linear in the state, so it is linearised three times: about the mean
    /// before it, then each time about what the time before found.
    fn update(&mut self, y: f64, event: &Event, instrument: &InstrumentError, x: f64) {
        let [offset, gain] = [1, 2].map(|which| which + 2 * event.instrument);
        let mut at = self.mean;
        let mut predicted = self.linearised(&at, event, instrument, x, 1.0);
        let mut innovation = y - predicted.mean;
        for iteration in 1..=ITERATIONS {
            let moved = innovation / predicted.variance;
            for (i, at) in at[..self.size].iter_mut().enumerate() {
                *at = self.mean[i] + predicted.cross_cov[i] * moved;
            }
            if iteration < ITERATIONS {
                predicted = self.linearised(&at, event, instrument, x, 1.0);
                let [salt, o, g] = [0, offset, gain].map(|i| self.mean[i] - at[i]);
                let [by_salt, _, by_gain] = predicted.jacobian;
                innovation = y - predicted.mean - (by_salt * salt + o + by_gain * g);
            }
        }
        self.mean = at;
        for (i, row) in self.cov[..self.size].iter_mut().enumerate() {
            let part = predicted.cross_cov[i] / predicted.variance;
            for (cell, cov) in row[..self.size].iter_mut().zip(&predicted.cross_cov) {
                *cell -= part * cov;
            }
        }
        self.log_likelihood -=
            0.5 * (innovation * innovation / predicted.variance + libm::log(predicted.variance));
    }
}
