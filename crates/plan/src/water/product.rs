//! How much of a product, and is it weighed or poured?

use chem::{Mass, Volume};

/// How much of a product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// Weighed.
    Powder(Mass),
    /// Poured.
    Liquid(Volume),
}
