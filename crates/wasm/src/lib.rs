//! The door: text in, names with texts and states out. The only crate that knows of a browser.
//!
//! | Question | Room |
//! |---|---|
//! | Which questions are there? | [`field`] |
//! | What does a unit mean, and how is it shown? | [`unit`] |
//! | How is a number read and written? | [`number`] |
//! | What did the person type, and what of it can be used? | [`form`] |
//! | What goes back to the page? | [`answer`] |
//! | Which name shows which part of the plan? | `fill` |
//! | How does an answer cross to a script? | [`plain`] |
//! | What can a script call? | [`door`] |
//! | Who listens to the page? | `desk` |
//! | Who writes on the page? | `dom` |

pub mod answer;
mod desk;
mod dom;
pub mod door;
pub mod field;
mod fill;
pub mod form;
pub mod number;
pub mod plain;
pub mod unit;

pub use answer::{Answer, Shown, answer};
pub use form::Form;

#[cfg(target_family = "wasm")]
#[global_allocator]
static ALLOCATOR: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();
