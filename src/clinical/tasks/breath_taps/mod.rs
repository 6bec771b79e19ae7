//! Breathing by a tap at every breath, and the count of 30 seconds.
//!
//! Both are quicker than the count of 60 seconds and neither clears an adult. Nothing is dropped
//! in silence: intervals that are off are counted and said.

mod flags;
pub mod judge;
mod reading;

pub use flags::flags;
pub use reading::{Even, Running, STATE, asks_state, rate, running, state};

use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath_taps::reading::THIRTY;
use crate::clinical::tasks::spec::{Length, Pad, Question, Takes, TaskSpec, When};

/// The question about being awake or asleep.
pub const ASK_STATE: Question = Question {
    id: STATE,
    when: When::Before,
    takes: Takes::OneOf(&["awake", "asleep"]),
    only_if: None,
    needed: true,
};

const fn pad(length: Length, first_counts: bool) -> Pad {
    Pad {
        counts: true,
        length,
        first_counts,
        touch_ends: false,
        beat: None,
        late: None,
        watch: None,
        signs: None,
        countdown: false,
    }
}

/// By taps.
pub static TAPS: TaskSpec = TaskSpec {
    id: TaskId::BreathTaps,
    by_mouth: false,
    pad: pad(Length::Open, true),
    questions: &[ASK_STATE],
    trials: 1,
    usual: |_| Vec::new(),
    compare: |_| Vec::new(),
    untimed: None,
    rules: &[&rules::BREATHING_TAPS],
    not_for: |_, _| None,
};

/// In 30 seconds.
pub static COUNT_30: TaskSpec = TaskSpec {
    id: TaskId::Breaths30,
    by_mouth: false,
    pad: pad(Length::Fixed(THIRTY), false),
    questions: &[ASK_STATE],
    trials: 1,
    usual: |_| Vec::new(),
    compare: |_| Vec::new(),
    untimed: None,
    rules: &[&rules::BREATHING_THIRTY],
    not_for: |_, _| None,
};
