//! Breathing by a tap at every breath, and the count of 30 seconds.
//!
//! Both are quicker than the count of 60 seconds and neither clears an adult. Nothing is dropped
//! in silence: intervals that are off are counted and said.

mod flags;
pub mod judge;
mod reading;

pub use flags::flags;
pub use reading::{Even, Running, STATE, asks_state, rate, running, state};

use crate::clinical::findings::exam::Exam;
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
        ..Pad::PLAIN
    }
}

fn fits(question: &str, exam: &Exam) -> bool {
    question != STATE || asks_state(exam)
}

/// By taps.
pub static TAPS: TaskSpec = TaskSpec {
    pad: pad(Length::Open, true),
    questions: &[ASK_STATE],
    rules: &[&rules::BREATHING_TAPS],
    slug: "breath-taps",
    flags,
    fits,
    read_running: true,
    ..TaskSpec::plain(TaskId::BreathTaps)
};

/// In 30 seconds.
pub static COUNT_30: TaskSpec = TaskSpec {
    pad: pad(Length::Fixed(THIRTY), false),
    questions: &[ASK_STATE],
    rules: &[&rules::BREATHING_THIRTY],
    slug: "breaths-30",
    flags,
    fits,
    ..TaskSpec::plain(TaskId::Breaths30)
};
