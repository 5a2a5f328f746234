//! What does the water need besides salt?

pub mod balance;
pub mod product;
pub mod replacement;
pub mod size;
pub mod treatment;
