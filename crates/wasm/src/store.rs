//! The device's own store; the only place that touches it. Any of it may fail, and says so.

use crate::keep::Store;
use web_sys::{Storage, Window};

/// The store, if this page may have one.
pub struct Device(Option<Storage>);

impl Device {
    /// A page in a sandbox has none: asking for it throws.
    pub fn of(window: &Window) -> Self {
        Self(window.local_storage().ok().flatten())
    }
}

impl Store for Device {
    fn get(&self, key: &str) -> Option<String> {
        self.0.as_ref()?.get_item(key).ok()?
    }

    fn set(&self, key: &str, text: &str) -> bool {
        self.0.as_ref().is_some_and(|store| store.set_item(key, text).is_ok())
    }

    fn remove(&self, key: &str) {
        if let Some(store) = &self.0 {
            let _ = store.remove_item(key);
        }
    }

    fn keys(&self) -> Vec<String> {
        let Some(store) = &self.0 else { return Vec::new() };
        (0..store.length().unwrap_or(0)).filter_map(|at| store.key(at).ok()?).collect()
    }
}
