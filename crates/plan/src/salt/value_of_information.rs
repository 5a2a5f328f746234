//! Which measurement would pay most to repeat?

use crate::input::choices::Instrument;
use crate::policy::uncertainty::{VolumeError, instrument_error};
use crate::salt::course::Course;
use crate::salt::decide::screen;
use crate::salt::ekf::{Event, Evidence};
use crate::salt::estimate::Estimate;
use crate::salt::job::{Job, JobErrors};
use crate::salt::outliers::{ReadingStatus, Screened};
use crate::salt::prior::VolumePrior;

/// How wide the range of need is, in bags from 5 to 95 of 100 such pools, today and if a measurement
/// were better.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ValueOfInformation {
    /// As it is.
    pub today: f64,
    /// With half the doubt of the volume.
    pub volume: f64,
    /// With the same readings by a laboratory.
    pub lab: f64,
    /// With one more reading of the last visit, at its mean.
    pub again: f64,
}

/// A measurement that can be repeated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measurement {
    /// The size of the pool.
    Volume,
    /// The readings, by a laboratory.
    Lab,
}

impl ValueOfInformation {
    /// The one to repeat; none where none would take half a bag off. Another reading by the same instrument never
    /// tells as much as one by a laboratory: what is wrong with the instrument stays. Our choice.
    #[must_use]
    pub fn most(&self) -> Option<Measurement> {
        let [volume, lab] = [self.volume, self.lab].map(|width| self.today - width);
        match volume.max(lab) {
            most if most < 0.5 => None,
            most if volume >= most => Some(Measurement::Volume),
            _ => Some(Measurement::Lab),
        }
    }
}

/// Which measurement would pay most to repeat? Costs as much as several decisions, so it is a question of
/// its own. Nothing where the last reading does not count. What is an outlier stays so: it is today's estimate,
/// better informed.
///
/// Errors: [`JobErrors`].
///
/// ```
/// # use chem::*;
/// # use saltwright_plan::log::*;
/// # use saltwright_plan::salt::course::*;
/// # use saltwright_plan::salt::value_of_information::value_of_information;
/// # use saltwright_plan::salt::job::*;
/// # use saltwright_plan::*;
/// # fn main() -> Result<(), OutOfRange> {
/// # let job = Job {
/// #     volume: Volume::from_cubic_metres(62.82)?,
/// #     method: Method::Taped,
/// #     doubt: None,
/// #     bag: Mass::from_kilograms(20.0)?,
/// #     purity: Purity::from_ratio(0.994)?,
/// #     in_hand: 0,
/// #     band: Band::of(None, None, None).unwrap(),
/// #     history: History::Fresh,
/// #     fill: None,
/// #     handled: Handled::Parts(policy::PART_OF_BAG),
/// #     levels: RiskLevels::default(),
/// # };
/// # let salt = Salinity::from_mg_per_l(400.0)?;
/// # let reading = Reading { salt, again: None, instrument: Instrument::Meter };
/// # let first = Some(Baseline { when: None, reading });
/// let value = value_of_information(&job, &course(first, &[None; MOST_ENTRIES])).unwrap().unwrap();
/// assert!(value.volume < value.today && value.today < 2.5); // bags, of about nine
/// # Ok(())
/// # }
/// ```
pub fn value_of_information(job: &Job, course: &Course) -> Result<Option<ValueOfInformation>, JobErrors> {
    let screening = screen(job, course)?;
    let Some((at, Screened { status: ReadingStatus::Counts, .. })) = screening.latest() else {
        return Ok(None);
    };
    let target = job.band.target.mg_per_l();
    let width = |prior: VolumePrior, evidence: &Evidence| {
        let estimate = Estimate::new(&prior, screening.salt_prior(), evidence);
        estimate.bags_exactly(target, 0.95) - estimate.bags_exactly(target, 0.05)
    };
    let (today, error) = (screening.evidence, job.volume_error());
    let halved = VolumeError { rho: error.rho / 2.0, ..error };
    let (mut lab, mut again) = (today, today);
    lab.instruments = lab.instruments.map(|by| by.and(instrument_error(Instrument::Lab)));
    again.events[at] = again.events[at].map(Event::repeated);
    Ok(Some(ValueOfInformation {
        today: width(job.prior(), &today),
        volume: width(job.prior_with(halved), &today),
        lab: width(job.prior(), &lab),
        again: width(job.prior(), &again),
    }))
}
