//! What is looked at in face, mouth and throat: the items as data, a file a region.
//!
//! Sides are the patient's. The gag is never before a swallow trial.

mod face;
mod feeling;
mod gag;
pub mod item;
mod jaw;
mod lips;
mod mouth;
pub mod nerve;
mod palate;
pub mod region;
mod tongue;
mod voice;

pub use item::{By, Cranial, Exception, Item, Points, Sided, Takes};
pub use region::{Examination, Region};

/// Every item, in the order looked at.
pub fn items() -> impl Iterator<Item = &'static Item> {
    Region::ALL.into_iter().flat_map(|region| region.items())
}

/// The item with an id.
pub fn find(id: &str) -> Option<&'static Item> {
    items().find(|item| item.id == id)
}
