//! A store in memory: the contract of [`Store`] in its plainest form. It serves the native
//! tests, and the app as the last resort where the browser keeps nothing.

use std::cell::RefCell;
use std::collections::BTreeMap;

use super::envelope::{Envelope, VisitId};
use super::head::Head;
use super::store::{Store, StoreError, Stored};
use crate::measure::time::Millis;

/// A store in memory.
#[derive(Debug, Default)]
pub struct MemoryStore {
    events: RefCell<BTreeMap<(VisitId, u32), Envelope>>,
    heads: RefCell<BTreeMap<VisitId, Head>>,
    fails: RefCell<Option<StoreError>>,
}

impl MemoryStore {
    /// Makes every following call fail, or work again.
    pub fn fail_with(&self, error: Option<StoreError>) {
        *self.fails.borrow_mut() = error;
    }

    fn check(&self) -> Result<(), StoreError> {
        self.fails.borrow().clone().map_or(Ok(()), Err)
    }
}

impl Store for MemoryStore {
    async fn append(&self, events: Vec<Envelope>, head: Head) -> Result<(), StoreError> {
        self.check()?;
        let mut kept = self.events.borrow_mut();
        let key = |e: &Envelope| (e.visit.clone(), e.seq);
        let mut new = std::collections::BTreeSet::new();
        if events
            .iter()
            .any(|e| kept.contains_key(&key(e)) || !new.insert(key(e)))
        {
            return Err(StoreError::Conflict);
        }
        kept.extend(events.into_iter().map(|e| (key(&e), e)));
        self.heads.borrow_mut().insert(head.visit.clone(), head);
        Ok(())
    }

    async fn read(&self, visit: &VisitId) -> Result<Stored, StoreError> {
        self.check()?;
        let events = self
            .events
            .borrow()
            .iter()
            .filter(|((of, _), _)| of == visit)
            .map(|(_, e)| e.clone())
            .collect();
        Ok((events, Vec::new()))
    }

    async fn heads(&self, most: usize, before: Option<Millis>) -> Result<Vec<Head>, StoreError> {
        self.check()?;
        let mut heads: Vec<Head> = self
            .heads
            .borrow()
            .values()
            .filter(|h| before.is_none_or(|before| h.touched < before))
            .cloned()
            .collect();
        heads.sort_by_key(|h| std::cmp::Reverse(h.touched));
        heads.truncate(most);
        Ok(heads)
    }

    async fn bury(&self, tombstone: Envelope, head: Head) -> Result<(), StoreError> {
        self.check()?;
        let mut kept = self.events.borrow_mut();
        kept.retain(|(of, _), _| *of != tombstone.visit);
        kept.insert((tombstone.visit.clone(), tombstone.seq), tombstone);
        self.heads.borrow_mut().insert(head.visit.clone(), head);
        Ok(())
    }
}
