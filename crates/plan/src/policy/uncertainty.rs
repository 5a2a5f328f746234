//! How far may each figure be off?
//!
//! Every figure here is our choice: a judgement, not a measurement. They stand together so that they
//! can be argued with together. The symbols are those of the table in `salt/METHOD.md`.

use crate::input::choices::{History, Instrument, Method};
use crate::policy::times::HOURS_TO_READING;

/// A figure and its doubt.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Moments {
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub std_dev: f64,
}

impl Moments {
    /// Where it lies 9 times in 10, taken as a normal distribution.
    ///
    /// ```
    /// use saltwright_plan::policy::Moments;
    /// let [low, high] = Moments { mean: 60.0, std_dev: 2.0 }.nine_in_ten();
    /// assert!((low - 56.71).abs() < 0.001 && (high - 63.29).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn nine_in_ten(&self) -> [f64; 2] {
        [self.mean - 1.645 * self.std_dev, self.mean + 1.645 * self.std_dev]
    }
}

/// How far a volume may be off: it is `κ` times the one stated, give or take a part `ρ` of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VolumeError {
    /// Below 1, because people over-estimate.
    pub kappa: f64,
    /// One standard deviation, part of the volume.
    pub rho: f64,
}

/// By how the volume was found. Our choice.
///
/// ```
/// use saltwright_plan::{Method, policy::volume_error};
/// assert!(volume_error(Method::Remembered).rho > volume_error(Method::Taped).rho);
/// ```
#[must_use]
pub const fn volume_error(method: Method) -> VolumeError {
    let (kappa, rho) = match method {
        Method::Metered => (1.00, 0.015),
        Method::Drawing => (0.99, 0.04),
        Method::Taped => (0.98, 0.05),
        Method::Offsets => (0.98, 0.07),
        Method::Rule => (0.97, 0.10),
        Method::Remembered => (0.95, 0.17),
    };
    VolumeError { kappa, rho }
}

/// Blunders happen to careful people too (a wrong gallon, a hopper not seen): how often. Our choice.
pub const BLUNDERS: f64 = 0.05;

/// Standard deviation `s` of a blunder's logarithm, by that of the volume's, `t`. Our choice.
#[must_use]
pub fn blunder_std_dev(t: f64) -> f64 {
    libm::fmax(3.0 * t, 0.15)
}

/// Standard deviation of the purity printed on the bag, part of it. Our choice.
pub const PURITY_STD_DEV: f64 = 0.006;

/// Standard deviation of the salt's change between two visits by rain, splash and evaporation, part of it.
/// Our choice.
pub const DRIFT_STD_DEV: f64 = 0.006;

/// How far a reading may be off: `y = (1 + g)(C - u) + o + e`, rounded to a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InstrumentError {
    /// Standard deviation of `g`, one and the same for all readings of the instrument.
    pub gain: f64,
    /// Standard deviation of `o`, mg/L, one and the same for all readings of the instrument.
    pub offset: f64,
    /// Standard deviation `a` of `e`, new each time, mg/L.
    pub noise: f64,
    /// The same as a part `r` of the salt.
    pub noise_per_salt: f64,
    /// The step it reads in, mg/L.
    pub step: f64,
}

impl InstrumentError {
    /// Variance of `e` at some salt, the rounding included: `a² + (r · salt)² + step²/12`.
    ///
    /// ```
    /// use saltwright_plan::{Instrument, policy::instrument_error};
    /// let strip = instrument_error(Instrument::Strip).unwrap();
    /// assert_eq!(strip.variance(-5.0), strip.variance(0.0)); // no salt is the least there is
    /// assert!(strip.variance(3_000.0).sqrt() > 180.0);
    /// ```
    #[must_use]
    pub fn variance(&self, salt: f64) -> f64 {
        let part = self.noise_per_salt * libm::fmax(salt, 0.0);
        self.noise * self.noise + part * part + self.step * self.step / 12.0
    }
}

/// By instrument; nothing where nothing was read. Our choice.
///
/// ```
/// use saltwright_plan::{Instrument, policy::instrument_error};
/// assert!(instrument_error(Instrument::Assumed).is_none());
/// ```
#[must_use]
pub const fn instrument_error(instrument: Instrument) -> Option<InstrumentError> {
    let (gain, offset, noise, noise_per_salt, step) = match instrument {
        Instrument::Strip => (0.06, 60.0, 60.0, 0.06, 100.0),
        Instrument::Drops => (0.03, 30.0, 30.0, 0.02, 200.0),
        Instrument::Meter => (0.03, 60.0, 15.0, 0.01, 10.0),
        Instrument::Uncalibrated => (0.08, 100.0, 25.0, 0.02, 10.0),
        Instrument::Photometer => (0.05, 50.0, 30.0, 0.04, 10.0),
        Instrument::Display => (0.08, 100.0, 40.0, 0.04, 100.0),
        Instrument::Lab => (0.015, 15.0, 10.0, 0.01, 10.0),
        Instrument::Assumed => return None,
    };
    Some(InstrumentError { gain, offset, noise, noise_per_salt, step })
}

/// How long before a reading the latest salt went in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Since {
    /// Less than a day: too early to decide anything from.
    Early,
    /// A day or more.
    Day,
    /// Two days or more, or no salt went in at all.
    TwoDays,
}

impl Since {
    /// By elapsed minutes: a day is 24 hours, whatever the clocks do.
    ///
    /// ```
    /// use saltwright_plan::policy::Since;
    /// assert_eq!([1_439, 1_440, 2_880].map(Since::of_minutes), [Since::Early, Since::Day, Since::TwoDays]);
    /// ```
    #[must_use]
    pub const fn of_minutes(minutes: i64) -> Self {
        const DAY: i64 = HOURS_TO_READING * 60;
        const TWO_DAYS: i64 = 2 * DAY;
        match minutes {
            ..DAY => Self::Early,
            DAY..TWO_DAYS => Self::Day,
            _ => Self::TwoDays,
        }
    }

    /// The part of the latest dose that is not dissolved yet. About twice what is to be expected, on purpose.
    /// Our choice.
    ///
    /// ```
    /// use saltwright_plan::policy::Since;
    /// assert!(Since::Day.undissolved().mean > Since::TwoDays.undissolved().mean);
    /// ```
    #[must_use]
    pub const fn undissolved(self) -> Moments {
        let (mean, std_dev) = match self {
            Self::Early => (0.15, 0.15),
            Self::Day => (0.05, 0.05),
            Self::TwoDays => (0.01, 0.02),
        };
        Moments { mean, std_dev }
    }
}

/// Salt of a pool nobody has read, mg/L. Our choice, from what each source of chlorine leaves behind.
#[must_use]
pub const fn unread_salt(history: History) -> Moments {
    let (mean, std_dev) = match history {
        History::Fresh => (300.0, 300.0),
        History::Older => (1_000.0, 800.0),
        History::Salted => (3_000.0, 1_500.0),
        History::Unknown => (800.0, 1_200.0),
    };
    Moments { mean, std_dev }
}

/// Salt before the first reading once there is one, mg/L. Our choice: so wide that the reading speaks, and not a
/// history that the reading belies.
pub const BEFORE_READING: Moments = Moments { mean: 1_500.0, std_dev: 3_000.0 };
/// No salt at all before the first dose, mg/L: what a first reading after it can't be below.
pub const NO_SALT: Moments = Moments { mean: 0.0, std_dev: 1.0 };
/// Standard deviation of the salt that replacing takes out, part of it. Our choice.
pub const REPLACED_STD_DEV: f64 = 0.03;
