//! Just count something: a stopwatch, a window of any length, taps. No rule looks at it.

use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Length, Pad, TaskSpec};

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    title: "Just count something",
    steps: &[],
    say: "",
    pad: Pad {
        counts: ("tap", "taps"),
        start: "Start",
        length: Length::Chosen,
        end: Some("Stop"),
        countdown: true,
        ..Pad::PLAIN
    },
    questions: &[],
    caveat: "A count and a time, compared with nothing.",
    for_whom: "Whatever is to be counted: no rule reads it.",
    rules: &[],
    slug: "count",
    alone: false,
    ..TaskSpec::plain(TaskId::FreeCount)
};
