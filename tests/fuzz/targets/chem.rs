//! Does any string of bytes, read as draws, break a function of the chemistry?
#![no_main]

use evidence::ask::{Ask, Source};
use evidence::questions::QUESTIONS;
use libfuzzer_sys::fuzz_target;

/// The fuzzer's bytes, eight a draw; nothing but zeros once they are used up.
struct Bytes<'a>(&'a [u8]);

impl Source for Bytes<'_> {
    fn word(&mut self) -> u64 {
        let (now, later) = self.0.split_at(self.0.len().min(8));
        self.0 = later;
        now.iter().rev().fold(0, |word, byte| word << 8 | u64::from(*byte))
    }
}

fuzz_target!(|bytes: &[u8]| {
    let mut ask = Ask(&mut Bytes(bytes));
    let question = ask.one(QUESTIONS);
    question(&mut ask);
});
