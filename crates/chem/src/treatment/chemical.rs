//! Which chemicals go into pools, what does a mole of each weigh, and what does it bring?
//!
//! Hydrates are chemicals of their own, so that one can't be passed for the dry salt.

use crate::constants::atomic_weights::{self, elements::*};

/// A chemical that goes into pools. Hydrates are chemicals of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Chemical {
    /// HCl, hydrochloric (muriatic) acid.
    HydrochloricAcid,
    /// NaHSO4, sodium bisulfate, "dry acid".
    SodiumBisulfate,
    /// NaHCO3, sodium bicarbonate.
    SodiumBicarbonate,
    /// Na2CO3, sodium carbonate, soda ash.
    SodiumCarbonate,
    /// NaOH, sodium hydroxide. For checks and for what bleach holds; no recipe of ours asks for it.
    SodiumHydroxide,
    /// CaCl2, calcium chloride without water.
    CalciumChloride,
    /// CaCl2·2H2O.
    CalciumChlorideDihydrate,
    /// CO2.
    CarbonDioxide,
    /// C3H3N3O3, cyanuric acid.
    CyanuricAcid,
    /// H3BO3.
    BoricAcid,
    /// Na2B4O7 without water.
    Borax,
    /// Na2B4O7·5H2O.
    BoraxPentahydrate,
    /// Na2B4O7·10H2O.
    BoraxDecahydrate,
    /// NaOCl, without the sodium chloride of its manufacture.
    SodiumHypochlorite,
    /// NaOCl with as much NaCl, as liquid chlorine is made and sold.
    LiquidChlorine,
    /// Ca(OCl)2.
    CalciumHypochlorite,
    /// NaCl2(C3N3O3), sodium dichloroisocyanurate without water.
    Dichlor,
    /// NaCl2(C3N3O3)·2H2O.
    DichlorDihydrate,
    /// Cl3(C3N3O3), trichloroisocyanuric acid.
    Trichlor,
    /// Cl2, chlorine gas.
    Chlorine,
    /// NaCl.
    SodiumChloride,
}

/// What one mole adds, in moles (alkalinity in equivalents).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Change {
    pub alkalinity: f64,
    pub carbon: f64,
    pub calcium: f64,
    pub cyanuric_acid: f64,
    pub boron: f64,
    pub sodium: f64,
    pub chloride: f64,
    pub sulfate: f64,
    pub chlorine: f64,
}

impl Chemical {
    /// All of them.
    pub const ALL: &[Self] = &[
        Self::HydrochloricAcid,
        Self::SodiumBisulfate,
        Self::SodiumBicarbonate,
        Self::SodiumCarbonate,
        Self::SodiumHydroxide,
        Self::CalciumChloride,
        Self::CalciumChlorideDihydrate,
        Self::CarbonDioxide,
        Self::CyanuricAcid,
        Self::BoricAcid,
        Self::Borax,
        Self::BoraxPentahydrate,
        Self::BoraxDecahydrate,
        Self::SodiumHypochlorite,
        Self::LiquidChlorine,
        Self::CalciumHypochlorite,
        Self::Dichlor,
        Self::DichlorDihydrate,
        Self::Trichlor,
        Self::Chlorine,
        Self::SodiumChloride,
    ];

    /// g/mol. Source: [`atomic_weights`].
    ///
    /// ```
    /// use saltwright_chem::treatment::Chemical;
    /// assert!((Chemical::SodiumBicarbonate.molar_mass() - 84.0066).abs() < 1e-4);
    /// ```
    #[must_use]
    pub const fn molar_mass(self) -> f64 {
        const HYPOCHLORITE: f64 = CHLORINE + OXYGEN;
        const BORAX: f64 = 2.0 * SODIUM + 4.0 * BORON + 7.0 * OXYGEN;
        // Cyanuric acid without its hydrogen.
        const CYANURIC_ACID: f64 = 3.0 * (CARBON + NITROGEN + OXYGEN);
        match self {
            Self::HydrochloricAcid => atomic_weights::HYDROGEN_CHLORIDE,
            Self::SodiumBisulfate => SODIUM + HYDROGEN + atomic_weights::SULFATE,
            Self::SodiumBicarbonate => SODIUM + HYDROGEN + CARBON + 3.0 * OXYGEN,
            Self::SodiumCarbonate => 2.0 * SODIUM + CARBON + 3.0 * OXYGEN,
            Self::SodiumHydroxide => SODIUM + OXYGEN + HYDROGEN,
            Self::CalciumChloride => CALCIUM + 2.0 * CHLORINE,
            Self::CalciumChlorideDihydrate => Self::CalciumChloride.molar_mass() + 2.0 * WATER,
            Self::CarbonDioxide => CARBON + 2.0 * OXYGEN,
            Self::CyanuricAcid => atomic_weights::CYANURIC_ACID,
            Self::BoricAcid => 3.0 * HYDROGEN + BORON + 3.0 * OXYGEN,
            Self::Borax => BORAX,
            Self::BoraxPentahydrate => BORAX + 5.0 * WATER,
            Self::BoraxDecahydrate => BORAX + 10.0 * WATER,
            Self::SodiumHypochlorite => SODIUM + HYPOCHLORITE,
            Self::LiquidChlorine => SODIUM + HYPOCHLORITE + atomic_weights::SODIUM_CHLORIDE,
            Self::CalciumHypochlorite => CALCIUM + 2.0 * HYPOCHLORITE,
            Self::Dichlor => CYANURIC_ACID + SODIUM + 2.0 * CHLORINE,
            Self::DichlorDihydrate => Self::Dichlor.molar_mass() + 2.0 * WATER,
            Self::Trichlor => CYANURIC_ACID + 3.0 * CHLORINE,
            Self::Chlorine => 2.0 * CHLORINE,
            Self::SodiumChloride => atomic_weights::SODIUM_CHLORIDE,
        }
    }

