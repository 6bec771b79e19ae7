//! Just count something: a stopwatch, a window of any length, taps. No rule looks at it.

use crate::clinical::task::{Length, Pad, TaskId, TaskSpec};

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
        late: None,
        end: Some("Stop"),
        watch: None,
        signs: None,
        countdown: true,
    },
    more: "",
    questions: &[],
    caveat: "A count and a time, compared with nothing.",
    compare: |_, _| Vec::new(),
    not_for: |_, _| None,
};
