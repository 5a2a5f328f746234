//! In which unit does a number stand? One type a meaning, one canonical unit inside.

pub(crate) mod define;
pub(crate) mod derived;
pub(crate) mod measured;
mod ops;