    /// Strong ions that a mole brings: alkalinity changes by their charge and by nothing else.
    pub(crate) const fn change(self) -> Change {
        let none = Change {
            alkalinity: 0.0,
            carbon: 0.0,
            calcium: 0.0,
            cyanuric_acid: 0.0,
            boron: 0.0,
            sodium: 0.0,
            chloride: 0.0,
            sulfate: 0.0,
            chlorine: 0.0,
        };
        match self {
            Self::HydrochloricAcid => Change { alkalinity: -1.0, chloride: 1.0, ..none },
            Self::SodiumBisulfate => Change { alkalinity: -1.0, sodium: 1.0, sulfate: 1.0, ..none },
            Self::SodiumBicarbonate => Change { alkalinity: 1.0, carbon: 1.0, sodium: 1.0, ..none },
            Self::SodiumCarbonate => Change { alkalinity: 2.0, carbon: 1.0, sodium: 2.0, ..none },
            Self::SodiumHydroxide => Change { alkalinity: 1.0, sodium: 1.0, ..none },
            Self::CalciumChloride | Self::CalciumChlorideDihydrate => {
                Change { calcium: 1.0, chloride: 2.0, ..none }
            }
            Self::CarbonDioxide => Change { carbon: 1.0, ..none },
            Self::CyanuricAcid => Change { cyanuric_acid: 1.0, ..none },
            Self::BoricAcid => Change { boron: 1.0, ..none },
            Self::Borax | Self::BoraxPentahydrate | Self::BoraxDecahydrate => {
                Change { alkalinity: 2.0, boron: 4.0, sodium: 2.0, ..none }
            }
            Self::SodiumHypochlorite => Change { alkalinity: 1.0, sodium: 1.0, chlorine: 1.0, ..none },
            Self::LiquidChlorine => {
                Change { alkalinity: 1.0, sodium: 2.0, chloride: 1.0, chlorine: 1.0, ..none }
            }
            Self::CalciumHypochlorite => Change { alkalinity: 2.0, calcium: 1.0, chlorine: 2.0, ..none },
            Self::Dichlor | Self::DichlorDihydrate => {
                Change { alkalinity: 1.0, cyanuric_acid: 1.0, sodium: 1.0, chlorine: 2.0, ..none }
            }
            Self::Trichlor => Change { cyanuric_acid: 1.0, chlorine: 3.0, ..none },
            Self::Chlorine => Change { alkalinity: -1.0, chloride: 1.0, chlorine: 1.0, ..none },
            Self::SodiumChloride => Change { sodium: 1.0, chloride: 1.0, ..none },
        }
    }

    /// Free chlorine that a mole brings, mol.
    ///
    /// ```
    /// use saltwright_chem::treatment::Chemical;
    /// assert_eq!(Chemical::Trichlor.available_chlorine(), 3.0);
    /// ```
    #[must_use]
    pub const fn available_chlorine(self) -> f64 {
        self.change().chlorine
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn alkalinity_changes_by_the_charge_of_the_strong_ions() {
        for chemical in Chemical::ALL {
            let c = chemical.change();
            let charge = c.sodium + 2.0 * c.calcium - c.chloride - 2.0 * c.sulfate;
            assert_eq!(c.alkalinity, charge, "{chemical:?}");
        }
    }

    /// CRC Handbook of Chemistry and Physics, physical constants of inorganic compounds (from memory).
    #[test]
    fn a_mole_weighs_what_handbooks_print() {
        for (chemical, printed) in [
            (Chemical::HydrochloricAcid, 36.461),
            (Chemical::SodiumBisulfate, 120.061),
            (Chemical::SodiumBicarbonate, 84.007),
            (Chemical::SodiumCarbonate, 105.989),
            (Chemical::SodiumHydroxide, 39.997),
            (Chemical::CalciumChloride, 110.984),
            (Chemical::CalciumChlorideDihydrate, 147.015),
            (Chemical::CarbonDioxide, 44.010),
            (Chemical::CyanuricAcid, 129.074),
            (Chemical::BoricAcid, 61.833),
            (Chemical::Borax, 201.220),
            (Chemical::BoraxPentahydrate, 291.296),
            (Chemical::BoraxDecahydrate, 381.372),
            (Chemical::SodiumHypochlorite, 74.442),
            (Chemical::CalciumHypochlorite, 142.983),
            (Chemical::Dichlor, 219.946),
            (Chemical::Trichlor, 232.409),
            (Chemical::Chlorine, 70.906),
            (Chemical::SodiumChloride, 58.443),
        ] {
            let ours = chemical.molar_mass();
            assert!((ours - printed).abs() < 0.0011, "{chemical:?}: {ours} beside {printed}");
        }
        let both = [Chemical::SodiumHypochlorite, Chemical::SodiumChloride].map(Chemical::molar_mass);
        assert!((Chemical::LiquidChlorine.molar_mass() - both[0] - both[1]).abs() < 1e-12);
    }
}
