//! Tasks that count more than one kind of thing at once: a pad for each.

use serde::{Deserialize, Serialize};

use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::measure::time::{Millis, Stamp};

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

impl Trial {
    /// How many marks of a kind there are.
    pub fn count_of(&self, kind: MarkKind) -> usize {
        self.marks.iter().filter(|m| m.kind == kind).count()
    }

    /// Offsets of all marks of a kind from the start, without one whose distance can't be known.
    pub fn offsets_of(&self, kind: MarkKind) -> Vec<Millis> {
        let Some(start) = self.start() else {
            return Vec::new();
        };
        self.marks
            .iter()
            .filter(|m| m.kind == kind)
            .filter_map(|m| self.between(start, m.at).length)
            .collect()
    }
}
