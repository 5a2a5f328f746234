//! What was typed, and which case does it make?

mod answers;
pub(crate) mod case;
pub mod length;
mod log;
pub mod moment;
pub mod number;
mod pool;
pub(crate) mod reader;
