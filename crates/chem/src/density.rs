//! How heavy is salt water, and how much of a litre is water?

use crate::bounds::{self, OutOfRange};
use crate::quantity::{derived::*, measured::*};

/// Density of pure water at one atmosphere.
///
/// `(a0 + a1 t + a2 t² + a3 t³ + a4 t⁴ + a5 t⁵)/(1 + b t)`, t in °C, result in kg/m³.
/// Domain: 0 to 50 °C here (the source claims 0 to 150). Total.
/// Source: K75, equation 16.
///
/// ```
/// use saltwright_chem::{Temperature, density};
/// let rho = density::pure_water(Temperature::from_celsius(25.0).unwrap());
/// assert!((rho.kg_per_m3() - 997.0449).abs() < 1e-4); // K75, table
/// ```
#[must_use]
pub fn pure_water(t: Temperature) -> Density {
    let t = t.celsius();
    let top = 999.83952
        + t * (16.945176
            + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
    Density::new_unchecked(top / (1.0 + 16.879850e-3 * t))
}

/// Density of a sodium chloride solution.
///
/// `pure + S (0.774544 - 3.25527e-3 t + 3.79670e-5 t² - 4.77448e-3 √S)`, S in g/L, kg/m³.
/// Domain: 0 to 42 °C, 0 to 40 g/L. Errors: a temperature outside.
/// Source: our fit to PA13's density of sodium chloride solutions, within 0.06 kg/m³.
///
/// ```
/// use saltwright_chem::{Salinity, Temperature, density};
/// let rho = density::brine(
///     Temperature::from_celsius(25.0).unwrap(),
///     Salinity::from_mg_per_l(3_200.0).unwrap(),
/// )
/// .unwrap();
/// assert!((rho.kg_per_m3() - 999.31).abs() < 0.06);
/// ```
pub fn brine(t: Temperature, salt: Salinity) -> Result<Density, OutOfRange> {
    let (c, s) = (bounds::FIT_TEMPERATURE.check(t.celsius())?, salt.mg_per_l() / 1000.0);
    let rise = s * (0.774544 - 3.25527e-3 * c + 3.79670e-5 * c * c - 4.77448e-3 * libm::sqrt(s));
    Density::from_kg_per_m3(pure_water(t).kg_per_m3() + rise)
}

/// Kilograms of water in a litre of a sodium chloride solution.
///
/// `pure/1000 (1 - S (2.25404e-4 + 3.24515e-6 t - 3.61402e-8 t² + 4.78726e-6 √S))`, S in g/L.
/// Domain: 0 to 42 °C, 0 to 40 g/L. Errors: a temperature outside.
/// Source: our fit to PA13, within 6e-5 kg/L.
///
/// ```
/// use saltwright_chem::{Salinity, Temperature, density};
/// let w = density::water_content(Temperature::from_celsius(26.0).unwrap(), Salinity::NONE).unwrap();
/// assert!((w.kg_per_l() - 0.996783).abs() < 1e-6); // CRC Handbook, water at 26 °C (from memory)
/// ```
pub fn water_content(t: Temperature, salt: Salinity) -> Result<WaterContent, OutOfRange> {
    bounds::FIT_TEMPERATURE.check(t.celsius())?;
    Ok(water_content_within(t, salt))
}

/// [`water_content`] of what is known to lie in its domain.
pub(crate) fn water_content_within(t: Temperature, salt: Salinity) -> WaterContent {
    debug_assert!(bounds::FIT_TEMPERATURE.contains(t.celsius()));
    let (c, s) = (t.celsius(), salt.mg_per_l() / 1000.0);
    let lost = s * (2.25404e-4 + 3.24515e-6 * c - 3.61402e-8 * c * c + 4.78726e-6 * libm::sqrt(s));
    WaterContent::new_unchecked(pure_water(t).kg_per_m3() / 1000.0 * (1.0 - lost))
}
