//! The pads of a task that counts several kinds of things.

use crate::clinical::findings::counted::Counted;
use crate::clinical::findings::trial::MarkKind;
use crate::clinical::knowledge::task::TaskId;

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
