//! What was answered, what was left out, and what is missing?

use crate::input::choices::*;

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

/// Why a result is not there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unknown {
    /// These answers are missing.
    Needs(Needs),
    /// The question does not arise.
    NotAsked,
    /// The chemistry has no answer, and says why.
    Chemistry(chem::Fault),
}

/// Somebody's ruling against a gate, in writing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Ruling {
    /// Who, and in which role, are both named.
    pub named: bool,
    /// The day it was given.
    pub day: Option<i64>,
}

impl Ruling {
    /// Does it count? Not without a name, a role and a day that has come.
    pub(crate) fn counts(self, today: Option<i64>) -> bool {
        self.named && self.day.zip(today).is_some_and(|(day, today)| day <= today)
    }
}

/// What was answered about the pool; each part may be missing.
#[derive(Clone, Copy, Debug, Default)]
pub struct Ready {
    /// The day the finish was laid.
    pub finish: Optional<i64>,
    /// The applicator's or maker's word on salt.
    pub word: Option<Word>,
    /// Is it said whose word?
    pub word_named: bool,
    /// Of which day?
    pub word_day: Option<i64>,
    /// What the water was treated with.
    pub treated: Option<Treated>,
    /// Papers of liner or shell, heater, cover, stone, rails.
    pub papers: [Option<Paper>; 5],
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
    /// Wiring.
    pub wired: Option<Wiring>,
    /// The salt in the bags.
    pub grade: Option<Grade>,
    /// Whose pool.
    pub kind: Option<Kind>,
    /// Has a public pool its qualified operator?
    pub operator: Option<YesNo>,
    /// Where.
    pub place: Option<Place>,
    /// Grains on the floor.
    pub grains: Option<Grains>,
    /// Rain, refill, backwash or chemicals since the last reading?
    pub moved: Option<YesNo>,
    /// Combined chlorine, mg/L.
    pub combined: Optional<f64>,
    /// Copper, mg/L.
    pub copper: Optional<f64>,
    /// Iron, mg/L.
    pub iron: Optional<f64>,
    /// Rulings against the age of the finish, its clearance, the papers, the code.
    pub rulings: [Ruling; 4],
}

/// The subjects that somebody may rule on, in the order of [`Ready::rulings`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ruled {
    /// The age of the finish.
    Age,
    /// Its clearance.
    Clearance,
    /// Other makers' papers.
    Papers,
    /// The local code.
    Code,
}

/// What was typed of the generator and its pump.
#[derive(Clone, Copy, Debug, Default)]
pub struct Run {
    /// Chlorine the pool uses up, mg/L a day.
    pub demand: Optional<f64>,
    /// Chlorine the generator makes at full output, g/h.
    pub makes: Optional<f64>,
    /// Hours the pump runs a day.
    pub hours: Optional<f64>,
}

impl Run {
    /// Was any of it typed?
    pub fn is_begun(&self) -> bool {
        [self.demand, self.makes, self.hours].iter().any(|x| *x != Optional::LeftOut)
    }
}

/// What was typed of a season.
#[derive(Clone, Copy, Debug, Default)]
pub struct Season {
    /// Water lost as the pool has it, but for backwash: splash, leaks, m³.
    pub lost: Optional<f64>,
    /// Water that one backwash takes, m³.
    pub backwash: Optional<f64>,
    /// How many of them.
    pub times: Optional<f64>,
    /// Rain that overflows, m of water over the pool.
    pub rain: Optional<f64>,
}

impl Season {
    /// Was any of it typed?
    pub fn is_begun(&self) -> bool {
        [self.lost, self.backwash, self.times, self.rain].iter().any(|x| *x != Optional::LeftOut)
    }

    /// Water lost as the pool has it, m³; `None` while a part is garbled, or a backwash has no number, or the
    /// other way round.
    pub(crate) fn water(&self) -> Option<f64> {
        let backwash = match (self.backwash, self.times) {
            (Optional::LeftOut, Optional::LeftOut) => 0.0,
            (each, times) => each.given()? * times.given()?,
        };
        Some(self.lost.or(0.0)? + backwash)
    }
}

/// What was typed of replacing water.
#[derive(Clone, Copy, Debug, Default)]
pub struct Flow {
    /// Water let out, m³/h.
    pub out: Optional<f64>,
    /// Water let in, m³/h.
    pub in_: Optional<f64>,
    /// Price of a cubic metre, in and out together.
    pub price: Optional<f64>,
}
