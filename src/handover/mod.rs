//! From a record to the text that leaves the phone.
//!
//! Pure. Words a ward uses, the decision first.
//!
//! **Invariant:** a diet level is written only where the clinician picked it; nothing here
//! derives one.

pub mod action;
mod changed;
pub mod full_note;
mod issue;
pub mod nursing;
pub mod outdated;
mod parts;
mod screened;

pub use crate::clinical::knowledge::levels;
pub mod tally;
pub mod untested;
