//! Tasks that count more than one kind of thing at once: a pad for each.

use serde::{Deserialize, Serialize};

use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
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

/// One pad of several.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnePad {
    /// What its touch counts.
    pub kind: MarkKind,
    /// Its word for one.
    pub one: &'static str,
    /// Its word for many.
    pub many: &'static str,
}

const CRACKER: &[OnePad] = &[
    OnePad {
        kind: MarkKind::Count(Counted::Chew),
        one: "chew",
        many: "chews",
    },
    OnePad {
        kind: MarkKind::Tap,
        one: "bite",
        many: "bites",
    },
    OnePad {
        kind: MarkKind::Count(Counted::Swallow),
        one: "swallow",
        many: "swallows",
    },
];

const MEAL: &[OnePad] = &[
    OnePad {
        kind: MarkKind::Tap,
        one: "swallow",
        many: "swallows",
    },
    OnePad {
        kind: MarkKind::Count(Counted::Breath),
        one: "breath",
        many: "breaths",
    },
];

/// The pads of a task that counts several things; empty where it counts one.
pub fn pads(task: TaskId) -> &'static [OnePad] {
    match task {
        TaskId::Cracker => CRACKER,
        TaskId::Meal => MEAL,
        _ => &[],
    }
}

/// What a press was, in a word or two.
pub fn word(task: TaskId, kind: MarkKind) -> &'static str {
    let pad = pads(task).iter().find(|pad| pad.kind == kind);
    match (kind, pad) {
        (_, Some(pad)) => pad.one,
        (MarkKind::Tap, None) => tasks::spec(task).pad.counts.0,
        (MarkKind::Sign(sign), None) => sign.button(),
        (MarkKind::Count(Counted::Note), None) => "note",
        (MarkKind::Count(_), None) => "tap on the right",
        (MarkKind::Start, None) => "start",
        (MarkKind::End, None) => tasks::spec(task).pad.end.unwrap_or("end"),
        (MarkKind::Stopped, None) => "stopped",
        (MarkKind::WindowOver | MarkKind::WatchOver, None) => "time is up",
    }
}

/// "1 chew", "12 chews".
pub fn counted(n: usize, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
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
