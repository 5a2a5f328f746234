//! Which measurement would pay most to repeat?

use crate::input::choices::Instrument;
use crate::policy::uncertainty::{OfVolume, of_reading};
use crate::salt::course::Course;
use crate::salt::decide::judge;
use crate::salt::ekf::{Evidence, Step};
use crate::salt::estimate::Estimate;
use crate::salt::job::{Faults, Job};
use crate::salt::outliers::{Fate, Judged};
use crate::salt::prior::Prior;

/// How wide the range of need is, in bags from 5 to 95 of 100 such pools, today and if a measurement
/// were better.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pays {
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

impl Pays {
    /// The one to repeat; none where none would take half a bag off. Another reading by the same instrument never
    /// tells as much as one by a laboratory: what is wrong with the instrument stays. Our choice.
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
/// its own. Nothing where the last reading does not count. What is odd stays so: it is today's estimate,
/// better informed.
///
/// Errors: [`Faults`].
///
/// ```
/// # use chem::*;
/// # use plan::log::*;
/// # use plan::salt::course::*;
/// # use plan::salt::value_of_information::pays;
/// # use plan::salt::job::*;
/// # use plan::*;
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
/// #     handled: Handled::Parts([1.0, 0.5]),
/// #     levels: Levels::default(),
/// # };
/// # let salt = Salinity::from_mg_per_l(400.0)?;
/// # let reading = Reading { salt, again: None, instrument: Instrument::Meter };
/// # let first = Some(Baseline { when: None, reading });
/// let pays = pays(&job, &course(first, &[None; MOST_ENTRIES])).unwrap().unwrap();
/// assert!(pays.volume < pays.today && pays.today < 2.5); // bags, of about nine
/// # Ok(())
/// # }
/// ```
pub fn pays(job: &Job, course: &Course) -> Result<Option<Pays>, Faults> {
    let judged = judge(job, course)?;
    let Some((at, Judged { fate: Fate::Counts, .. })) = judged.latest() else { return Ok(None) };
    let target = job.band.target.mg_per_l();
    let width = |prior: Prior, evidence: &Evidence| {
        let estimate = Estimate::new(&prior, evidence);
        estimate.bags_exactly(target, 0.95) - estimate.bags_exactly(target, 0.05)
    };
    let (today, doubt) = (judged.evidence, job.doubt());
    let halved = OfVolume { spread: doubt.spread / 2.0, ..doubt };
    let (mut lab, mut again) = (today, today);
    lab.meters = lab.meters.map(|meter| meter.and(of_reading(Instrument::Lab)));
    again.steps[at] = again.steps[at].map(Step::repeated);
    Ok(Some(Pays {
        today: width(job.prior(), &today),
        volume: width(job.prior_with(halved), &today),
        lab: width(job.prior(), &lab),
        again: width(job.prior(), &again),
    }))
}
