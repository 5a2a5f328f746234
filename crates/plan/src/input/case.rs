//! What is known about the pool? Each part may be missing.

use crate::input::answers::*;
use crate::input::choices::*;
use crate::input::log::{Entry, Log, LogEvent};
use chem::treatment::{AcidStrength, BleachStrength};
use chem::*;
use core::error::Error;
use core::fmt::{self, Display, Formatter};

/// What was tested, of the pool or of the fill water.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Tests {
    /// Temperature.
    pub temperature: Option<Temperature>,
    /// pH.
    pub ph: Option<Ph>,
    /// Total alkalinity.
    pub alkalinity: Option<Alkalinity>,
    /// Calcium hardness.
    pub hardness: Option<Hardness>,
    /// Cyanuric acid.
    pub cyanuric_acid: Option<CyanuricAcid>,
    /// Free chlorine.
    pub chlorine: Typed<Chlorine>,
}

impl Tests {
    /// The sample with the sodium chloride behind a salt reading, once its five tests are there. Chlorine is
    /// left out: under cyanuric acid it hardly counts, and by its end it has left alkalinity where it was.
    #[must_use]
    pub fn behind(&self, reading: Salinity, instrument: Instrument) -> Option<Sample> {
        let (ta, ch) = (self.alkalinity?, self.hardness?);
        // Where the other tests account for more than was read, there is none: `balance` says that they contradict it.
        let salt =
            salt::sodium_chloride_behind(reading, instrument.salt_test(), ta, ch).unwrap_or(Salinity::NONE);
        Some(Sample {
            temperature: self.temperature?,
            ph: self.ph?,
            alkalinity: ta,
            hardness: ch,
            cyanuric_acid: self.cyanuric_acid?,
            salt,
            boron: Boron::NONE,
            magnesium: Magnesium::NONE,
            sulfate: Sulfate::NONE,
        })
    }
}

/// The pool's tests, and the salt reading that goes with them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TestedWater {
    /// The tests.
    pub tests: Tests,
    /// Salt reading, if there is one that was read.
    pub reading: Option<Salinity>,
    /// What it was read with.
    pub instrument: Option<Instrument>,
}

impl TestedWater {
    /// The sample, once all of it is there.
    #[must_use]
    pub fn sample(&self) -> Option<Sample> {
        self.tests.behind(self.reading?, self.instrument?)
    }
}

/// The generator's target and limits.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(try_from = "Unordered"))]
pub struct Band {
    /// Lowest salt it works with.
    pub low: Salinity,
    /// Salt to aim at.
    pub target: Salinity,
    /// Highest salt it works with.
    pub high: Salinity,
    /// The target is our example, not the manual's.
    pub example: bool,
    /// A limit is ours, not the manual's.
    pub limits_ours: bool,
}

/// A band that contradicts itself: which limit is at fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum BandError {
    /// The low limit must be below the target.
    LowNotBelow,
    /// The high limit must be above the target.
    HighNotAbove,
}

impl Display for BandError {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        f.write_str(match self {
            Self::LowNotBelow => "low limit: must be below the target",
            Self::HighNotAbove => "high limit: must be above the target",
        })
    }
}

impl Error for BandError {}

/// A band as a file has it.
#[cfg(feature = "serde")]
#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct Unordered {
    low: Salinity,
    target: Salinity,
    high: Salinity,
    example: bool,
    limits_ours: bool,
}

#[cfg(feature = "serde")]
impl TryFrom<Unordered> for Band {
    type Error = BandError;

    fn try_from(band: Unordered) -> Result<Self, BandError> {
        let Unordered { low, target, high, example, limits_ours } = band;
        Self { low, target, high, example, limits_ours }.ordered()
    }
}

impl Band {
    /// The band, unless it contradicts itself.
    pub(crate) fn ordered(self) -> Result<Self, BandError> {
        if self.low >= self.target {
            Err(BandError::LowNotBelow)
        } else if self.high <= self.target {
            Err(BandError::HighNotAbove)
        } else {
            Ok(self)
        }
    }
}

/// Which risks are taken. An author of a page may set each; all of them are our choice.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct RiskLevels {
    /// Risk of passing the high limit that a dose may bring.
    pub over: f64,
    /// Risk of staying below the low limit that is left standing.
    pub low: f64,
    /// Part of the plain sum that goes in before the first retest; 1 means no such limit.
    pub cap: f64,
    /// How likely the bags bought are to suffice.
    pub enough: f64,
    /// Bags are bought to come this near the target, mg/L.
    pub slack: f64,
    /// Risk of still standing above the high limit that is left after all the replacing.
    pub drained: f64,
}

/// The bags on the shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Bag {
    /// Mass of one.
    pub size: Option<Mass>,
    /// Sodium chloride in it.
    pub purity: Option<Purity>,
    /// Whole bags the person already has; left out means none.
    pub in_hand: Typed<u32>,
    /// Price of one, in whichever money.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "bag_price"))]
    pub price: Option<f64>,
    /// Steps in which the person weighs.
    pub weighed_in: WeighedIn,
}

/// Steps in which salt is weighed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(deny_unknown_fields))]
pub struct WeighedIn {
    /// Under 5 kg in all.
    pub fine: Mass,
    /// Above.
    pub coarse: Mass,
}

