//! Tasks that count more than one kind of thing at once: a pad for each.

pub use crate::clinical::findings::marks::Counted;
use crate::measure::time::Stamp;

/// The question under which the words of a note are kept: its time makes it the note's own.
pub fn note_id(at: Stamp) -> String {
    format!("note.{}", at.wall.0)
}
