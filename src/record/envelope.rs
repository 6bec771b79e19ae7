//! The envelope around every event, the same from the first day on.

use serde::{Deserialize, Serialize};

use super::event::Event;
use super::id::VisitId;
use crate::measure::time::Stamp;

/// The version of [`Event`] that this app writes.
pub const SCHEMA: u16 = 1;

/// One event as it is stored.
///
/// The body is the event as JSON text, so that it can be read, exported and, with a key, sealed
/// without knowing it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Envelope {
    /// The device that wrote it.
    pub device: String,
    /// Its visit.
    pub visit: VisitId,
    /// Its place in the visit, from 0, without gaps.
    pub seq: u32,
    /// The version of the body.
    pub schema: u16,
    /// The key the body is sealed with; empty for none.
    pub key: String,
    /// When it was written, by both clocks.
    pub at: Stamp,
    /// The event.
    pub body: String,
}

/// Why an event can't be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Written by a newer version of the app.
    Newer(u16),
    /// Sealed with a key that is not here.
    Sealed,
    /// Damaged.
    Damaged,
}

impl Envelope {
    /// Reads the body.
    ///
    /// # Errors
    /// [`Unreadable`]; the envelope itself stays as it is.
    pub fn open(&self) -> Result<Event, Unreadable> {
        if !self.key.is_empty() {
            return Err(Unreadable::Sealed);
        }
        if self.schema > SCHEMA {
            return Err(Unreadable::Newer(self.schema));
        }
        serde_json::from_str(&self.body).map_err(|_| Unreadable::Damaged)
    }
}

/// The text of an event for an envelope.
///
/// # Errors
/// [`serde_json::Error`] where it can't be written: then nothing may be stored in its place.
pub fn body(event: &Event) -> serde_json::Result<String> {
    serde_json::to_string(event)
}