/// Nothing known of the bags; weighed in 50 g and half kilograms.
impl Default for Bag {
    fn default() -> Self {
        let step = |kg| Mass::from_kilograms(kg).unwrap_or(Mass::NONE);
        Self {
            size: None,
            purity: None,
            in_hand: Typed::Missing,
            price: None,
            weighed_in: WeighedIn { fine: step(0.05), coarse: step(0.5) },
        }
    }
}

/// Where the water is to go; what is left out stays as it comes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
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
    pub invalid: bool,
    /// A goal for hardness or cyanuric acid, or the test it is held against, can't be used: nobody knows whether water
    /// goes first.
    pub water_unknown: bool,
}

impl Goals {
    /// Is there any?
    #[must_use]
    pub fn are_any(&self) -> bool {
        self.ph.is_some()
            || self.alkalinity.is_some()
            || self.hardness.is_some()
            || self.cyanuric_acid.is_some()
            || self.chlorine.is_some()
    }
}

/// The acid on the shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Acid {
    /// Hydrochloric, poured.
    Hydrochloric(AcidStrength),
    /// Bisulfate, weighed.
    Bisulfate(Purity),
}

/// What stands on the shelf, by its label.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
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
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Case {
    /// Amount of water.
    pub volume: Option<Volume>,
    /// How it was found.
    pub method: Option<Method>,
    /// How far it is typically off, in place of what the method says.
    pub doubt: Typed<Fraction>,
    /// What the water touches.
    pub surface: Option<Surface>,
    /// Salt reading.
    pub reading: Typed<Salinity>,
    /// What was read when it was read again at once.
    pub again: Typed<Salinity>,
    /// What it was read with.
    pub instrument: Option<Instrument>,
    /// When, in minutes; needed only where salt went in before it.
    pub read_at: Typed<i64>,
    /// The moment it is, in minutes of elapsed time, as far as whoever asks has a clock.
    pub now: Option<i64>,
    /// The day it is, in days of the calendar.
    pub today: Option<i64>,
    /// When the first bag is planned for, in minutes.
    pub start: Typed<i64>,
    /// When the generator was switched on, in minutes.
    pub on: Typed<i64>,
    /// What was put in and read besides.
    #[cfg_attr(feature = "serde", serde(with = "crate::input::log"))]
    pub log: Typed<Log>,
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
    /// The most the owner will drain at one go; left out means that they set no limit of their own. Invalid, too, where
    /// the surface or the ground can't be used: then nobody knows how much they allow.
    pub cap: Typed<Fraction>,
    /// Is the ground water known to stand low?
    pub ground: Option<Ground>,
    /// A choice was typed that is none of its list: nothing goes ahead on it.
    pub unlisted: bool,
    /// What bags are counted by can't be used: the size of the pool, or of a bag, or what is in it.
    pub uncounted: bool,
    /// A test, a goal, a label or the moment it is was typed and can't be used: what it would have stood against, or
    /// taken, is not known.
    pub untested: bool,
    /// Which risks are taken.
    pub levels: Typed<RiskLevels>,
    /// What stands on the shelf for the other tests; `None` while one of its labels is invalid.
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
    pub depth: Typed<Length>,
}

impl Case {
    /// The pool's tests and the reading that they go with.
    #[must_use]
    pub fn tested(&self) -> TestedWater {
        TestedWater { tests: self.water, reading: self.read(), instrument: self.instrument }
    }

    /// The pool's sample, once all of it is there.
    #[must_use]
    pub fn sample(&self) -> Option<Sample> {
        self.tested().sample()
    }

    /// Is something that the decision on the salt goes by at fault? Then nobody knows whether water goes first.
    #[must_use]
    pub fn is_invalid(&self) -> bool {
        self.band.is_none()
            || self.reading.is_invalid()
            || self.again.is_invalid()
            || self.read_at.is_invalid()
            || self.log.is_invalid()
            || self.doubt.is_invalid()
            || self.levels.is_invalid()
    }

    /// When the last salt went in, in minutes: by the log alone, also where no reading can be used. Missing where
    /// none went in.
    ///
    /// ```
    /// use saltwright_plan::{Case, Typed};
    /// let case = Case { log: Typed::Invalid, ..Case::default() };
    /// assert_eq!(case.last_dose(), Typed::Invalid); // not that none went in
    /// ```
    #[must_use]
    pub fn last_dose(&self) -> Typed<i64> {
        let dosed = |entry: &&Entry| matches!(entry.what, LogEvent::Dose(mass) if mass != Mass::NONE);
        match self.log.map(|log| log.iter().flatten().filter(dosed).map(|entry| entry.when).max()) {
            Typed::Valid(last) => last.map_or(Typed::Missing, Typed::Valid),
            Typed::Missing => Typed::Missing,
            Typed::Invalid => Typed::Invalid,
        }
    }

    /// The reading, if there is one that was read: an assumed figure is none.
    ///
    /// ```
    /// use chem::Salinity;
    /// use saltwright_plan::{Case, Instrument, Typed};
    /// let reading = Typed::Valid(Salinity::NONE);
    /// let case = Case { reading, instrument: Some(Instrument::Assumed), ..Case::default() };
    /// assert_eq!(case.read(), None);
    /// ```
    #[must_use]
    pub fn read(&self) -> Option<Salinity> {
        taken(self.reading, self.instrument)
    }
}

/// A reading, if it was read: an assumed figure is none.
pub(crate) fn taken(reading: Typed<Salinity>, instrument: Option<Instrument>) -> Option<Salinity> {
    reading.valid().filter(|_| instrument != Some(Instrument::Assumed))
}
