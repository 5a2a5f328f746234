//! What would the simple sums add?
//!
//! The estimate decides; these stand beside it. One believes only the volume, the other only the readings.

use crate::salt::dosing::mean;
use crate::salt::job::Job;
use crate::salt::outliers::{ReadingStatus, Screened};
use chem::{Mass, Salinity, salt};

/// The simple sums for what is still missing.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Sums {
    /// By the volume as stated: `V (target - reading)/purity`.
    pub by_volume: Mass,
    /// By proportion, `m (target - reading)/(reading - first reading)`, with the mass `m` that went in
    /// between; nothing where the reading did not rise.
    pub by_proportion: Option<Mass>,
}

/// The simple sums at the last reading; nothing at the first.
pub(crate) fn sums(job: &Job, visits: &[Option<Screened>]) -> Option<Sums> {
    let mut counted = visits.iter().flatten().skip_while(|screened| screened.status != ReadingStatus::Counts);
    let first = mean(&counted.next()?.visit.reading).0;
    let (mut put_in, mut now) = (0.0, None);
    for screened in counted {
        put_in += screened.visit.put_in.kilograms();
        now = Some(mean(&screened.visit.reading).0);
    }
    let now = now?;
    let target = job.band.target.mg_per_l();
    let rise = Salinity::from_mg_per_l(target - now).unwrap_or(Salinity::NONE);
    let share = libm::fmax(target - now, 0.0) / (now - first);
    let proportional = now > first && put_in > 0.0;
    Some(Sums {
        by_volume: salt::mass_for(job.volume, rise, job.purity),
        by_proportion: Mass::from_kilograms(put_in * share).ok().filter(|_| proportional),
    })
}

/// The last reading that counts, unless it is the first, mg/L.
pub(crate) fn last_of_several(visits: &[Option<Screened>]) -> Option<f64> {
    let counted = visits.iter().flatten().filter(|screened| screened.status == ReadingStatus::Counts);
    counted.skip(1).last().map(|screened| mean(&screened.visit.reading).0)
}
