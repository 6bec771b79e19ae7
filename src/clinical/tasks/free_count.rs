//! Just count something: a stopwatch, a window of any length, taps. No rule looks at it.

use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Length, Pad, TaskSpec};

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::FreeCount,
    by_mouth: false,
    pad: Pad {
        counts: true,
        length: Length::Chosen,
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        watch: None,
        signs: None,
        countdown: true,
    },
    questions: &[],
    trials: 1,
    usual: |_| Vec::new(),
    compare: |_| Vec::new(),
    untimed: None,
    rules: &[],
    not_for: |_, _| None,
};
