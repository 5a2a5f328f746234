//! What do the usual table forms of the index say of the same water? For comparison only.
//!
//! They are "Langelier-type" indices, not the calcite index of [`crate::State`]: over typical pools the
//! first lies 0.04 below it (spread 0.02), the second 0.08 below (spread 0.08).

use crate::bounds::{self, OutOfRange};
use crate::constants::atomic_weights;
use crate::constants::equilibrium::Constants;
use crate::quantity::{derived::*, measured::*};

/// A table form: of temperature, pH, hardness, carbonate alkalinity and solids.
pub type TableForm =
    fn(Temperature, Ph, Hardness, CarbonateAlkalinity, Solids) -> Result<Option<SaturationIndex>, OutOfRange>;

/// Form of Standard Methods 2330B: SM2330 (from memory), after L36 and LB42.
///
/// `pH - (pK2 - pKs + p[Ca] + p[HCO3] + 5 pf)`, `pf = A (√I/(1 + √I) - 0.3 I)`,
/// `A = 1.82e6 (E T)^-1.5`, `E = 60954/(T + 116) - 68.937`, `I = solids/40000`; `[HCO3]` from *carbonate*
/// alkalinity; pK2 and pKs are PB82's. Domain: 0 to 42 °C. Errors: a temperature outside. Without calcium or
/// carbonate: `None`.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let i = langelier::standard_methods(
///     Temperature::from_celsius(25.0)?,
///     Ph::from_units(7.5)?,
///     Hardness::from_mg_per_l(300.0)?,
///     CarbonateAlkalinity::from_mg_per_l(100.0)?,
///     Solids::from_mg_per_l(1_000.0)?,
/// )?;
/// assert!((i.unwrap().log10() - 0.10).abs() < 0.005);
/// # Ok(())
/// # }
/// ```
pub fn standard_methods(
    t: Temperature,
    ph: Ph,
    hardness: Hardness,
    carbonate: CarbonateAlkalinity,
    solids: Solids,
) -> Result<Option<SaturationIndex>, OutOfRange> {
    let constants = Constants::at(t)?;
    let Some((ca, alk)) = positive(hardness, carbonate) else { return Ok(None) };
    let k = t.celsius() + 273.15;
    let permittivity = 60_954.0 / (k + 116.0) - 68.937;
    let et = permittivity * k;
    let a = 1.82e6 / (et * libm::sqrt(et));
    let i = solids.mg_per_l() / 40_000.0;
    let root = libm::sqrt(i);
    let pf = a * (root / (1.0 + root) - 0.3 * i);
    let p = |x: f64| -libm::log10(x);
    let molar = atomic_weights::CALCIUM_CARBONATE * 1000.0;
    let saturated =
        constants.calcite - constants.log.bicarbonate + p(ca / molar) + p(2.0 * alk / molar) + 5.0 * pf;
    SaturationIndex::from_log10(ph.units() - saturated).map(Some)
}

/// Closed form of the factor tables in water-treatment handbooks (from memory).
///
/// `pH - (9.3 + A + B - C - D)`: `A = (log10 solids - 1)/10`, `B = -13.12 log10 T + 34.55`,
/// `C = log10 CH - 0.4`, `D = log10 alkalinity`. Domain: 0 to 42 °C, solids of 10 mg/L and more. Errors: outside
/// these. Without calcium or carbonate: `None`.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let i = langelier::closed_form(
///     Temperature::from_celsius(25.0)?,
///     Ph::from_units(7.5)?,
///     Hardness::from_mg_per_l(300.0)?,
///     CarbonateAlkalinity::from_mg_per_l(100.0)?,
///     Solids::from_mg_per_l(1_000.0)?,
/// )?;
/// assert!((i.unwrap().log10() - -0.01).abs() < 0.005);
/// # Ok(())
/// # }
/// ```
pub fn closed_form(
    t: Temperature,
    ph: Ph,
    hardness: Hardness,
    carbonate: CarbonateAlkalinity,
    solids: Solids,
) -> Result<Option<SaturationIndex>, OutOfRange> {
    bounds::MODEL_TEMPERATURE.check(t.celsius())?;
    let solids = bounds::TABLE_SOLIDS.check(solids.mg_per_l())?;
    let Some((ca, alk)) = positive(hardness, carbonate) else { return Ok(None) };
    let a = (libm::log10(solids) - 1.0) / 10.0;
    let b = -13.12 * libm::log10(t.celsius() + 273.15) + 34.55;
    let (c, d) = (libm::log10(ca) - 0.4, libm::log10(alk));
    SaturationIndex::from_log10(ph.units() - (9.3 + a + b - c - d)).map(Some)
}

fn positive(hardness: Hardness, carbonate: CarbonateAlkalinity) -> Option<(f64, f64)> {
    let (ca, alk) = (hardness.mg_per_l(), carbonate.mg_per_l());
    (ca > 1e-9 && alk > 1e-9).then_some((ca, alk))
}
