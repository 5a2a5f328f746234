//! What lies in a store that anybody may have written to?

use form::job_journal::Store;
use std::cell::RefCell;
use std::collections::BTreeMap;

#[derive(Clone, Default)]
pub struct Memory(RefCell<BTreeMap<String, String>>);

impl Store for Memory {
    fn get(&self, key: &str) -> Option<String> {
        self.0.borrow().get(key).cloned()
    }

    fn set(&self, key: &str, text: &str) -> bool {
        self.0.borrow_mut().insert(key.into(), text.into());
        true
    }

    fn remove(&self, key: &str) {
        self.0.borrow_mut().remove(key);
    }

    fn keys(&self) -> Vec<String> {
        self.0.borrow().keys().cloned().collect()
    }
}

impl Memory {
    /// Cuts the text that was written since, as a power cut would.
    pub fn cut_what_differs(&self, before: &Self, at: usize) {
        for (key, text) in self.0.borrow_mut().iter_mut() {
            if before.get(key).as_ref() != Some(text) {
                let end = (0..=at % text.len()).rev().find(|end| text.is_char_boundary(*end)).unwrap_or(0);
                text.truncate(end);
            }
        }
    }
}

/// A text under the seal that a forger would give it: FNV-1a, as the page itself does.
pub fn sealed(text: &str) -> String {
    let sum = text
        .bytes()
        .fold(0xcbf2_9ce4_8422_2325_u64, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3));
    format!("{sum} {text}")
}
