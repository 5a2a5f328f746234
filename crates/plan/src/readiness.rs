//! May the salt go in, and the generator on?

pub mod gates;
pub mod go;
pub mod inputs;
pub mod judge;
pub mod verdict;
