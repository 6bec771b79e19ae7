//! The fallback store: localStorage.
//!
//! **It is not safe**: Chromium writes it to the disk seconds later, at worst after a minute, so
//! a killed browser loses the newest records; and it holds about five million characters. It
//! serves where IndexedDB can't be had, with a warning.

use std::cmp::Reverse;

use wasm_bindgen::JsValue;
use web_sys::Storage;

use super::{error_name, error_words, local_storage};
use crate::measure::time::Millis;
use crate::record::envelope::Envelope;
use crate::record::head::Head;
use crate::record::id::VisitId;
use crate::record::store::{Raw, Store, StoreError, Stored};

const EVENT: &str = "penlight.e.";
const HEAD: &str = "penlight.h.";
const PROBE: &str = "penlight.probe";

/// The store over localStorage.
#[derive(Debug)]
pub struct LocalStore {
    storage: Storage,
}

impl LocalStore {
    /// Takes localStorage, if it can be written.
    ///
    /// # Errors
    /// [`StoreError::Missing`] or [`StoreError::Full`].
    pub fn open() -> Result<LocalStore, StoreError> {
        let storage = local_storage().ok_or(StoreError::Missing)?;
        // Some private windows offer it with no room at all.
        storage
            .set_item(PROBE, "")
            .map_err(|error| failed(&error))?;
        storage.remove_item(PROBE).map_err(|error| failed(&error))?;
        Ok(LocalStore { storage })
    }

    /// Removes a visit's readable events, and its head if nothing else is left of it. For
    /// records that have been moved to the safe store, and only for those.
    pub(super) fn let_go(&self, events: &[Envelope]) {
        let Some(visit) = events.first().map(|event| &event.visit) else {
            return;
        };
        for event in events {
            let _ = self.storage.remove_item(&event_key(visit, event.seq));
        }
        if self.event_keys(visit).is_ok_and(|left| left.is_empty()) {
            let _ = self.storage.remove_item(&head_key(visit));
        }
    }

    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.storage.get_item(key).map_err(|error| failed(&error))
    }

    fn keys(&self, prefix: &str) -> Result<Vec<String>, StoreError> {
        let all = self.storage.length().map_err(|error| failed(&error))?;
        let mut keys = Vec::new();
        for n in 0..all {
            let key = self.storage.key(n).map_err(|error| failed(&error))?;
            keys.extend(key.filter(|key| key.starts_with(prefix)));
        }
        Ok(keys)
    }

    /// The keys of a visit's events, in order of sequence.
    fn event_keys(&self, visit: &VisitId) -> Result<Vec<String>, StoreError> {
        let mut keys = self.keys(&event_prefix(visit))?;
        keys.sort_by_key(|key| sequence(key));
        Ok(keys)
    }

    /// Writes all of it or none of it.
    fn write(&self, items: &[(String, String)]) -> Result<(), StoreError> {
        let mut before = Vec::new();
        for (key, value) in items {
            before.push((key, self.get(key)?));
            if let Err(error) = self.storage.set_item(key, value) {
                for (key, value) in before.into_iter().rev() {
                    // What was there a moment ago still has room, and removing needs none.
                    let _ = match value {
                        Some(value) => self.storage.set_item(key, &value),
                        None => self.storage.remove_item(key),
                    };
                }
                return Err(failed(&error));
            }
        }
        Ok(())
    }
}

impl Store for LocalStore {
    async fn append(&self, events: Vec<Envelope>, head: Head) -> Result<(), StoreError> {
        let mut items = Vec::new();
        for event in &events {
            let key = event_key(&event.visit, event.seq);
            if self.get(&key)?.is_some() || items.iter().any(|(taken, _)| *taken == key) {
                return Err(StoreError::Conflict);
            }
            items.push((key, json(event)?));
        }
        items.push((head_key(&head.visit), json(&head)?));
        self.write(&items)
    }

    async fn read(&self, visit: &VisitId) -> Result<Stored, StoreError> {
        let mut stored = Stored::default();
        for key in self.event_keys(visit)? {
            // None where another window has just removed it.
            let Some(text) = self.get(&key)? else {
                continue;
            };
            match serde_json::from_str(&text) {
                Ok(envelope) => stored.0.push(envelope),
                Err(_) => stored.1.push(Raw(text)),
            }
        }
        Ok(stored)
    }

    async fn heads(&self, most: usize, before: Option<Millis>) -> Result<Vec<Head>, StoreError> {
        let mut heads = Vec::new();
        for key in self.keys(HEAD)? {
            let head = self
                .get(&key)?
                .and_then(|text| serde_json::from_str::<Head>(&text).ok())
                .filter(|head| before.is_none_or(|before| head.touched < before));
            heads.extend(head);
        }
        heads.sort_by_key(|head| Reverse(head.touched));
        heads.truncate(most);
        Ok(heads)
    }

    async fn bury(&self, tombstone: Envelope, head: Head) -> Result<(), StoreError> {
        let items = [
            (
                event_key(&tombstone.visit, tombstone.seq),
                json(&tombstone)?,
            ),
            (head_key(&head.visit), json(&head)?),
        ];
        // Removed first: on a full storage there is no room for the tombstone before.
        let mut removed = Vec::new();
        for key in self.event_keys(&tombstone.visit)? {
            removed.extend(self.get(&key)?.map(|text| (key, text)));
        }
        for (key, _) in &removed {
            self.storage
                .remove_item(key)
                .map_err(|error| failed(&error))?;
        }
        let written = self.write(&items);
        if written.is_err() {
            let _ = self.write(&removed);
        }
        written
    }
}

fn event_prefix(visit: &VisitId) -> String {
    format!("{EVENT}{}.", visit.as_str())
}

fn event_key(visit: &VisitId, seq: u32) -> String {
    format!("{}{seq}", event_prefix(visit))
}

fn head_key(visit: &VisitId) -> String {
    format!("{HEAD}{}", visit.as_str())
}

/// The sequence number at the end of a key; none sorts first and is still read.
fn sequence(key: &str) -> Option<u32> {
    key.rsplit_once('.')?.1.parse().ok()
}

fn json(value: &impl serde::Serialize) -> Result<String, StoreError> {
    serde_json::to_string(value).map_err(|error| StoreError::Broken(error.to_string()))
}

fn failed(error: &JsValue) -> StoreError {
    match error_name(error).as_str() {
        // Firefox's older name is of the same kind.
        "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => StoreError::Full,
        "SecurityError" => StoreError::Missing,
        _ => StoreError::Broken(error_words(error)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_sort_by_number_and_not_by_letter() {
        let visit = VisitId::new("0123456789abcdef").unwrap();
        let mut keys = [10, 9, 100].map(|seq| event_key(&visit, seq));
        keys.sort_by_key(|key| sequence(key));
        assert_eq!(keys[0], "penlight.e.0123456789abcdef.9");
        assert_eq!(keys[2], "penlight.e.0123456789abcdef.100");
    }
}
