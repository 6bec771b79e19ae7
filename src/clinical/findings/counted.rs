//! Tasks that count more than one kind of thing at once: a pad for each.

pub use crate::clinical::findings::marks::Counted;
use crate::clinical::findings::marks::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::measure::time::Stamp;

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
