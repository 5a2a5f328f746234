//! Do chemistry and plan link where there is neither an operating system nor a heap?
//!
//! Whoever asks for a heap needs somebody to provide it, and here nobody does.
#![no_std]

use chem::Sample;
use core::panic::PanicInfo;
use plan::Case;

#[cfg(feature = "heap")]
extern crate alloc;

/// All of both crates' work.
pub fn may_salt_go_in(case: &Case, sample: &Sample) -> bool {
    let index = sample.state().is_ok_and(|state| state.index.is_some());
    #[cfg(feature = "heap")]
    let index = *alloc::boxed::Box::new(index);
    index && plan::plan(case).go == plan::Go::Yes
}

/// And what serde adds to it.
#[cfg(feature = "serde")]
pub fn both_ways<'de, S: serde::Serializer, D: serde::Deserializer<'de>>(
    to: S,
    from: D,
) -> Result<S::Ok, S::Error> {
    use serde::{Deserialize, Serialize};
    match Case::deserialize(from) {
        Ok(case) => plan::plan(&case).serialize(to),
        Err(_) => Case::default().serialize(to),
    }
}

#[panic_handler]
fn end(_: &PanicInfo) -> ! {
    loop {}
}
