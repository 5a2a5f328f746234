//! What is known about the pool? Records only; nothing is judged here.

pub mod answers;
pub mod case;
pub mod choices;
pub mod limits;
pub mod log;
