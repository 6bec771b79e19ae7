//! Words for what is counted.

use crate::clinical::findings::counted::Counted;
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::task::TaskId;
use crate::wording::tasks;
pub use crate::wording::words::counted;

/// One and many of what a pad counts, on a task that has several; none for what has no pad there.
pub const fn pad(task: TaskId, kind: MarkKind) -> Option<(&'static str, &'static str)> {
    match (task, kind) {
        (TaskId::Cracker, MarkKind::Count(Counted::Chew)) => Some(("chew", "chews")),
        (TaskId::Cracker, MarkKind::Tap) => Some(("bite", "bites")),
        (TaskId::Cracker, MarkKind::Count(Counted::Swallow)) | (TaskId::Meal, MarkKind::Tap) => {
            Some(("swallow", "swallows"))
        }
        (TaskId::Meal, MarkKind::Count(Counted::Breath)) => Some(("breath", "breaths")),
        _ => None,
    }
}

/// What a press was, in a word or two.
pub fn word(task: TaskId, kind: MarkKind) -> &'static str {
    if let Some((one, _)) = pad(task, kind) {
        return one;
    }
    match kind {
        MarkKind::Tap => tasks::of(task).counts.0,
        MarkKind::Sign(sign) => sign.button(),
        MarkKind::Count(Counted::Note) => "note",
        MarkKind::Count(_) => "tap on the right",
        MarkKind::Start => "start",
        MarkKind::End => tasks::of(task).end.unwrap_or("end"),
        MarkKind::Stopped => "stopped",
        MarkKind::WindowOver | MarkKind::WatchOver => "time is up",
    }
}
