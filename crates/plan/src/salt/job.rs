//! What is asked of a job, and does it make sense?

use crate::input::case::{Band, RiskLevels, WeighedIn};
use crate::input::choices::{History, Method};
use crate::input::limits;
use crate::policy::uncertainty::{Moments, VolumeError, unread_salt, volume_error};
use crate::policy::{self, PartOfBag};
use crate::salt::course::{Course, Visit};
use crate::salt::prior::VolumePrior;
use chem::{Fraction, Mass, Purity, Salinity, Volume, bounds};
use core::error::Error;
use core::fmt::{self, Display, Formatter};

/// All that stays the same while salt goes in and readings are taken.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Job {
    /// Amount of water, as stated.
    pub volume: Volume,
    /// How it was found.
    pub method: Method,
    /// How far it may typically be off, in the place of what the method says.
    pub doubt: Option<Fraction>,
    /// Salt in a bag.
    pub bag: Mass,
    /// Sodium chloride in the salt.
    pub purity: Purity,
    /// Whole bags the person already has.
    pub in_hand: u32,
    /// The generator's target and limits.
    pub band: Band,
    /// The water's history, to go by while there is no reading.
    pub history: History,
    /// The fill water's salt.
    pub fill: Option<Salinity>,
    /// How finely salt is put in.
    pub handled: Handled,
    /// Which risks are taken.
    pub levels: RiskLevels,
}

/// How finely salt is put in.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Handled {
    /// By [`policy::PART_OF_BAG`]; by weight where the job takes under [`policy::WEIGH_BELOW_BAGS`], in these steps,
    /// the fine one under [`policy::WEIGH_FINELY_BELOW`] in all.
    Bags(WeighedIn),
    /// In these parts of a bag.
    Parts(PartOfBag),
}

/// What is wrong with a job. The page shows all of it; the first one has precedence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum JobError {
    /// The volume is outside its bounds.
    Volume,
    /// The bag is.
    Bag,
    /// The purity is.
    Purity,
    /// The low limit is not above none, the target not above it, or the high limit not above that.
    Band,
    /// A reading is outside its bounds.
    Reading,
    /// A dose is, or all of them together.
    Dose,
    /// The doubt of the volume is not a part of it.
    Doubt,
    /// The fill water's salt is outside its bounds.
    Fill,
    /// A level is no level.
    Levels,
    /// The steps in which salt is put in are none.
    Handled,
    /// There is a reading by a fourth instrument: which three are to count?
    Instruments,
}

impl JobError {
    /// All of them, the first ones first.
    pub const ALL: [Self; 11] = [
        Self::Volume,
        Self::Bag,
        Self::Purity,
        Self::Band,
        Self::Reading,
        Self::Dose,
        Self::Doubt,
        Self::Fill,
        Self::Levels,
        Self::Handled,
        Self::Instruments,
    ];
}

impl Display for JobError {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        let (field, remedy) = match self {
            Self::Volume => ("volume", "between the limits of `bounds::POOL`"),
            Self::Bag => ("bag size", "between the limits of `limits::BAG_SIZE`"),
            Self::Purity => ("purity", "between the limits of `limits::BAG_PURITY`"),
            Self::Band => ("band", "none, low limit, target, high limit: each above the one before"),
            Self::Reading => ("salt reading", "between the limits of `bounds::SALINITY`"),
            Self::Dose => ("salt put in", "within `limits::SALT`, each dose and all together"),
            Self::Doubt => ("doubt of the volume", "a part of it, 0 to 1"),
            Self::Fill => ("fill water's salt", "between the limits of `bounds::SALINITY`"),
            Self::Levels => ("risk levels", "parts of 1, as `RiskLevels::are_levels` asks"),
            Self::Handled => ("steps in which salt is put in", "more than none, within `limits::SALT`"),
            Self::Instruments => ("instruments", "three at most, so leave out the readings of the others"),
        };
        write!(f, "{field}: must be {remedy}")
    }
}

impl Error for JobError {}

/// A set of faults, never empty where it stands for a result.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct JobErrors(u16);

/// The list of their names.
#[cfg(feature = "serde")]
impl serde::Serialize for JobErrors {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq(self.iter())
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for JobErrors {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let add = |all: Self, fault| (!all.contains(fault)).then(|| all.and(fault));
        crate::serialize::list(from, Self::default(), add)
    }
}

/// Each of them, parted by semicolons; see [`Job::faults`] for an example.
impl Display for JobErrors {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        if self.is_none() {
            return f.write_str("nothing is wrong");
        }
        for (place, error) in self.iter().enumerate() {
            write!(f, "{}{error}", if place == 0 { "" } else { "; " })?;
        }
        Ok(())
    }
}

impl Error for JobErrors {}

impl JobErrors {
    /// With one more.
    pub(crate) const fn and(self, fault: JobError) -> Self {
        Self(self.0 | 1 << fault as u16)
    }

    /// With those of `checks` that did not turn out well.
    fn and_those(self, checks: &[(JobError, bool)]) -> Self {
        checks.iter().filter(|(_, well)| !well).fold(self, |all, (fault, _)| all.and(*fault))
    }

    /// Is this one of them?
    #[must_use]
    pub const fn contains(self, fault: JobError) -> bool {
        self.0 & 1 << fault as u16 != 0
    }

    /// Each of them, the first ones first.
    pub fn iter(self) -> impl Iterator<Item = JobError> {
        JobError::ALL.into_iter().filter(move |fault| self.contains(*fault))
    }

    /// Is there none?
    #[must_use]
    pub const fn is_none(self) -> bool {
        self.0 == 0
    }
}

