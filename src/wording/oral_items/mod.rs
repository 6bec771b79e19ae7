//! What is looked at in face, mouth and throat, in words: what to ask, what to look for, what can be
//! found. A file a region, keyed by the ids of [`crate::clinical::knowledge::oral`].

mod face;
mod feeling;
mod gag;
mod item_words;
mod items;
mod jaw;
mod lips;
mod mouth;
mod nerves;
mod palate;
mod regions;
mod tongue;
mod voice;

pub use items::{ask, care, exception, look, name, name_within, towards};
pub use nerves::{nerve, nerve_heading, nerve_number, side};
pub use regions::{region_care, region_title, region_within};
