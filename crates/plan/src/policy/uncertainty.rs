//! How far may each figure be off?
//!
//! Every figure here is our choice: a judgement, not a measurement. They stand together so that they
//! can be argued with together.

use crate::input::choices::{Instrument, Method};

/// How far a volume may be off: it is `shift` times the one stated, give or take `spread` of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OfVolume {
    /// Below 1, because people over-estimate.
    pub shift: f64,
    /// One standard deviation, part of the volume.
    pub spread: f64,
}

/// By how the volume was found. Our choice.
///
/// ```
/// use plan::{Method, policy::of_volume};
/// assert!(of_volume(Method::Remembered).spread > of_volume(Method::Taped).spread);
/// ```
pub const fn of_volume(method: Method) -> OfVolume {
    let (shift, spread) = match method {
        Method::Metered => (1.00, 0.015),
        Method::Drawing => (0.99, 0.04),
        Method::Taped => (0.98, 0.05),
        Method::Offsets => (0.98, 0.07),
        Method::Rule => (0.97, 0.10),
        Method::Remembered => (0.95, 0.17),
    };
    OfVolume { shift, spread }
}

/// Blunders happen to careful people too (a wrong gallon, a hopper not seen): how often. Our choice.
pub const BLUNDERS: f64 = 0.05;

/// The spread of a blunder's logarithm, by that of the volume's. Our choice.
pub fn of_blunder(spread: f64) -> f64 {
    libm::fmax(3.0 * spread, 0.15)
}

/// Spread of the purity printed on the bag, part of it. Our choice.
pub const OF_PURITY: f64 = 0.006;

/// Spread of the salt's change between two visits by rain, splash and evaporation, part of it. Our choice.
pub const OF_WATER: f64 = 0.006;

/// How far a reading may be off: `y = (1 + g)(C - u) + o + e`, rounded to a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OfReading {
    /// Spread of `g`, one and the same for all readings of the instrument.
    pub gain: f64,
    /// Spread of `o`, mg/L, one and the same for all readings of the instrument.
    pub offset: f64,
    /// Spread of `e`, new each time, mg/L.
    pub each: f64,
    /// The same, as a part of the salt.
    pub part: f64,
    /// The step it reads in, mg/L.
    pub step: f64,
}

impl OfReading {
    /// Variance of `e` at some salt, the rounding included: `each² + (part · salt)² + step²/12`.
    ///
    /// ```
    /// use plan::{Instrument, policy::of_reading};
    /// let strip = of_reading(Instrument::Strip).unwrap();
    /// assert_eq!(strip.each_time(-5.0), strip.each_time(0.0)); // no salt is the least there is
    /// assert!(strip.each_time(3_000.0).sqrt() > 180.0);
    /// ```
    pub fn each_time(&self, salt: f64) -> f64 {
        let part = self.part * libm::fmax(salt, 0.0);
        self.each * self.each + part * part + self.step * self.step / 12.0
    }
}

/// By instrument; nothing where nothing was read. Our choice.
///
/// ```
/// use plan::{Instrument, policy::of_reading};
/// assert!(of_reading(Instrument::Assumed).is_none());
/// ```
pub const fn of_reading(instrument: Instrument) -> Option<OfReading> {
    let (gain, offset, each, part, step) = match instrument {
        Instrument::Strip => (0.06, 60.0, 60.0, 0.06, 100.0),
        Instrument::Drops => (0.03, 30.0, 30.0, 0.02, 200.0),
        Instrument::Meter => (0.03, 60.0, 15.0, 0.01, 10.0),
        Instrument::Uncalibrated => (0.08, 100.0, 25.0, 0.02, 10.0),
        Instrument::Photometer => (0.05, 50.0, 30.0, 0.04, 10.0),
        Instrument::Display => (0.08, 100.0, 40.0, 0.04, 100.0),
        Instrument::Lab => (0.015, 15.0, 10.0, 0.01, 10.0),
        Instrument::Assumed => return None,
    };
    Some(OfReading { gain, offset, each, part, step })
}

/// How long before a reading the latest salt went in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Since {
    /// Less than a day: too early to decide anything from.
    Early,
    /// A day or more.
    Day,
    /// Two days or more, or no salt went in at all.
    TwoDays,
}

/// The part of the latest dose that is not dissolved yet.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Undissolved {
    /// Its mean.
    pub mean: f64,
    /// Its standard deviation.
    pub spread: f64,
}

impl Since {
    /// By elapsed minutes: a day is 24 hours, whatever the clocks do.
    ///
    /// ```
    /// use plan::policy::Since;
    /// assert_eq!([1_439, 1_440, 2_880].map(Since::of_minutes), [Since::Early, Since::Day, Since::TwoDays]);
    /// ```
    pub const fn of_minutes(minutes: i64) -> Self {
        match minutes {
            ..1_440 => Self::Early,
            1_440..2_880 => Self::Day,
            _ => Self::TwoDays,
        }
    }

    /// About twice what is to be expected, on purpose. Our choice.
    ///
    /// ```
    /// use plan::policy::Since;
    /// assert!(Since::Day.undissolved().mean > Since::TwoDays.undissolved().mean);
    /// ```
    pub const fn undissolved(self) -> Undissolved {
        let (mean, spread) = match self {
            Self::Early => (0.15, 0.15),
            Self::Day => (0.05, 0.05),
            Self::TwoDays => (0.01, 0.02),
        };
        Undissolved { mean, spread }
    }
}

/// Salt in a pool nobody has read, freshly filled: mean and spread, mg/L. This and the next three are
/// our choice, from what each source of chlorine leaves behind.
pub const UNREAD_FRESH: (f64, f64) = (300.0, 300.0);
/// The same after a season or more of chlorine.
pub const UNREAD_OLDER: (f64, f64) = (1_000.0, 800.0);
/// The same where it was salted before.
pub const UNREAD_SALTED: (f64, f64) = (3_000.0, 1_500.0);
/// The same where nothing is known of it.
pub const UNREAD_UNKNOWN: (f64, f64) = (800.0, 1_200.0);
/// Salt before the first reading once there is one: mean and spread, mg/L. Our choice: so wide that the
/// reading speaks, and not a history that the reading belies.
pub const BEFORE_READING: (f64, f64) = (1_500.0, 3_000.0);
/// No salt at all before the first dose, mean and spread, mg/L: what a first reading after it can't be below.
pub const NO_SALT: (f64, f64) = (0.0, 1.0);
/// Spread of the salt that replacing takes out, part of it. Our choice.
pub const REPLACED_SPREAD: f64 = 0.03;
