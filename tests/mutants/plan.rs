//! Does any check of the plan notice that it was changed? All of them in one program.
//!
//! As `chemistry.rs` is for the chemistry: not of the daily test, which runs each where it lies.

#[path = "../invariants/answer.rs"]
mod answer;
#[path = "../cases/main.rs"]
mod cases;
#[path = "../invariants/decision.rs"]
mod decision;
#[path = "../invariants/operation.rs"]
mod operation;
#[path = "../published/main.rs"]
mod published;
#[path = "../thresholds/main.rs"]
mod thresholds;
