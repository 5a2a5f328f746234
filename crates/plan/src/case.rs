//! What is known about the pool? Each part may be missing.

use crate::band::Band;
use crate::choice::*;
use crate::course::{Entry, Log, What};
use crate::policy::Levels;
use crate::ready::Ready;
use crate::running::{Flow, Run, Season};
use chem::treatment::{AcidStrength, BleachStrength};
use chem::*;

/// A set of missing answers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Needs(u32);

impl Needs {
    /// Nothing is missing.
    pub const NONE: Self = Self(0);

    /// The inputs of `all` that are not there.
    ///
    /// ```
    /// use plan::{Input, Needs};
    /// let needs = Needs::of(&[(Input::Volume, true), (Input::Reading, false)]);
    /// assert!(needs.contains(Input::Reading) && !needs.contains(Input::Volume) && !needs.is_none());
    /// ```
    pub fn of(all: &[(Input, bool)]) -> Self {
        Self(all.iter().filter(|(_, there)| !there).fold(0, |set, (i, _)| set | 1 << *i as u32))
    }

    /// Is `input` missing?
    pub const fn contains(self, input: Input) -> bool {
        self.0 & 1 << input as u32 != 0
    }

    /// Missing from either.
    pub const fn and(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// Is nothing missing?
    pub const fn is_none(self) -> bool {
        self.0 == 0
    }
}

/// What was tested, of the pool or of the fill water.
#[derive(Clone, Copy, Debug, Default)]
pub struct Tests {
    /// Temperature.
    pub heat: Option<Temperature>,
    /// pH.
    pub ph: Option<Ph>,
    /// Total alkalinity.
    pub alkalinity: Option<Alkalinity>,
    /// Calcium hardness.
    pub hardness: Option<Hardness>,
    /// Cyanuric acid.
    pub cyanuric_acid: Option<CyanuricAcid>,
    /// Free chlorine.
    pub chlorine: Optional<Chlorine>,
}

impl Tests {
    /// The sample with the sodium chloride behind a salt reading, once its five tests are there. Chlorine is
    /// left out: under cyanuric acid it hardly counts, and by its end it has left alkalinity where it was.
    pub fn behind(&self, reading: Salinity, instrument: Instrument) -> Option<Sample> {
        let (ta, ch) = (self.alkalinity?, self.hardness?);
        let salt = salt::sodium_chloride_behind(reading, instrument.responds(), ta, ch);
        Some(Sample {
            temperature: self.heat?,
            ph: self.ph?,
            alkalinity: ta,
            hardness: ch,
            cyanuric_acid: self.cyanuric_acid?,
            salt,
            ..Sample::PURE
        })
    }
}

/// An answer that may be left out, but not garbled: then what depends on it is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Optional<T> {
    /// Left out; the field says what that means.
    #[default]
    LeftOut,
    /// Typed, but unusable.
    Garbled,
    /// Given.
    Given(T),
}

impl<T> Optional<T> {
    /// The answer, if it is given.
    pub fn given(self) -> Option<T> {
        if let Self::Given(x) = self { Some(x) } else { None }
    }

    /// Is it unusable?
    pub const fn is_garbled(&self) -> bool {
        matches!(self, Self::Garbled)
    }

    /// The same of what is made of it.
    pub fn map<U>(self, of: impl Fn(T) -> U) -> Optional<U> {
        match self {
            Self::LeftOut => Optional::LeftOut,
            Self::Garbled => Optional::Garbled,
            Self::Given(x) => Optional::Given(of(x)),
        }
    }

    /// The answer, `otherwise` where it was left out, nothing where it is garbled.
    pub fn or(self, otherwise: T) -> Option<T> {
        match self {
            Self::LeftOut => Some(otherwise),
            Self::Garbled => None,
            Self::Given(x) => Some(x),
        }
    }
}

/// The bags on the shelf.
#[derive(Clone, Copy, Debug)]
pub struct Bag {
    /// Mass of one.
    pub size: Option<Mass>,
    /// Sodium chloride in it.
    pub purity: Option<Purity>,
    /// Whole bags the person already has; left out means none.
    pub in_hand: Optional<u32>,
    /// Price of one, in whichever money.
    pub price: Option<f64>,
    /// Steps in which the person weighs: under 5 kg in all, and above.
    pub weighed_in: [Mass; 2],
}

/// Nothing known of the bags; weighed in 50 g and half kilograms.
impl Default for Bag {
    fn default() -> Self {
        let step = |kg| Mass::from_kilograms(kg).unwrap_or(Mass::NONE);
        Self {
            size: None,
            purity: None,
            in_hand: Optional::LeftOut,
            price: None,
            weighed_in: [step(0.05), step(0.5)],
        }
    }
}

/// Where the water is to go; what is left out stays as it comes.
#[derive(Clone, Copy, Debug, Default)]
pub struct Goals {
    /// pH.
    pub ph: Option<Ph>,
    /// Total alkalinity.
    pub alkalinity: Option<Alkalinity>,
    /// Calcium hardness.
    pub hardness: Option<Hardness>,
    /// Cyanuric acid.
    pub cyanuric_acid: Option<CyanuricAcid>,
    /// Free chlorine.
    pub chlorine: Option<Chlorine>,
    /// One of them can't be used: no step leads to the others without it.
    pub garbled: bool,
    /// Nor can one that may call for other water, or its test: nobody knows whether water goes first.
    pub water_unknown: bool,
}

