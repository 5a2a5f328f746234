//! Which constants does everything else go by?

pub mod atomic_weights;
pub(crate) mod equilibrium;
