//! Visits as an append-only journal.
//!
//! Pure, over a small [`store::Store`]. One event per press or answer; a visit is nothing but the
//! fold of its events.
//!
//! **Invariants:** an event that was stored is never rewritten; order is by sequence, never by a
//! clock; what can't be read is set aside, never deleted; a deletion leaves a tombstone.

pub mod called;
pub mod clears;
pub mod envelope;
pub mod event;
pub mod export;
pub mod head;
pub mod id;
pub mod memory;
pub mod queue;
pub mod skip;
pub mod step;
pub mod store;
pub mod visit;
pub mod way;
