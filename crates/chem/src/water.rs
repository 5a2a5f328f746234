//! What is in the water, how acid is it, and does it dissolve calcite or lay it down?

pub(crate) mod conserved;
pub(crate) mod sample;
pub(crate) mod solve;
