//! What does a chemical do to the water, how much of a product is that, and which lead where?

pub(crate) mod dose;
mod product;
pub mod recipe;

pub use dose::{Chemical, Dose};
pub use product::{AcidStrength, BleachStrength};
