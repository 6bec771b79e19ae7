//! Just count something: a stopwatch, a window of any length, taps. No rule looks at it.

use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Length, Pad, TaskSpec};

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::FreeCount,
    title: "Just count something",
    steps: &[],
    say: "",
    by_mouth: false,
    pad: Pad {
        counts: ("tap", "taps"),
        start: "Start",
        length: Length::Chosen,
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        end: Some("Stop"),
        watch: None,
        signs: None,
        countdown: true,
    },
    more: "",
    questions: &[],
    trials: 1,
    usual: |_| Vec::new(),
    caveat: "A count and a time, compared with nothing.",
    compare: |_| Vec::new(),
    untimed: None,
    for_whom: "Whatever is to be counted: no rule reads it.",
    rules: &[],
    not_for: |_, _| None,
};
