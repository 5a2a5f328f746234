//! Which constants does everything else go by?

pub(crate) mod activity;
pub mod atomic_weights;
pub(crate) mod equilibrium;
