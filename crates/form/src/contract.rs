//! Which names make up the contract between page and code?

pub mod fields;
pub mod lint;
pub mod names;
pub mod units;
