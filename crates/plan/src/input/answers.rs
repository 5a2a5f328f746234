//! What was answered, what was left out, and what is missing?

use crate::input::choices::*;
#[cfg(feature = "serde")]
use crate::input::limits;
use core::error::Error;
use core::fmt::{self, Display, Formatter};

/// An answer that may be left out, but not invalid: then what depends on it is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Typed<T> {
    /// Left out; the field says what that means.
    #[default]
    Missing,
    /// Typed, but unusable.
    Invalid,
    /// Given.
    Valid(T),
}

impl<T> Typed<T> {
    /// The answer, if it is given.
    #[must_use]
    pub fn valid(self) -> Option<T> {
        if let Self::Valid(x) = self { Some(x) } else { None }
    }

    /// Is it unusable?
    #[must_use]
    pub const fn is_invalid(&self) -> bool {
        matches!(self, Self::Invalid)
    }

    /// The same of what is made of it.
    #[must_use]
    pub fn map<U>(self, of: impl Fn(T) -> U) -> Typed<U> {
        match self {
            Self::Missing => Typed::Missing,
            Self::Invalid => Typed::Invalid,
            Self::Valid(x) => Typed::Valid(of(x)),
        }
    }

    /// The answer, `otherwise` where it was left out, nothing where it is invalid.
    #[must_use]
    pub fn or(self, otherwise: T) -> Option<T> {
        match self {
            Self::Missing => Some(otherwise),
            Self::Invalid => None,
            Self::Valid(x) => Some(x),
        }
    }
}

/// A set of missing answers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Needs(u32);

/// The list of their codes.
#[cfg(feature = "serde")]
impl serde::Serialize for Needs {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq(Input::ALL.iter().filter(|input| self.contains(**input)))
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Needs {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        crate::serialize::list(from, Self::NONE, |all, input| {
            (!all.contains(input)).then(|| all.and(Self::of(&[(input, false)])))
        })
    }
}

/// The names of the fields.
impl Display for Needs {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        let missing = Input::ALL.iter().filter(|input| self.contains(**input));
        for (place, input) in missing.enumerate() {
            write!(f, "{}{}", if place == 0 { "" } else { ", " }, input.code())?;
        }
        Ok(())
    }
}

impl Needs {
    /// Nothing is missing.
    pub const NONE: Self = Self(0);

    /// The inputs of `all` that are not there.
    ///
    /// ```
    /// use saltwright_plan::{Input, Needs};
    /// let needs = Needs::of(&[(Input::Volume, true), (Input::Reading, false)]);
    /// assert!(needs.contains(Input::Reading) && !needs.contains(Input::Volume) && !needs.is_none());
    /// ```
    #[must_use]
    pub fn of(all: &[(Input, bool)]) -> Self {
        Self(all.iter().filter(|(_, there)| !there).fold(0, |set, (i, _)| set | 1 << *i as u32))
    }

    /// Is `input` missing?
    #[must_use]
    pub const fn contains(self, input: Input) -> bool {
        self.0 & 1 << input as u32 != 0
    }

    /// Missing from either.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// Is nothing missing?
    #[must_use]
    pub const fn is_none(self) -> bool {
        self.0 == 0
    }
}

/// Figures of a file, each within its row.
#[cfg(feature = "serde")]
macro_rules! within {
    ($($name:ident: $row:ident),*) => {$(
        fn $name<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Typed<f64>, D::Error> {
            let typed = <Typed<f64> as serde::Deserialize>::deserialize(from)?;
            match typed.valid().map(|x| limits::$row.check(x)) {
                Some(Err(out)) => Err(serde::de::Error::custom(out)),
                _ => Ok(typed),
            }
        }
    )*};
}

#[cfg(feature = "serde")]
within! {
    trace: TRACE, demand: DEMAND, output: OUTPUT, hours: HOURS, lost: LOST, times: TIMES, rain: RAIN, flow: FLOW,
    price: PRICE
}

#[cfg(feature = "serde")]
pub(crate) fn bag_price<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Option<f64>, D::Error> {
    <Option<f64> as serde::Deserialize>::deserialize(from).and_then(|price| {
        price.map(|price| limits::PRICE.check(price).map_err(serde::de::Error::custom)).transpose()
    })
}

/// Why a result is not there.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Unknown {
    /// These answers are missing.
    Needs(Needs),
    /// The question does not arise.
    NotAsked,
    /// The chemistry has no answer, and says why.
    Chemistry(chem::WaterError),
}

impl Display for Unknown {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        match self {
            Self::Needs(needs) if needs.is_none() => f.write_str("an answer that this goes by is at fault"),
            Self::Needs(needs) => write!(f, "missing: {needs}"),
            Self::NotAsked => f.write_str("not asked for"),
            Self::Chemistry(why) => write!(f, "{why}"),
        }
    }
}

impl Error for Unknown {}

