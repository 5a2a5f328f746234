//! What do the doses themselves say of the volume?
//!
//! The estimate decides; this stands beside it.

use crate::input::log::Reading;
use crate::policy;
use crate::policy::uncertainty::{DRIFT_STD_DEV, InstrumentError, Moments, PURITY_STD_DEV, instrument_error};
use crate::salt::job::Job;
use crate::salt::outliers::{ReadingStatus, Screened};

/// The volume from the first dose alone.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Dosing {
    /// The reading did not rise.
    NoRise,
    /// The volume that the rise tells of, m³.
    Told {
        /// The rise is too small beside its own doubt to tell much.
        weak: bool,
        /// Its mean and standard deviation.
        volume: Moments,
        /// 95 times in 100 it is no smaller than this.
        low: f64,
        /// Nor larger than this; nothing where the rise sets no end.
        high: Option<f64>,
    },
}

/// The volume that the first dose tells of: the one between the first two readings that have salt
/// between them, whatever was decided about those. Nothing before there are two.
///
/// `V = 1000 · mass · purity (1 - u)/d`, `d` the rise, with `σ²` of `d`: what each reading has of its own, the water's
/// change, and a part of `d²` for purity and undissolved salt; the gain too where one instrument made both, otherwise
/// offset and gain of each at its reading. Standard deviation `V σ/d`; 95 %: `V d/(d ± 1.96 σ)`, without upper end
/// where `d ≤ 1.96 σ`.
pub(crate) fn dosing(job: &Job, visits: &[Option<Screened>]) -> Option<Dosing> {
    let mut before: Option<&Reading> = None;
    let mut put_in = 0.0;
    for Screened { visit, status, .. } in visits.iter().flatten() {
        put_in += visit.put_in.kilograms();
        if *status == ReadingStatus::Early {
            continue;
        }
        match before {
            Some(before) if put_in > 0.0 => {
                let part = visit.since.undissolved();
                let purity = job.purity.ratio();
                let dissolved = 1000.0 * put_in * purity * (1.0 - part.mean);
                return told(dissolved, part.std_dev / (1.0 - part.mean), before, &visit.reading);
            }
            _ => (before, put_in) = (Some(&visit.reading), 0.0),
        }
    }
    None
}

fn told(dissolved: f64, undissolved: f64, before: &Reading, after: &Reading) -> Option<Dosing> {
    let squared = |x: f64| x * x;
    let own = |reading: &Reading| {
        let (mean, taken) = mean(reading);
        instrument_error(reading.instrument).map(|error| (error, mean, error.variance(mean) / taken))
    };
    let ((by0, r0, own0), (by1, r1, own1)) = (own(before)?, own(after)?);
    let rise = r1 - r0;
    if rise <= 1e-9 {
        // What no number of a reading shows is no rise.
        return Some(Dosing::NoRise);
    }
    let shared = |error: InstrumentError, r: f64| squared(error.offset) + squared(error.gain * r);
    let instruments = if before.instrument == after.instrument {
        squared(by0.gain * rise)
    } else {
        shared(by0, r0) + shared(by1, r1)
    };
    let salt = (squared(PURITY_STD_DEV) + squared(undissolved)) * squared(rise);
    let sigma = libm::sqrt(own0 + own1 + squared(DRIFT_STD_DEV * r1) + salt + instruments);
    let volume = dissolved / rise;
    let low = dissolved / (rise + 1.96 * sigma);
    let high = (rise > 1.96 * sigma).then(|| dissolved / (rise - 1.96 * sigma));
    Some(Dosing::Told {
        weak: sigma > policy::WEAK_RISE * rise,
        volume: Moments { mean: volume, std_dev: volume * sigma / rise },
        low,
        high,
    })
}

/// Mean of a visit's readings, and how many there are.
pub(crate) fn mean(reading: &Reading) -> (f64, f64) {
    let salt = reading.salt.mg_per_l();
    reading.again.map_or((salt, 1.0), |again| (0.5 * (salt + again.mg_per_l()), 2.0))
}
