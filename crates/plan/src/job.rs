//! What is asked of a job, and does it make sense?

use crate::band::Band;
use crate::choice::{History, Method};
use crate::course::{Course, Visit};
use crate::estimate::Prior;
use crate::limits;
use crate::policy::{self, Levels};
use crate::spread::{OfVolume, of_volume};
use chem::{Fraction, Mass, Purity, Salinity, Volume, bounds};

/// All that stays the same while salt goes in and readings are taken.
#[derive(Clone, Copy, Debug, PartialEq)]
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
    pub levels: Levels,
}

/// How finely salt is put in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Handled {
    /// By [`policy::PART_OF_BAG`]; by weight where the job takes under
    /// [`policy::WEIGH_BELOW_BAGS`], in these steps: under [`policy::WEIGH_FINELY_BELOW`] in all, and above.
    Bags([Mass; 2]),
    /// In these parts of a bag: at the first stage, later.
    Parts([f64; 2]),
}

/// What is wrong with a job. The page shows all of it; the first one has precedence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fault {
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

impl Fault {
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

/// A set of faults, never empty where it stands for a result.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Faults(u16);

impl Faults {
    /// With one more.
    pub(crate) const fn and(self, fault: Fault) -> Self {
        Self(self.0 | 1 << fault as u16)
    }

    /// Is this one of them?
    pub const fn contains(self, fault: Fault) -> bool {
        self.0 & 1 << fault as u16 != 0
    }

    /// Each of them, the first ones first.
    pub fn iter(self) -> impl Iterator<Item = Fault> {
        Fault::ALL.into_iter().filter(move |fault| self.contains(*fault))
    }

    /// Is there none?
    pub const fn is_none(self) -> bool {
        self.0 == 0
    }
}

impl Job {
    /// What is wrong with the job and its course. Nothing is worked out while anything is.
    ///
    /// ```
    /// use chem::*;
    /// use plan::course::*;
    /// use plan::job::{Fault, Handled, Job};
    /// use plan::*;
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
    ///     handled: Handled::Parts([1.0, 0.5]),
    ///     levels: policy::Levels::default(),
    /// };
    /// let nothing_yet = course(None, &[None; MOST_ENTRIES]);
    /// assert!(job.faults(&nothing_yet).is_none());
    /// (job.band.low, job.bag) = (job.band.high, Mass::NONE);
    /// assert_eq!(job.faults(&nothing_yet).iter().collect::<Vec<_>>(), [Fault::Bag, Fault::Band]);
    /// # Ok(())
    /// # }
    /// ```
    pub fn faults(&self, course: &Course) -> Faults {
        let Band { low, target, high, .. } = self.band;
        let salt = |salt: Salinity| bounds::SALINITY.check(salt.mg_per_l()).is_ok();
        let mass = |mass: Mass| limits::SALT.check(mass.kilograms()).is_ok();
        let steps = match self.handled {
            Handled::Bags(steps) => steps.map(Mass::kilograms),
            Handled::Parts(parts) => parts,
        };
        let read = |visit: &Visit| salt(visit.reading.salt) && visit.reading.again.is_none_or(salt);
        let visits = || course.visits.iter().flatten();
        let checks = [
            (Fault::Volume, bounds::POOL.check(self.volume.cubic_metres()).is_ok()),
            (Fault::Bag, limits::BAG_SIZE.check(self.bag.kilograms()).is_ok()),
            (Fault::Purity, bounds::PURITY.check(self.purity.ratio()).is_ok()),
            (Fault::Band, Salinity::NONE < low && low < target && target < high && salt(high)),
            (Fault::Reading, visits().all(read)),
            (Fault::Dose, mass(course.put_in) && visits().all(|v| mass(v.put_in) && mass(v.latest))),
            (Fault::Doubt, self.doubt.is_none_or(|d| bounds::FRACTION.check(d.ratio()).is_ok())),
            (Fault::Fill, self.fill.is_none_or(salt)),
            (Fault::Levels, self.levels.are_levels()),
            (Fault::Handled, steps.iter().all(|step| (1e-6..=limits::SALT.high).contains(step))),
        ];
        checks.iter().filter(|(_, well)| !well).fold(Faults::default(), |all, (fault, _)| all.and(*fault))
    }

    /// So much salt, in bags.
    pub fn in_bags(&self, mass: Mass) -> f64 {
        mass.kilograms() / self.bag.kilograms()
    }

    /// How far the volume may be off: as typed, else by its method.
    pub(crate) fn doubt(&self) -> OfVolume {
        let usual = of_volume(self.method);
        OfVolume { spread: self.doubt.map_or(usual.spread, Fraction::ratio), ..usual }
    }

    /// What is known of the volume before any reading.
    pub(crate) fn prior(&self) -> Prior {
        self.prior_with(self.doubt())
    }

    /// The same with another doubt.
    pub(crate) fn prior_with(&self, doubt: OfVolume) -> Prior {
        Prior::new(self.volume.cubic_metres(), doubt, 1000.0 * self.bag.kilograms() * self.purity.ratio())
    }

    /// Bags from one salinity to the target by the volume as stated: the sum without any doubt; none above.
    pub(crate) fn plain(&self, from: f64) -> f64 {
        let rise = libm::fmax(self.band.target.mg_per_l() - from, 0.0);
        rise * self.volume.cubic_metres() / (1000.0 * self.bag.kilograms() * self.purity.ratio())
    }

    /// Salt to go by while nothing was read: mean and spread, mg/L.
    pub(crate) fn unread(&self) -> (f64, f64) {
        match self.history {
            History::Fresh => policy::UNREAD_FRESH,
            History::Older => policy::UNREAD_OLDER,
            History::Salted => policy::UNREAD_SALTED,
            History::Unknown => policy::UNREAD_UNKNOWN,
        }
    }

    /// The smallest part of a bag that is handled, at the opening stage or later.
    pub(crate) fn part(&self, opening: bool) -> f64 {
        let parts = match self.handled {
            Handled::Bags(_) => policy::PART_OF_BAG,
            Handled::Parts(parts) => parts,
        };
        parts[if opening { 0 } else { 1 }]
    }

    /// The step by weight, in bags, where the whole job takes so many bags; nothing where bags are fine
    /// enough.
    pub(crate) fn weighed(&self, plain: f64) -> Option<f64> {
        let Handled::Bags(steps) = self.handled else { return None };
        let bag = self.bag.kilograms();
        let finely = plain * bag < policy::WEIGH_FINELY_BELOW;
        let step = steps[if finely { 0 } else { 1 }].kilograms();
        (plain < policy::WEIGH_BELOW_BAGS).then_some(step / bag)
    }
}
