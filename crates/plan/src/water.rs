//! What does the water need besides salt?

pub mod balance;
pub mod drain;
pub mod effort;
pub mod product;
mod recipe;
pub mod replacement;
pub mod size;
pub mod treatment;
