//! Judgement: from one case to what to buy, what to add, what to leave alone.
//!
//! Everything is a pure function of the [`Case`]: no clock, no files, no chance, and no text for
//! people. What is missing is named ([`Needs`]), not guessed, and never counts as passed.
//!
//! | Question | Room |
//! |---|---|
//! | What is known about the pool? Records, none of which judges. | [`input`] |
//! | Which numbers are choices, and whose? | [`policy`] |
//! | How much salt, in the face of doubt? | [`salt`] |
//! | What does the water need besides salt? | [`water`] |
//! | May the salt go in, and the generator on? | [`readiness`] |
//! | What is to be done when? | [`schedule`] |
//! | How is the output to be set? What does a season take? | [`operation`] |
//! | In which order does all of it follow? | [`plan()`], in `plan.rs` |
//!
//! Feature `serde`, off unless asked for: [`Case`] and [`Plan`] as JSON and the like. Choices have their codes
//! there; a case names what it knows and nothing else.
#![no_std]

pub mod input;
pub mod operation;
mod plan;
pub mod policy;
pub mod readiness;
pub mod salt;
pub mod schedule;
#[cfg(feature = "serde")]
mod serialize;
pub mod water;

pub use input::answers::*;
pub use input::case::*;
pub use input::choices::*;
pub use input::{limits, log};
pub use plan::{AtWork, Plan, plan};
pub use readiness::gates::{Gate, Gates};
pub use readiness::go::Go;
pub use readiness::verdict::Verdict;
pub use salt::code::{Code, Standing};
pub use salt::decide::Decision;
pub use salt::job::Job;
pub use salt::salt_input::SaltInput;
pub use salt::salt_plan::SaltPlan;
pub use schedule::Schedule;
pub use water::balance::Balance;
pub use water::replacement::{Excess, Replace};
pub use water::treatment::Treatment;

#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct Readme;
