//! What does a job file hold? The form as typed, by which edition, and when; no results.

use crate::Form;
use crate::read::moment;
use serde::Serialize;

/// A job file of this make.
pub const MAKE: u32 = 1;

/// The file, as JSON has it.
#[derive(Serialize)]
pub struct JobFile<'a> {
    saltwright: u32,
    edition: &'a str,
    saved: String,
    form: &'a Form,
}

impl<'a> JobFile<'a> {
    /// A job saved at this minute.
    pub fn new(form: &'a Form, minutes: i64) -> Self {
        Self { saltwright: MAKE, edition: env!("CARGO_PKG_VERSION"), saved: moment::write(minutes), form }
    }
}
