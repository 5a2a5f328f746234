//! Facts about pool water: what the published formulas say, and nothing about what to do.
//!
//! Everything here is a plain function of typed quantities. Inside a formula the arithmetic runs
//! on bare numbers in one unit, so that a line of code reads like the line of its source.
//!
//! | Question | Room |
//! |---|---|
//! | In which unit does a number stand, what may be reckoned with it, which values may it take? | `quantity/`, [`bounds`] |
//! | Why is there no answer? | [`error`] |
//! | What does a mole weigh? | [`atomic_weights`] |
//! | What are the equilibrium constants, here and now? | `constants/equilibrium.rs` |
//! | What does a test kit's sample hold, and what of it is conserved? | [`Sample`], [`Water`] |
//! | How acid is it, and does it dissolve or lay down calcite? | [`State`], of `water/solve.rs` |
//! | What do the usual table forms of the index say? | [`langelier`] |
//! | How much of the chlorine is hypochlorous acid? | [`chlorine`] |
//! | What does a conductivity mean as salt? | [`conductivity`] |
//! | How heavy is salt water? | [`density`] |
//! | How much salt for a rise; how much of a reading is salt? | [`salt`] |
//! | How much water to replace? | [`dilution`] |
//! | What does a chemical do to the water? How strong is it? Which lead where? | [`treatment`] |
//! | How much water does a pool of these measures hold? | [`pool_shape`] |
//!
//! # What this crate does not do
//!
//! No judgement (that is `plan`), no clock, no files, no text for people, no unit but the canonical one
//! and those of labels and meters (Baumé, trade percent, millionths of an atmosphere). Bisulfate, phosphate, silicate and fluoride are not modelled. The second step of
//! cyanuric acid is left out: at the edge of the domain it moves the index by 0.0013.
#![doc = ""]
#![doc = include_str!("../REFERENCES.md")]
#![no_std]

#[cfg(test)]
extern crate std;

pub mod bounds;
pub mod chlorine;
pub mod conductivity;
mod constants;
pub mod density;
pub mod dilution;
pub mod error;
pub mod langelier;
pub mod pool_shape;
mod quantity;
pub mod salt;
#[cfg(feature = "serde")]
mod serialize;
pub mod treatment;
mod water;

/// Its code runs as a test.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct Readme;

pub use bounds::{Bounds, OutOfRange, Quantity};
pub use chlorine::ChlorineSpecies;
pub use constants::atomic_weights;
pub use error::{DilutionError, RecipeError, ShapeError, WaterError};
pub use quantity::{derived::*, measured::*};
pub use water::conserved::Water;
pub use water::sample::Sample;
pub use water::solve::State;
