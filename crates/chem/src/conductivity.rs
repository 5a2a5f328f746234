//! What does a conductivity mean as salt, at any temperature, and what does a meter's factor do to it?

use crate::bounds::{self, OutOfRange};
use crate::constants::atomic_weights;
use crate::quantity::measured::*;

/// What a fit says, and whether it was fitted there.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Reach<T> {
    /// Within the salinities of [`bounds::FIT_SALINITY`]: as good as the fit.
    Within(T),
    /// Above them, to the most that [`Salinity`] takes: the fit carried on, within 3 %.
    Beyond(T),
}

impl<T> Reach<T> {
    /// The figure, wherever it lies.
    ///
    /// ```
    /// use saltwright_chem::conductivity::Reach;
    /// assert_eq!((Reach::Within(1).anywhere(), Reach::Beyond(2).anywhere()), (1, 2));
    /// ```
    #[must_use]
    pub fn anywhere(self) -> T {
        let (Self::Within(x) | Self::Beyond(x)) = self;
        x
    }

    /// The figure where the fit was fitted.
    ///
    /// ```
    /// use saltwright_chem::conductivity::Reach;
    /// assert_eq!((Reach::Within(1).within(), Reach::Beyond(2).within()), (Some(1), None));
    /// ```
    #[must_use]
    pub fn within(self) -> Option<T> {
        match self {
            Self::Within(x) => Some(x),
            Self::Beyond(_) => None,
        }
    }

    fn of(salt: f64, x: T) -> Self {
        if bounds::FIT_SALINITY.contains(salt) { Self::Within(x) } else { Self::Beyond(x) }
    }
}

/// Equivalent conductivity of sodium chloride at 25 °C, S cm²/mol.
///
/// `126.39 - 90.8558 √c/(1 + 1.44549 √c)`, c in mol/L.
/// Source: our fit to S32 as in the CRC Handbook (from memory), within 0.03 % to 0.1 mol/L;
/// about 0.3 % at 8 g/L, 1.4 % at 0.5 mol/L.
fn equivalent(c: f64) -> f64 {
    let root = libm::sqrt(c);
    126.39 - 90.8558 * root / (1.0 + 1.44549 * root)
}

/// Conductivity at a temperature over that at 25 °C.
///
/// `1 + 0.0205291 d + 6.88873e-5 d² - 4.59076e-7 d³`, d = t - 25.
/// Source: our fit to the limiting conductivities of RS59 (from memory), within
/// 0.83 % over its domain, [`bounds::FIT_TEMPERATURE`].
fn temperature_factor(t: Temperature) -> Result<f64, OutOfRange> {
    let d = bounds::FIT_TEMPERATURE.check(t.celsius())? - 25.0;
    Ok(1.0 + d * (0.0205291 + d * (6.88873e-5 - d * 4.59076e-7)))
}

/// Conductivity of a sodium chloride solution, as it is at `t`.
///
/// Domain: 0 to 42 °C, 0 to 8 g/L; [`Reach::Beyond`] to 40 g/L. Errors: a temperature outside, or a conductivity
/// that no meter shows.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let [pool, hot] = [25.0, 45.0].map(Temperature::from_celsius);
/// let salt = Salinity::from_mg_per_l(3_200.0)?;
/// let k = conductivity::of_salt(salt, pool?)?.within().unwrap();
/// assert!((k.ms_per_cm() - 6.051).abs() < 0.001);
/// assert!(conductivity::of_salt(salt, hot?).is_err());
/// # Ok(())
/// # }
/// ```
pub fn of_salt(salt: Salinity, t: Temperature) -> Result<Reach<Conductivity>, OutOfRange> {
    let c = salt.mg_per_l() / 1000.0 / atomic_weights::SODIUM_CHLORIDE;
    let read = Conductivity::from_ms_per_cm(c * equivalent(c) * temperature_factor(t)?)?;
    Ok(Reach::of(salt.mg_per_l(), read))
}

/// Salt behind a conductivity read at `t` without compensation, all ions counted as sodium chloride.
///
/// Domain: 0 to 42 °C, 0 to 8 g/L; [`Reach::Beyond`] to 40 g/L. Errors: a temperature outside, or more salt.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let [t, cold] = [15.0, 5.0].map(|x| Temperature::from_celsius(x).unwrap());
/// let salt = Salinity::from_mg_per_l(3_000.0)?;
/// let back = conductivity::salt_of(conductivity::of_salt(salt, t)?.anywhere(), t)?.within().unwrap();
/// assert!((back.mg_per_l() - 3_000.0).abs() < 0.01);
/// let brine = conductivity::salt_of(Conductivity::from_ms_per_cm(70.0)?, cold);
/// assert_eq!(brine.unwrap_err().bounds, &bounds::SALINITY);
/// # Ok(())
/// # }
/// ```
pub fn salt_of(read: Conductivity, t: Temperature) -> Result<Reach<Salinity>, OutOfRange> {
    salt_at_25(read.ms_per_cm() / temperature_factor(t)?)
}

/// Salt behind a conductivity that the meter has brought to 25 °C by a straight line of so much a
/// degree (0.02 is usual): what it did is undone first, since no straight line is right.
///
/// Domain and errors as [`salt_of`]; the line must not have gone below nothing.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let (t, per_degree) = (Temperature::from_celsius(15.0)?, Fraction::from_ratio(0.02)?);
/// let salt = Salinity::from_mg_per_l(3_000.0)?;
/// let shown = conductivity::of_salt(salt, t)?.anywhere().ms_per_cm() / (1.0 - 0.02 * 10.0);
/// let shown = Conductivity::from_ms_per_cm(shown)?;
/// let back = conductivity::salt_of_compensated(shown, t, per_degree)?.within().unwrap();
/// assert!((back.mg_per_l() - 3_000.0).abs() < 0.01);
/// # Ok(())
/// # }
/// ```
pub fn salt_of_compensated(
    shown: Conductivity,
    t: Temperature,
    per_degree: Fraction,
) -> Result<Reach<Salinity>, OutOfRange> {
    let undone = 1.0 + per_degree.ratio() * (t.celsius() - 25.0);
    let at_25 = shown.ms_per_cm() * undone / temperature_factor(t)?;
    salt_at_25(Conductivity::from_ms_per_cm(at_25)?.ms_per_cm())
}

fn salt_at_25(ms_per_cm: f64) -> Result<Reach<Salinity>, OutOfRange> {
    let mut c = 0.0;
    for _ in 0..12 {
        // More than any salinity that is let through: it keeps the root from running away.
        c = (ms_per_cm / equivalent(c)).clamp(0.0, 1.0);
    }
    let salt = Salinity::from_mg_per_l(c * 1000.0 * atomic_weights::SODIUM_CHLORIDE)?;
    Ok(Reach::of(salt.mg_per_l(), salt))
}

/// Salt a meter shows that multiplies conductivity (25 °C, mS/cm) by a fixed factor, mg/L per µS/cm.
///
/// 0.5 is usual and 5.5 % low at 3,200 mg/L. Errors: more than [`bounds::SALINITY`].
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let k = Conductivity::from_ms_per_cm(6.051)?;
/// let shown = conductivity::by_factor(k, Fraction::from_ratio(0.5)?)?;
/// assert!((shown.mg_per_l() / 3_200.0 - 0.945).abs() < 0.001);
/// # Ok(())
/// # }
/// ```
pub fn by_factor(read: Conductivity, factor: Fraction) -> Result<Salinity, OutOfRange> {
    Salinity::from_mg_per_l(read.ms_per_cm() * 1000.0 * factor.ratio())
}
