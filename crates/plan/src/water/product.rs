//! How much of a product, and is it weighed or poured?

use crate::input::case::Acid;
use chem::treatment::{Chemical, Dose};
use chem::{Mass, OutOfRange, Volume};

/// How much of a product.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum ProductAmount {
    /// Weighed.
    Powder(Mass),
    /// Poured.
    Liquid(Volume),
}

impl Acid {
    /// What it is.
    pub(crate) const fn chemical(self) -> Chemical {
        match self {
            Self::Hydrochloric(_) => Chemical::HydrochloricAcid,
            Self::Bisulfate(_) => Chemical::SodiumBisulfate,
        }
    }

    /// So much of it for so much water.
    pub(crate) fn amount(self, dose: Dose, volume: Volume) -> Result<ProductAmount, OutOfRange> {
        match self {
            Self::Hydrochloric(strength) => dose.of_acid(volume, strength).map(ProductAmount::Liquid),
            Self::Bisulfate(purity) => {
                Ok(ProductAmount::Powder(dose.of_powder(self.chemical(), volume, purity)))
            }
        }
    }
}
