//! Tasks that count more than one kind of thing at once: a pad for each.

pub use crate::clinical::findings::marks::Counted;
use crate::clinical::findings::marks::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::measure::time::Stamp;

/// What is counted, a pad each, on a task that counts several things; empty where it counts one.
pub const fn pads(task: TaskId) -> &'static [MarkKind] {
    match task {
        TaskId::Cracker => &[
            MarkKind::Count(Counted::Chew),
            MarkKind::Tap,
            MarkKind::Count(Counted::Swallow),
        ],
        TaskId::Meal => &[MarkKind::Tap, MarkKind::Count(Counted::Breath)],
        _ => &[],
    }
}

/// The question under which the words of a note are kept: its time makes it the note's own.
pub fn note_id(at: Stamp) -> String {
    format!("note.{}", at.wall.0)
}
