//! What does a mole weigh? Molar masses in g/mol, from the IUPAC abridged atomic weights (from memory).

/// Calcium carbonate, CaCO3; alkalinity and hardness are expressed as this.
pub const CALCIUM_CARBONATE: f64 = 100.0869;
/// Sodium chloride, NaCl; salt is expressed as this.
pub const SODIUM_CHLORIDE: f64 = 58.4428;
/// Chloride, Cl.
pub const CHLORIDE: f64 = 35.453;
/// Boron, B.
pub const BORON: f64 = 10.81;
/// Cyanuric acid, C3H3N3O3.
pub const CYANURIC_ACID: f64 = 129.0746;
/// Sulfate, SO4.
pub const SULFATE: f64 = 96.06;
/// Hydrogen chloride, HCl.
pub const HYDROGEN_CHLORIDE: f64 = 36.4609;
/// Chlorine, Cl2; free chlorine is expressed as this.
pub const CHLORINE: f64 = 70.906;
