//! What was typed, and which case does it make?

mod answers;
pub(crate) mod case;
pub mod length;
pub mod moment;
pub mod number;
pub(crate) mod pool;
pub(crate) mod reader;
