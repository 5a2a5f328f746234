//! How much salt for a rise, what rise from a mass, and how much of a reading is sodium chloride?

use crate::bounds::OutOfRange;
use crate::constants::atomic_weights;
use crate::quantity::measured::*;

/// Mass of salt that raises a volume of water by `rise`.
///
/// `m = V ΔC / purity`: m³ times mg/L are grams. V is the volume when the salt has dissolved, that is
/// the pool filled to its mark; then the sum is exact. Total.
/// Source: mass balance.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let pool = Volume::from_cubic_metres(62.82)?;
/// let rise = Salinity::from_mg_per_l(2_800.0)?;
/// let pure = salt::mass_for(pool, rise, Purity::from_ratio(1.0)?);
/// assert!((pure.kilograms() - 175.9).abs() < 0.05);
/// # Ok(())
/// # }
/// ```
#[must_use]
pub fn mass_for(volume: Volume, rise: Salinity, purity: Purity) -> Mass {
    Mass::new_unchecked(volume.cubic_metres() * rise.mg_per_l() / 1000.0 / purity.ratio())
}

/// Rise that a mass of salt gives once dissolved: [`mass_for`] the other way about.
///
/// `ΔC = m purity / V`: grams over m³ are mg/L. Errors: more than [`Salinity`] holds. Source: mass balance.
///
/// ```
/// use saltwright_chem::*;
/// # fn main() -> Result<(), OutOfRange> {
/// let rise = salt::rise_from(
///     Mass::from_kilograms(25.0)?,
///     Purity::from_ratio(1.0)?,
///     Volume::from_cubic_metres(50.0)?,
/// )?;
/// assert_eq!(rise.mg_per_l(), 500.0);
/// # Ok(())
/// # }
/// ```
pub fn rise_from(mass: Mass, purity: Purity, volume: Volume) -> Result<Salinity, OutOfRange> {
    Salinity::from_mg_per_l(mass.kilograms() * purity.ratio() * 1000.0 / volume.cubic_metres())
}

/// What a salt test responds to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum SaltTest {
    /// Chloride, all of it reported as sodium chloride: drops, strip, photometer.
    Chloride,
    /// The conductivity of every ion, reported as sodium chloride: meter, generator display.
    Conductivity,
    /// Nothing: the figure is meant as sodium chloride.
    AsNaCl,
}

/// Sodium chloride behind a reading, which counts other ions as salt.
///
/// Chloride: calcium is taken to have come as calcium chloride, so `reading - 1.168 CH` (two mol of
/// chloride a mol of calcium). Conductivity: `reading - 0.85 TA - 1.15 CH`, our fit to the
/// conductivities of PA13 at 25 °C (salt 0 to 5,000 mg/L, TA 60 to 150, CH 100 to 600), within
/// 20 mg/L; beyond these the same straight line. Magnesium and sulfate are not taken off: where there is much of them,
/// as in sea water, ask a laboratory. Errors: the others account for more than was read, so one of the tests is wrong;
/// the error tells by how much.
///
/// ```
/// use saltwright_chem::*;
/// use saltwright_chem::salt::{SaltTest, sodium_chloride_behind};
/// # fn main() -> Result<(), OutOfRange> {
/// let reading = Salinity::from_mg_per_l(400.0)?;
/// let (ta, ch) = (Alkalinity::from_mg_per_l(110.0)?, Hardness::from_mg_per_l(250.0)?);
/// let salt = sodium_chloride_behind(reading, SaltTest::Conductivity, ta, ch)?;
/// assert_eq!(salt.mg_per_l(), 19.0);
/// let low = Salinity::from_mg_per_l(300.0)?;
/// assert_eq!(sodium_chloride_behind(low, SaltTest::Conductivity, ta, ch).unwrap_err().got, -81.0);
/// # Ok(())
/// # }
/// ```
pub fn sodium_chloride_behind(
    reading: Salinity,
    test: SaltTest,
    alkalinity: Alkalinity,
    hardness: Hardness,
) -> Result<Salinity, OutOfRange> {
    Salinity::from_mg_per_l(reading.mg_per_l() - other_ions(test, alkalinity, hardness).mg_per_l())
}

/// What a test shows as salt that is none: see [`sodium_chloride_behind`].
///
/// ```
/// use saltwright_chem::*;
/// use saltwright_chem::salt::{SaltTest, other_ions};
/// # fn main() -> Result<(), OutOfRange> {
/// let (ta, ch) = (Alkalinity::from_mg_per_l(110.0)?, Hardness::from_mg_per_l(250.0)?);
/// assert_eq!(other_ions(SaltTest::Conductivity, ta, ch).mg_per_l(), 381.0);
/// assert_eq!(other_ions(SaltTest::AsNaCl, ta, ch).mg_per_l(), 0.0);
/// # Ok(())
/// # }
/// ```
#[must_use]
pub fn other_ions(test: SaltTest, alkalinity: Alkalinity, hardness: Hardness) -> Salinity {
    let (ta, ch) = (alkalinity.mg_per_l(), hardness.mg_per_l());
    Salinity::new_unchecked(match test {
        SaltTest::Chloride => 2.0 * atomic_weights::SODIUM_CHLORIDE / atomic_weights::CALCIUM_CARBONATE * ch,
        SaltTest::Conductivity => 0.85 * ta + 1.15 * ch,
        SaltTest::AsNaCl => 0.0,
    })
}
