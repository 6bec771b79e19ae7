//! Tasks that count more than one kind of thing at once: a pad for each.

use serde::{Deserialize, Serialize};

use crate::measure::time::Stamp;

/// A thing counted beside the plain taps of a trial.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Counted {
    /// Chewed once.
    Chew,
    /// Swallowed.
    Swallow,
    /// Breathed in.
    Breath,
    /// The other thing, on the right one of two pads.
    Other,
    /// A remark in words, kept as an answer under [`note_id`].
    Note,
}

/// The question under which the words of a note are kept: its time makes it the note's own.
pub fn note_id(at: Stamp) -> String {
    format!("note.{}", at.wall.0)
}
