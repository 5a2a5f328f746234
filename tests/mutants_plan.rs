//! Does any check of the plan notice that it was changed? All of them in one program.
//!
//! As `mutants.rs` is for the chemistry: not of the daily test, which runs each where it lies.
#![allow(clippy::duplicate_mod)] // Several of them draw, each for itself.

#[path = "cases.rs"]
mod cases;
#[path = "limits.rs"]
mod limits;
#[path = "properties.rs"]
mod properties;
#[path = "running.rs"]
mod running;
#[path = "staging.rs"]
mod staging;
#[path = "treat.rs"]
mod treat;
