//! Prepared settings, kept by value: the same opening asked about again is not prepared again.
//!
//! While a customer picks, the measures, facts, book and day of a request stay the same, and only the picks change. The key is
//! the request without picks and pins, encoded.
//!
//! Always holds: two requests share a setting only when every byte of that part is the same. What had a fault is not kept.
//! LIMIT: [`SETTINGS_MAX`] settings; the one that was not used for longest goes first.
//! Cost: a comparison of keys a setting that is kept.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

/// How many settings are kept.
const SETTINGS_MAX: usize = 16;

/// A few values by key, those used last at the front.
pub(super) struct Cache<T> {
    kept: Mutex<VecDeque<(Vec<u8>, Arc<T>)>>,
}

impl<T> Default for Cache<T> {
    fn default() -> Self {
        Self {
            kept: Mutex::new(VecDeque::new()),
        }
    }
}

impl<T> Cache<T> {
    /// The value with this key, which is made where it is not kept. Making it holds nobody up.
    pub(super) fn find_or<E>(&self, key: Vec<u8>, make: impl FnOnce() -> Result<T, E>) -> Result<Arc<T>, E> {
        if let Some(found) = self.find(&key) {
            return Ok(found);
        }
        let made = Arc::new(make()?);
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.push_front((key, Arc::clone(&made)));
        kept.truncate(SETTINGS_MAX);
        Ok(made)
    }

    /// The value with this key, where it is kept.
    pub(super) fn find(&self, key: &[u8]) -> Option<Arc<T>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let at = kept.iter().position(|(found, _)| found == key)?;
        let found = kept.remove(at)?;
        let value = Arc::clone(&found.1);
        kept.push_front(found);
        Some(value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_value_used_longest_ago_goes_first_and_what_fails_is_not_kept() {
        let cache = Cache::default();
        let keep = |key: u8| cache.find_or(vec![key], || Ok::<u8, ()>(key)).expect("made");
        let is_kept = |key: u8| cache.find(&[key]).is_some();
        assert_eq!(cache.find_or(vec![0], || Err::<u8, &str>("no")), Err("no"));
        assert!(!is_kept(0));
        for key in 0..16 {
            keep(key);
        }
        assert!(is_kept(0), "used again");
        keep(16);
        assert!(is_kept(0) && !is_kept(1) && is_kept(16));
    }
}