/// What is wrong with what was read and with what it is held against, whatever the bags and the pool.
pub(crate) fn salt_faults(
    band: &Band,
    levels: &RiskLevels,
    fill: Option<Salinity>,
    course: &Course,
) -> JobErrors {
    let Band { low, target, high, .. } = *band;
    let salt = |salt: Salinity| bounds::SALINITY.check(salt.mg_per_l()).is_ok();
    let mass = |mass: Mass| limits::SALT.check(mass.kilograms()).is_ok();
    let visits = || course.visits.iter().flatten();
    let read = |visit: &Visit| salt(visit.reading.salt) && visit.reading.again.is_none_or(salt);
    JobErrors::default().and_those(&[
        (JobError::Band, Salinity::NONE < low && low < target && target < high && salt(high)),
        (JobError::Reading, visits().all(read)),
        (JobError::Dose, mass(course.put_in) && visits().all(|v| mass(v.put_in) && mass(v.latest))),
        (JobError::Fill, fill.is_none_or(salt)),
        (JobError::Levels, levels.are_levels()),
    ])
}

impl Job {
    /// What is wrong with the job and its course. Nothing is worked out while anything is.
    ///
    /// ```
    /// use chem::*;
    /// use saltwright_plan::log::*;
    /// use saltwright_plan::salt::course::*;
    /// use saltwright_plan::salt::job::{JobError, Handled, Job};
    /// use saltwright_plan::*;
    /// # fn main() -> Result<(), OutOfRange> {
    /// let mut job = Job {
    ///     volume: Volume::from_cubic_metres(62.82)?,
    ///     method: Method::Taped,
    ///     doubt: None,
    ///     bag: Mass::from_kilograms(20.0)?,
    ///     purity: Purity::from_ratio(0.994)?,
    ///     in_hand: 0,
    ///     band: Band::of(None, None, None).unwrap(),
    ///     history: History::Fresh,
    ///     fill: None,
    ///     handled: Handled::Parts(policy::PART_OF_BAG),
    ///     levels: RiskLevels::default(),
    /// };
    /// let nothing_yet = course(None, &[None; MOST_ENTRIES]);
    /// assert!(job.faults(&nothing_yet).is_none());
    /// (job.band.low, job.bag) = (job.band.high, Mass::NONE);
    /// let faults = job.faults(&nothing_yet);
    /// assert_eq!(faults.iter().collect::<Vec<_>>(), [JobError::Bag, JobError::Band]);
    /// assert!(faults.to_string().starts_with("bag size: must be between"));
    /// # Ok(())
    /// # }
    /// ```
    #[must_use]
    pub fn faults(&self, course: &Course) -> JobErrors {
        let steps = match self.handled {
            Handled::Bags(steps) => [steps.fine, steps.coarse].map(Mass::kilograms),
            Handled::Parts(parts) => [parts.first, parts.later],
        };
        salt_faults(&self.band, &self.levels, self.fill, course).and_those(&[
            (JobError::Volume, bounds::POOL.check(self.volume.cubic_metres()).is_ok()),
            (JobError::Bag, limits::BAG_SIZE.check(self.bag.kilograms()).is_ok()),
            (JobError::Purity, limits::BAG_PURITY.check(self.purity.ratio()).is_ok()),
            (JobError::Doubt, self.doubt.is_none_or(|d| bounds::FRACTION.check(d.ratio()).is_ok())),
            (JobError::Handled, steps.iter().all(|step| (1e-6..=limits::SALT.high).contains(step))),
        ])
    }

    /// So much salt, in bags.
    #[must_use]
    pub fn in_bags(&self, mass: Mass) -> f64 {
        mass.kilograms() / self.bag.kilograms()
    }

    /// How far the volume may be off: as typed, else by its method.
    pub(crate) fn volume_error(&self) -> VolumeError {
        let usual = volume_error(self.method);
        VolumeError { rho: self.doubt.map_or(usual.rho, Fraction::ratio), ..usual }
    }

    /// What is known of the volume before any reading.
    pub(crate) fn prior(&self) -> VolumePrior {
        self.prior_with(self.volume_error())
    }

    /// The same with another doubt.
    pub(crate) fn prior_with(&self, error: VolumeError) -> VolumePrior {
        VolumePrior::new(
            self.volume.cubic_metres(),
            error,
            1000.0 * self.bag.kilograms() * self.purity.ratio(),
        )
    }

    /// Bags from one salinity to the target by the volume as stated: the sum without any doubt; none above.
    pub(crate) fn plain(&self, from: f64) -> f64 {
        let rise = libm::fmax(self.band.target.mg_per_l() - from, 0.0);
        rise * self.volume.cubic_metres() / (1000.0 * self.bag.kilograms() * self.purity.ratio())
    }

    /// Salt to go by while nothing was read, mg/L.
    pub(crate) fn unread(&self) -> Moments {
        unread_salt(self.history)
    }

    /// The smallest part of a bag that is handled, at the opening stage or later.
    pub(crate) fn part(&self, opening: bool) -> f64 {
        let parts = match self.handled {
            Handled::Bags(_) => policy::PART_OF_BAG,
            Handled::Parts(parts) => parts,
        };
        if opening { parts.first } else { parts.later }
    }

    /// The step by weight, in bags, where the whole job takes so many bags; nothing where bags are fine
    /// enough.
    pub(crate) fn weighed(&self, plain: f64) -> Option<f64> {
        let Handled::Bags(steps) = self.handled else { return None };
        let bag = self.bag.kilograms();
        let finely = plain * bag < policy::WEIGH_FINELY_BELOW;
        let step = if finely { steps.fine } else { steps.coarse }.kilograms();
        (plain < policy::WEIGH_BELOW_BAGS).then_some(step / bag)
    }
}