/// Somebody's ruling against a gate, in writing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Ruling {
    /// Who, and in which role, are both named.
    pub named: bool,
    /// The day it was given.
    pub day: Typed<i64>,
}

/// What was answered about the pool; each part may be missing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Ready {
    /// The day the finish was laid.
    pub finish: Typed<i64>,
    /// The applicator's or maker's word on salt.
    pub word: Option<Approval>,
    /// Is it said whose word?
    pub word_named: bool,
    /// Of which day?
    pub word_day: Option<i64>,
    /// What the water was treated with.
    pub treated: Option<Sanitizer>,
    /// What other makers' papers say.
    pub papers: Warranties,
    /// Filled to its working level?
    pub full: Option<YesNo>,
    /// Pump and filter.
    pub running: Option<Running>,
    /// Clarity.
    pub clear: Option<Clarity>,
    /// Algae.
    pub algae: Option<Algae>,
    /// Do people swim in it now?
    pub swum: Option<YesNo>,
    /// Weather.
    pub weather: Option<Weather>,
    /// Electrical.
    pub wired: Option<Electrical>,
    /// The salt in the bags.
    pub grade: Option<BagSalt>,
    /// Whose pool.
    pub kind: Option<PoolUse>,
    /// Has a public pool its qualified operator?
    pub operator: Option<YesNo>,
    /// Where.
    pub place: Option<Location>,
    /// Undissolved on the floor.
    pub grains: Option<Undissolved>,
    /// Rain, refill, backwash or chemicals since the last reading?
    pub moved: Option<YesNo>,
    /// Combined chlorine, mg/L.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "trace"))]
    pub combined: Typed<f64>,
    /// Copper, mg/L.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "trace"))]
    pub copper: Typed<f64>,
    /// Iron, mg/L.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "trace"))]
    pub iron: Typed<f64>,
    /// What was ruled.
    pub rulings: Rulings,
}

/// What the makers' papers say of salt, one maker each.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Warranties {
    /// Of the liner or shell.
    pub liner: Option<Warranty>,
    /// Of the heater.
    pub heater: Option<Warranty>,
    /// Of the cover.
    pub cover: Option<Warranty>,
    /// Of the stone.
    pub stone: Option<Warranty>,
    /// Of the rails.
    pub rails: Option<Warranty>,
}

impl Warranties {
    /// All of them.
    #[must_use]
    pub const fn all(&self) -> [Option<Warranty>; 5] {
        [self.liner, self.heater, self.cover, self.stone, self.rails]
    }
}

/// Rulings on the subjects that somebody may rule on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Rulings {
    /// On the age of the finish.
    pub finish_age: Ruling,
    /// On its clearance.
    pub clearance: Ruling,
    /// On other makers' papers.
    pub papers: Ruling,
    /// On the local code.
    pub code: Ruling,
}

/// What was typed of the generator and its pump.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Run {
    /// Chlorine the pool uses up, mg/L a day.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "demand"))]
    pub demand: Typed<f64>,
    /// Chlorine the generator makes at full output, g/h.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "output"))]
    pub makes: Typed<f64>,
    /// Hours the pump runs a day.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "hours"))]
    pub hours: Typed<f64>,
}

impl Run {
    /// Was any of it typed?
    #[must_use]
    pub fn is_begun(&self) -> bool {
        [self.demand, self.makes, self.hours].iter().any(|x| *x != Typed::Missing)
    }
}

/// What was typed of a season.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Season {
    /// Water lost as the pool has it, but for backwash: splash, leaks, m³.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "lost"))]
    pub lost: Typed<f64>,
    /// Water that one backwash takes, m³.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "lost"))]
    pub backwash: Typed<f64>,
    /// How many of them.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "times"))]
    pub times: Typed<f64>,
    /// Rain that overflows, m of water over the pool.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "rain"))]
    pub rain: Typed<f64>,
}

impl Season {
    /// Was any of it typed?
    #[must_use]
    pub fn is_begun(&self) -> bool {
        [self.lost, self.backwash, self.times, self.rain].iter().any(|x| *x != Typed::Missing)
    }

    /// Water lost as the pool has it, m³; `None` while a part is invalid, or a backwash has no number, or the
    /// other way round.
    pub(crate) fn water(&self) -> Option<f64> {
        let backwash = match (self.backwash, self.times) {
            (Typed::Missing, Typed::Missing) => 0.0,
            (each, times) => each.valid()? * times.valid()?,
        };
        Some(self.lost.or(0.0)? + backwash)
    }
}

/// What was typed of replacing water.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(default, deny_unknown_fields))]
pub struct Flow {
    /// Water let out, m³/h.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "flow"))]
    pub out: Typed<f64>,
    /// Water let in, m³/h.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "flow"))]
    pub in_: Typed<f64>,
    /// Price of a cubic metre, in and out together.
    #[cfg_attr(feature = "serde", serde(deserialize_with = "price"))]
    pub price: Typed<f64>,
}