impl Goals {
    /// Is there any?
    pub fn are_any(&self) -> bool {
        self.ph.is_some()
            || self.alkalinity.is_some()
            || self.hardness.is_some()
            || self.cyanuric_acid.is_some()
            || self.chlorine.is_some()
    }
}

/// The acid on the shelf.
#[derive(Clone, Copy, Debug)]
pub enum Acid {
    /// Hydrochloric, poured.
    Hydrochloric(AcidStrength),
    /// Bisulfate, weighed.
    Bisulfate(Purity),
}

/// What stands on the shelf, by its label.
#[derive(Clone, Copy, Debug)]
pub struct Products {
    /// Acid.
    pub acid: Acid,
    /// Liquid chlorine.
    pub bleach: BleachStrength,
    /// Calcium chloride, reckoned without water.
    pub calcium: Purity,
    /// The other powders: bicarbonate, soda ash, cyanuric acid.
    pub powder: Purity,
}

/// Everything known.
#[derive(Clone, Copy, Debug, Default)]
pub struct Case {
    /// Amount of water.
    pub volume: Option<Volume>,
    /// How it was found.
    pub method: Option<Method>,
    /// How far it is typically off, in place of what the method says.
    pub doubt: Optional<Fraction>,
    /// What the water touches.
    pub surface: Option<Surface>,
    /// Salt reading.
    pub reading: Optional<Salinity>,
    /// What was read when it was read again at once.
    pub again: Optional<Salinity>,
    /// What it was read with.
    pub instrument: Option<Instrument>,
    /// When, in minutes; needed only where salt went in before it.
    pub read_at: Optional<i64>,
    /// The moment it is, in minutes of elapsed time, as far as whoever asks has a clock.
    pub now: Option<i64>,
    /// The day it is, in days of the calendar.
    pub today: Option<i64>,
    /// When the first bag is planned for, in minutes.
    pub start: Optional<i64>,
    /// When the generator was switched on, in minutes.
    pub on: Optional<i64>,
    /// What was put in and read besides.
    pub log: Optional<Log>,
    /// The water's history.
    pub history: Option<History>,
    /// The generator's band; `None` while what was typed contradicts itself.
    pub band: Option<Band>,
    /// The bags.
    pub bag: Bag,
    /// The pool's other tests.
    pub water: Tests,
    /// The fill water's tests.
    pub fill: Tests,
    /// The fill water's salt.
    pub fill_salt: Option<Salinity>,
    /// The most the owner will drain at one go; left out means that they set no limit of their own.
    pub cap: Optional<Fraction>,
    /// Is the ground water known to stand low?
    pub ground: Option<Ground>,
    /// A choice was typed that is none of its list: nothing goes ahead on it.
    pub unlisted: bool,
    /// What bags are counted by can't be used: the size of the pool, or of a bag, or what is in it.
    pub uncounted: bool,
    /// Which risks are taken.
    pub levels: Optional<Levels>,
    /// What stands on the shelf for the other tests; `None` while one of its labels is garbled.
    pub products: Option<Products>,
    /// Where the other tests are to go.
    pub goals: Goals,
    /// What was asked about the pool besides figures.
    pub ready: Ready,
    /// The generator and its pump.
    pub run: Run,
    /// A season.
    pub season: Season,
    /// How fast water is let out and in, and its price.
    pub flow: Flow,
    /// Mean depth, by the tape.
    pub depth: Optional<Length>,
}

impl Case {
    /// The pool's sample, once all of it is there.
    pub fn sample(&self) -> Option<Sample> {
        self.water.behind(self.read()?, self.instrument?)
    }

    /// Is something that the decision on the salt goes by at fault? Then nobody knows whether water goes first.
    pub fn is_garbled(&self) -> bool {
        self.band.is_none()
            || self.reading.is_garbled()
            || self.again.is_garbled()
            || self.read_at.is_garbled()
            || self.log.is_garbled()
            || self.doubt.is_garbled()
            || self.levels.is_garbled()
    }

    /// When the last salt went in, in minutes: by the log alone, also where no reading can be used. Left out where
    /// none went in.
    ///
    /// ```
    /// use plan::{Case, Optional};
    /// let case = Case { log: Optional::Garbled, ..Case::default() };
    /// assert_eq!(case.last_dose(), Optional::Garbled); // not that none went in
    /// ```
    pub fn last_dose(&self) -> Optional<i64> {
        let dosed = |entry: &&Entry| matches!(entry.what, What::Dose(mass) if mass != Mass::NONE);
        match self.log.map(|log| log.iter().flatten().filter(dosed).map(|entry| entry.when).max()) {
            Optional::Given(last) => last.map_or(Optional::LeftOut, Optional::Given),
            Optional::LeftOut => Optional::LeftOut,
            Optional::Garbled => Optional::Garbled,
        }
    }

    /// Is the reading so low that a slip of its unit is likelier?
    pub fn reading_is_rare(&self) -> bool {
        self.read().is_some_and(|r| r > Salinity::NONE && r.mg_per_l() < crate::policy::LEAST_READING)
    }

    /// The reading, if there is one that was read: an assumed figure is none.
    ///
    /// ```
    /// use chem::Salinity;
    /// use plan::{Case, Instrument, Optional};
    /// let reading = Optional::Given(Salinity::NONE);
    /// let case = Case { reading, instrument: Some(Instrument::Assumed), ..Case::default() };
    /// assert_eq!(case.read(), None);
    /// ```
    pub fn read(&self) -> Option<Salinity> {
        match self.reading {
            Optional::Given(reading) if self.instrument != Some(Instrument::Assumed) => Some(reading),
            _ => None,
        }
    }
}
