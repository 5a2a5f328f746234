//! What does a chemical do to the water, how much of a product is that, and which lead where?

mod chemical;
pub(crate) mod dose;
mod product;
pub mod recipe;

pub use chemical::Chemical;
pub use dose::Dose;
pub use product::{AcidStrength, BleachStrength};
