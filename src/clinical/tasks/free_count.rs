//! Just count something: a stopwatch, a window of any length, taps. No rule looks at it.

use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Length, Pad, TaskSpec};

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        counts: true,
        length: Length::Chosen,
        countdown: true,
        ..Pad::PLAIN
    },
    questions: &[],
    rules: &[],
    slug: "count",
    two_things: true,
    alone: false,
    ..TaskSpec::plain(TaskId::FreeCount)
};
