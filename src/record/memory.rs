//! A store in memory: the contract of [`Store`] in its plainest form. It serves the native
//! tests, and the app as the last resort where the browser keeps nothing.

use std::cell::RefCell;
use std::cmp::Reverse;

use super::envelope::Envelope;

use super::head::Head;
use super::id::VisitId;
use super::store::{Store, StoreError, Stored};
use crate::measure::time::Millis;

/// A store in memory.
#[derive(Debug, Default)]
pub struct MemoryStore {
    events: RefCell<Vec<Envelope>>,
    heads: RefCell<Vec<Head>>,
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

    fn put_head(&self, head: Head) {
        let mut heads = self.heads.borrow_mut();
        heads.retain(|h| h.visit != head.visit);
        heads.push(head);
    }
}

/// Whether two events claim the same place in the same visit.
fn clash(a: &Envelope, b: &Envelope) -> bool {
    a.seq == b.seq && a.visit == b.visit
}

impl Store for MemoryStore {
    async fn append(&self, events: Vec<Envelope>, head: Head) -> Result<(), StoreError> {
        self.check()?;
        let mut kept = self.events.borrow_mut();
        for (i, new) in events.iter().enumerate() {
            let among_themselves = events[..i].iter().any(|e| clash(e, new));
            if among_themselves || kept.iter().any(|e| clash(e, new)) {
                return Err(StoreError::Conflict);
            }
        }
        kept.extend(events);
        self.put_head(head);
        Ok(())
    }

    async fn read(&self, visit: &VisitId) -> Result<Stored, StoreError> {
        self.check()?;
        let mut events: Vec<Envelope> = self
            .events
            .borrow()
            .iter()
            .filter(|e| e.visit == *visit)
            .cloned()
            .collect();
        events.sort_by_key(|event| event.seq);
        Ok((events, Vec::new()))
    }

    async fn heads(&self, most: usize, before: Option<Millis>) -> Result<Vec<Head>, StoreError> {
        self.check()?;
        let mut heads: Vec<Head> = self
            .heads
            .borrow()
            .iter()
            .filter(|h| before.is_none_or(|before| h.touched < before))
            .cloned()
            .collect();
        heads.sort_by_key(|head| Reverse(head.touched));
        heads.truncate(most);
        Ok(heads)
    }

    async fn bury(&self, tombstone: Envelope, head: Head) -> Result<(), StoreError> {
        self.check()?;
        let mut kept = self.events.borrow_mut();
        kept.retain(|e| e.visit != tombstone.visit);
        kept.push(tombstone);
        self.put_head(head);
        Ok(())
    }
}
