//! Which quantities does nobody measure, because a formula finds them?

use super::define::quantities;
use crate::bounds::{self, OutOfRange};

quantities! {
    in "";
    /// The part of alkalinity that bicarbonate and carbonate hold.
    CarbonateAlkalinity, CARBONATE_ALKALINITY, from_mg_per_l, mg_per_l, "mg/L as CaCO3";
    /// Calcite saturation index: the decimal logarithm of ion product over solubility product.
    SaturationIndex, SATURATION_INDEX, from_log10, log10, "powers of ten";
    /// Ionic strength.
    IonicStrength, STRENGTH, from_molal, molal, "mol per kg of water";
    /// Total inorganic carbon.
    InorganicCarbon, INORGANIC_CARBON, from_molal, molal, "mol per kg of water";
    /// Carbon dioxide's partial pressure over water in equilibrium with it.
    CarbonDioxide, CARBON_DIOXIDE, from_atmospheres, atmospheres, "atm";
    /// Mass of a cubic metre.
    Density, DENSITY, from_kg_per_m3, kg_per_m3, "kg/m³";
    /// Water in a litre of solution.
    WaterContent, WATER_CONTENT, from_kg_per_l, kg_per_l, "kg of water per litre";
    /// How far one temperature lies above another; below zero where it lies below.
    TemperatureDifference, TEMPERATURE_DIFFERENCE, from_kelvin, kelvin, "K";
}

impl CarbonDioxide {
    /// Open air at sea level in 2026: some 430 parts in a million of dry air (from memory of the world's mean), less two
    /// or three in a hundred for the vapour over warm water. In a hall it is higher, on a mountain lower.
    pub const OPEN_AIR: Self = Self(420e-6);

    /// From a part of a million of an atmosphere, 1 to 1,000,000.
    ///
    /// ```
    /// use saltwright_chem::CarbonDioxide;
    /// assert_eq!(CarbonDioxide::from_micro_atmospheres(420.0).unwrap(), CarbonDioxide::OPEN_AIR);
    /// ```
    pub fn from_micro_atmospheres(x: f64) -> Result<Self, OutOfRange> {
        bounds::AIR.check(x).map(|x| Self(x / 1e6))
    }
}
