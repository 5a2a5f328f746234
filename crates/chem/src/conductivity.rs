//! What does a conductivity mean as salt, at any temperature, and what does a meter's factor do to it?

use crate::constants::atomic_weights;
use crate::quantity::measured::*;

/// Equivalent conductivity of sodium chloride at 25 °C, S cm²/mol.
///
/// `126.39 - 90.8558 √c/(1 + 1.44549 √c)`, c in mol/L.
/// Source: our fit to Shedlovsky 1932 as in the CRC Handbook (from memory), within 0.03 % to 0.1 mol/L;
/// about 0.3 % at 8 g/L, 1.4 % at 0.5 mol/L.
fn equivalent(c: f64) -> f64 {
    let root = libm::sqrt(c);
    126.39 - 90.8558 * root / (1.0 + 1.44549 * root)
}

/// Conductivity at a temperature over that at 25 °C.
///
/// `1 + 0.0205291 d + 6.88873e-5 d² - 4.59076e-7 d³`, d = t - 25.
/// Source: our fit to the limiting conductivities of Robinson and Stokes 1959 (from memory), within
/// 0.83 % from 0 to 42 °C.
fn warmth(t: Temperature) -> f64 {
    let d = t.celsius() - 25.0;
    1.0 + d * (0.0205291 + d * (6.88873e-5 - d * 4.59076e-7))
}

/// Conductivity of a sodium chloride solution, as it is at `t`.
///
/// Domain: 0 to 42 °C, 0 to 8 g/L; beyond that for warnings only. Total.
///
/// ```
/// use chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let t = Temperature::from_celsius(25.0)?;
/// let k = conductivity::of_salt(Salinity::from_mg_per_l(3_200.0)?, t);
/// assert!((k.ms_per_cm() - 6.051).abs() < 0.001);
/// # Ok(())
/// # }
/// ```
pub fn of_salt(salt: Salinity, t: Temperature) -> Conductivity {
    let c = salt.mg_per_l() / 1000.0 / atomic_weights::SODIUM_CHLORIDE;
    Conductivity::found(c * equivalent(c) * warmth(t))
}

/// Salt behind a conductivity read at `t` without compensation, all ions counted as sodium chloride.
///
/// ```
/// use chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let t = Temperature::from_celsius(15.0)?;
/// let salt = Salinity::from_mg_per_l(3_000.0)?;
/// let back = conductivity::salt_of(conductivity::of_salt(salt, t), t);
/// assert!((back.mg_per_l() - 3_000.0).abs() < 0.01);
/// # Ok(())
/// # }
/// ```
pub fn salt_of(read: Conductivity, t: Temperature) -> Salinity {
    salt_at_25(read.ms_per_cm() / warmth(t))
}

/// Salt behind a conductivity that the meter has brought to 25 °C by a straight line of so much a
/// degree (0.02 is usual): what it did is undone first, since no straight line is right.
///
/// ```
/// use chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let (t, per_degree) = (Temperature::from_celsius(15.0)?, Fraction::from_ratio(0.02)?);
/// let salt = Salinity::from_mg_per_l(3_000.0)?;
/// let shown = conductivity::of_salt(salt, t).ms_per_cm() / (1.0 - 0.02 * 10.0);
/// let back = conductivity::salt_of_compensated(Conductivity::from_ms_per_cm(shown)?, t, per_degree);
/// assert!((back.mg_per_l() - 3_000.0).abs() < 0.01);
/// # Ok(())
/// # }
/// ```
pub fn salt_of_compensated(shown: Conductivity, t: Temperature, per_degree: Fraction) -> Salinity {
    let undone = 1.0 + per_degree.ratio() * (t.celsius() - 25.0);
    salt_at_25(shown.ms_per_cm() * libm::fmax(undone, 0.0) / warmth(t))
}

fn salt_at_25(ms_per_cm: f64) -> Salinity {
    let mut c = 0.0;
    for _ in 0..12 {
        // The fit has no business beyond a few mol/L; keep its root from running away.
        c = (ms_per_cm / equivalent(c)).clamp(0.0, 1.0);
    }
    Salinity::found(c * 1000.0 * atomic_weights::SODIUM_CHLORIDE)
}

/// Salt a meter shows that multiplies conductivity (25 °C, mS/cm) by a fixed factor, mg/L per µS/cm.
///
/// 0.5 is usual and 5.5 % low at 3,200 mg/L. Total.
///
/// ```
/// use chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let k = Conductivity::from_ms_per_cm(6.051)?;
/// let shown = conductivity::by_factor(k, Fraction::from_ratio(0.5)?);
/// assert!((shown.mg_per_l() / 3_200.0 - 0.945).abs() < 0.001);
/// # Ok(())
/// # }
/// ```
pub fn by_factor(read: Conductivity, factor: Fraction) -> Salinity {
    Salinity::found(read.ms_per_cm() * 1000.0 * factor.ratio())
}
