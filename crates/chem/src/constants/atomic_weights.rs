//! What does a mole weigh? Molar masses in g/mol, each by arithmetic from one set of atomic weights.
//!
//! The set is IUPAC's standard atomic weights of 2007, the last before some of them became intervals: key **IUPAC07**
//! of `REFERENCES.md`, which also says which of them were read and which are from memory.

/// Standard atomic weights of 2007, g/mol.
pub(crate) mod elements {
    pub const HYDROGEN: f64 = 1.00794;
    pub const BORON: f64 = 10.811;
    pub const CARBON: f64 = 12.0107;
    pub const NITROGEN: f64 = 14.0067;
    pub const OXYGEN: f64 = 15.9994;
    pub const SODIUM: f64 = 22.98976928;
    pub const SULFUR: f64 = 32.065;
    pub const CHLORINE: f64 = 35.453;
    pub const CALCIUM: f64 = 40.078;
    /// Hydrate water, H2O: no element, but as often added.
    pub const WATER: f64 = 2.0 * HYDROGEN + OXYGEN;
}

/// Calcium carbonate, CaCO3; alkalinity and hardness are expressed as this.
pub const CALCIUM_CARBONATE: f64 = elements::CALCIUM + elements::CARBON + 3.0 * elements::OXYGEN;
/// Calcium oxide, CaO, lime; German degrees are expressed as this.
pub const CALCIUM_OXIDE: f64 = elements::CALCIUM + elements::OXYGEN;
/// Sodium chloride, NaCl; salt is expressed as this.
pub const SODIUM_CHLORIDE: f64 = elements::SODIUM + elements::CHLORINE;
/// Chloride, Cl.
pub const CHLORIDE: f64 = elements::CHLORINE;
/// Boron, B.
pub const BORON: f64 = elements::BORON;
/// Cyanuric acid, C3H3N3O3.
pub const CYANURIC_ACID: f64 =
    3.0 * (elements::CARBON + elements::HYDROGEN + elements::NITROGEN + elements::OXYGEN);
/// Sulfate, SO4.
pub const SULFATE: f64 = elements::SULFUR + 4.0 * elements::OXYGEN;
/// Hydrogen chloride, HCl.
pub const HYDROGEN_CHLORIDE: f64 = elements::HYDROGEN + elements::CHLORINE;
/// Chlorine, Cl2; free chlorine is expressed as this.
pub const CHLORINE: f64 = 2.0 * elements::CHLORINE;

#[cfg(test)]
mod tests {
    /// CRC Handbook of Chemistry and Physics (from memory).
    #[test]
    fn a_mole_weighs_what_handbooks_print() {
        for (ours, printed) in [
            (super::CALCIUM_CARBONATE, 100.087),
            (super::CALCIUM_OXIDE, 56.077),
            (super::SODIUM_CHLORIDE, 58.443),
            (super::CYANURIC_ACID, 129.074),
            (super::SULFATE, 96.063),
            (super::HYDROGEN_CHLORIDE, 36.461),
            (super::CHLORINE, 70.906),
        ] {
            assert!((ours - printed).abs() < 0.0006, "{ours} beside {printed}");
        }
    }
}
