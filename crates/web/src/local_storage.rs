//! The device's own store; the only place that touches it. Any of it may fail, and says so.

use form::job_journal::Store;
use form::text::joined;
use web_sys::{Storage, Window};

/// The store, if this page may have one.
pub struct Device {
    store: Option<Storage>,
    /// In front of every key: two forms of one address have nothing to do with each other.
    before: String,
}

impl Device {
    /// For a form of this id. A page in a sandbox has no store: asking for it throws.
    pub fn of(window: &Window, id: &str) -> Self {
        let before = if id.is_empty() { String::new() } else { joined(&[id, ":"]) };
        Self { store: window.local_storage().ok().flatten(), before }
    }

    /// Is there one at all?
    pub fn is_there(&self) -> bool {
        self.store.is_some()
    }

    /// This form's own name for a key of the store, if it is one of its keys.
    pub fn own<'a>(&self, key: &'a str) -> Option<&'a str> {
        key.strip_prefix(self.before.as_str())
    }
}

impl Store for Device {
    fn get(&self, key: &str) -> Option<String> {
        self.store.as_ref()?.get_item(&joined(&[&self.before, key])).ok()?
    }

    fn set(&self, key: &str, text: &str) -> bool {
        let key = joined(&[&self.before, key]);
        self.store.as_ref().is_some_and(|store| store.set_item(&key, text).is_ok())
    }

    fn remove(&self, key: &str) {
        if let Some(store) = &self.store {
            let _ = store.remove_item(&joined(&[&self.before, key]));
        }
    }

    fn keys(&self) -> Vec<String> {
        let Some(store) = &self.store else { return Vec::new() };
        let mut keys = Vec::new();
        for at in 0..store.length().unwrap_or(0) {
            if let Ok(Some(key)) = store.key(at) {
                keys.extend(self.own(&key).map(String::from));
            }
        }
        keys
    }
}
