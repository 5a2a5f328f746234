//! If the volume were known: what do doses and readings say about the salt?
//!
//! A linear Gaussian filter over the salt and over what each instrument shares among its readings: an
//! offset and a gain. They cancel in part in a difference, and never average out.

use crate::policy::uncertainty::{OF_WATER, OfReading, Undissolved};
use crate::salt::course::MOST_VISITS;

/// More instruments than this in one job are asked about, not followed. Our choice.
pub(crate) const MOST_METERS: usize = 3;
/// Salt, then offset and gain of each instrument.
const MOST: usize = 1 + 2 * MOST_METERS;
/// Of one visit: two readings, and one more to see whether it would pay.
const MOST_READS: usize = 3;

/// A visit as the filter meets it, salt in bags.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Step {
    /// Put in since the step before.
    pub put_in: f64,
    /// The latest dose.
    pub latest: f64,
    /// The part of it that is not dissolved yet.
    pub undissolved: Undissolved,
    /// Water came and went since the step before.
    pub gap: bool,
    /// The readings count.
    pub counts: bool,
    /// Which instrument.
    pub meter: usize,
    /// The readings, mg/L.
    pub reads: [f64; MOST_READS],
    /// How many of them.
    pub taken: usize,
}

impl Step {
    /// Mean of the readings.
    pub(crate) fn mean(&self) -> f64 {
        self.reads[..self.taken].iter().sum::<f64>() / self.taken as f64
    }

    /// With the same reading once more, at the mean.
    pub(crate) fn repeated(mut self) -> Self {
        if self.taken < MOST_READS {
            self.reads[self.taken] = self.mean();
            self.taken += 1;
        }
        self
    }
}

/// All that the filter meets, in order of time.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Evidence {
    /// Salt before everything: mean and spread, mg/L.
    pub salt: (f64, f64),
    /// The instruments.
    pub meters: [Option<OfReading>; MOST_METERS],
    /// Their visits, and a last step for what went in since.
    pub steps: [Option<Step>; MOST_VISITS + 1],
}

impl Evidence {
    /// The steps before the first dose, in which the volume has no say, and the others.
    pub(crate) fn around_first_dose(&self) -> (&[Option<Step>], &[Option<Step>]) {
        let dosed = |step: &Option<Step>| step.is_some_and(|step| step.put_in > 0.0);
        self.steps.split_at(self.steps.iter().position(dosed).unwrap_or(self.steps.len()))
    }
}

/// What is known at one volume.
#[derive(Clone, Copy)]
pub(crate) struct Filter {
    mean: [f64; MOST],
    cov: [[f64; MOST]; MOST],
    /// How much of them is in use.
    size: usize,
    /// Logarithm of how likely the readings were, less what all volumes share.
    pub likely: f64,
}

/// A reading, foreseen.
pub(crate) struct Foreseen {
    /// What will be read.
    pub mean: f64,
    /// Its variance.
    pub var: f64,
    /// How it moves with salt, offset and gain.
    slope: [f64; 3],
    /// Its covariance with all of the state.
    with: [f64; MOST],
}

impl Filter {
    /// Before everything.
    pub(crate) fn new(evidence: &Evidence) -> Self {
        let mut new = Self { mean: [0.0; MOST], cov: [[0.0; MOST]; MOST], size: 1, likely: 0.0 };
        let (mean, spread) = evidence.salt;
        new.mean[0] = mean;
        new.cov[0][0] = spread * spread;
        for meter in evidence.meters.iter().flatten() {
            let at = new.size;
            new.cov[at][at] = meter.offset * meter.offset;
            new.cov[at + 1][at + 1] = meter.gain * meter.gain;
            new.size += 2;
        }
        new
    }

    /// Mean of the salt, mg/L.
    pub(crate) fn salt(&self) -> f64 {
        self.mean[0]
    }

    /// Its variance; never less than a number can tell.
    pub(crate) fn var(&self) -> f64 {
        libm::fmax(self.cov[0][0], 1e-6)
    }

    /// After these steps, where a bag raises the salt by `rise` mg/L.
    pub(crate) fn after(mut self, steps: &[Option<Step>], meters: &[Option<OfReading>], rise: f64) -> Self {
        for step in steps.iter().flatten() {
            self.mean[0] += step.put_in * rise;
            if step.gap {
                let moved = OF_WATER * libm::fmax(self.mean[0], 0.0);
                self.cov[0][0] += moved * moved;
            }
            if let (true, Some(meter)) = (step.counts, &meters[step.meter]) {
                for &read in &step.reads[..step.taken] {
                    self.read(read, step, meter, rise);
                }
            }
        }
        self
    }

    /// What the mean of the step's readings will be.
    pub(crate) fn foresee(&self, step: &Step, meter: &OfReading, rise: f64) -> Foreseen {
        let each = 1.0 / step.taken as f64;
        self.seen_from(&self.mean, step, meter, rise, each)
    }

    /// The reading as it looks from the state `at`: `h = (1 + g)(C - u) + o`, made straight there.
    fn seen_from(&self, at: &[f64; MOST], step: &Step, meter: &OfReading, rise: f64, each: f64) -> Foreseen {
        let [offset, gain] = [1, 2].map(|which| which + 2 * step.meter);
        let heap = step.latest * rise;
        let dissolved = at[0] - step.undissolved.mean * heap;
        let slope = [1.0 + at[gain], 1.0, dissolved];
        let mut with = [0.0; MOST];
        let rows = [&self.cov[0], &self.cov[offset], &self.cov[gain]];
        for (i, with) in with[..self.size].iter_mut().enumerate() {
            *with = slope[0] * rows[0][i] + rows[1][i] + slope[2] * rows[2][i];
        }
        let doubt = slope[0] * step.undissolved.spread * heap;
        let own = meter.each_time(dissolved) * each + doubt * doubt;
        let var = own + slope[0] * with[0] + with[offset] + slope[2] * with[gain];
        Foreseen { mean: slope[0] * dissolved + at[offset], var, slope, with }
    }

    /// Takes a reading in. What it says is not straight in the state, so it is made straight three times,
    /// each time about what the time before found.
    fn read(&mut self, read: f64, step: &Step, meter: &OfReading, rise: f64) {
        let [offset, gain] = [1, 2].map(|which| which + 2 * step.meter);
        let mut at = self.mean;
        let mut seen = self.seen_from(&at, step, meter, rise, 1.0);
        let mut off = read - seen.mean;
        for again in [true, true, false] {
            let moved = off / seen.var;
            for (i, at) in at[..self.size].iter_mut().enumerate() {
                *at = self.mean[i] + seen.with[i] * moved;
            }
            if again {
                seen = self.seen_from(&at, step, meter, rise, 1.0);
                let [salt, o, g] = [0, offset, gain].map(|i| self.mean[i] - at[i]);
                off = read - seen.mean - (seen.slope[0] * salt + o + seen.slope[2] * g);
            }
        }
        self.mean = at;
        for (i, row) in self.cov[..self.size].iter_mut().enumerate() {
            let part = seen.with[i] / seen.var;
            for (cell, with) in row[..self.size].iter_mut().zip(&seen.with) {
                *cell -= part * with;
            }
        }
        self.likely -= 0.5 * (off * off / seen.var + libm::log(seen.var));
    }
}
