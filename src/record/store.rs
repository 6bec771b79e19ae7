//! Where events are kept, as far as the rest of the house knows.

use std::future::Future;

use super::envelope::Envelope;

use super::head::Head;
use super::id::VisitId;
use crate::measure::time::Millis;

/// Why a store did not do what was asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// There is no such store here (private mode, switched off).
    Missing,
    /// No space left.
    Full,
    /// Another window holds it, or is upgrading it.
    Locked,
    /// Another window wrote to the same visit.
    Conflict,
    /// Anything else, in the browser's own words.
    Broken(String),
}

/// A record that is not even an envelope: set aside with its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Raw(pub String);

/// What a read brings: envelopes, and what was none.
pub type Stored = (Vec<Envelope>, Vec<Raw>);

/// An append-only store of events.
///
/// **Contract:** `append` is all or nothing, is durable when it returns, and fails with
/// [`StoreError::Conflict`] where one of the sequence numbers is taken. Nothing but `bury`
/// removes anything.
pub trait Store {
    /// Adds events of one visit together with its new head.
    fn append(
        &self,
        events: Vec<Envelope>,
        head: Head,
    ) -> impl Future<Output = Result<(), StoreError>>;

    /// All events of a visit, in order of sequence.
    fn read(&self, visit: &VisitId) -> impl Future<Output = Result<Stored, StoreError>>;

    /// Heads, newest touched first, at most `most`, only those touched before `before`.
    fn heads(
        &self,
        most: usize,
        before: Option<Millis>,
    ) -> impl Future<Output = Result<Vec<Head>, StoreError>>;

    /// Removes a visit's events and puts the tombstone in their place, all or nothing.
    fn bury(&self, tombstone: Envelope, head: Head)
    -> impl Future<Output = Result<(), StoreError>>;
}
