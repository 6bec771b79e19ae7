//! The examination of face, mouth and throat: what is looked at, what was found, what it means.
//!
//! The items are data ([`item`], one file a region); the answers are typed so that what can't be
//! can't be written ([`answer`]); the journal's fold of them is [`Oral`]; what they point to is
//! [`points`], what the rules say [`flags`], the words for the ward [`told`].
//!
//! **Invariants:** an item without an answer was not tested, and "not tested" is never "as
//! expected". One press settles only the items it names. Sides are the patient's. The gag is
//! never before a swallow trial.

pub mod against_gate;
pub mod answer;
mod face;
mod feeling;
pub mod findings;
pub mod flags;
mod gag;
pub mod item;
mod jaw;
mod lips;
mod mouth;
mod palate;
pub mod points;
mod record;
pub mod region;
pub mod told;
mod tongue;
mod voice;

pub use answer::{Answer, Found, FoundId, Reason, Seen, Severity, Sides, Touches};
pub use item::{By, Cranial, Exception, Item, Points, Sided, Takes};
pub use record::{Cue, Oral};
pub use region::{Examination, Region};

/// Every item, in the order looked at.
pub fn items() -> impl Iterator<Item = &'static Item> {
    Region::ALL.into_iter().flat_map(|region| region.items())
}

/// The item with an id.
pub fn find(id: &str) -> Option<&'static Item> {
    items().find(|item| item.id == id)
}
