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
use crate::clinical::tasks::spec::{Choice, Length, Pad, Question, Takes, TaskSpec, When};

/// The question about being awake or asleep.
pub const ASK_STATE: Question = Question {
    id: STATE,
    ask: "Awake or asleep? (under 3 years)",
    when: When::Before,
    takes: Takes::OneOf(&[
        Choice {
            id: "awake",
            words: "Awake, calm",
        },
        Choice {
            id: "asleep",
            words: "Asleep",
        },
    ]),
    only_if: None,
    needed: true,
};

const fn pad(start: &'static str, length: Length, first: bool, end: Option<&'static str>) -> Pad {
    Pad {
        counts: ("breath", "breaths"),
        start,
        length,
        first_counts: first,
        end,
        ..Pad::PLAIN
    }
}

fn fits(question: &str, exam: &Exam) -> bool {
    question != STATE || asks_state(exam)
}

/// By taps.
pub static TAPS: TaskSpec = TaskSpec {
    title: "Breathing by taps",
    steps: &[
        "Watch the chest or the blanket. Do not say that you count.",
        "Touch the pad at each breath in, at the same point of the breath. Stop when it says even.",
        "Uneven: count for 60 seconds.",
    ],
    say: "",
    pad: pad("Touch at a breath in", Length::Open, true, Some("Stop")),
    questions: &[ASK_STATE],
    caveat: "60 over the middle interval. Tried with videos of children (published: KAR14); in \
             adults it never replaces the count of 60 seconds.",
    for_whom: "Children, and adults for whom a minute is counted besides: in adults taps alone clear nobody.",
    rules: &[&rules::BREATHING_TAPS],
    slug: "breath-taps",
    flags,
    fits,
    read_running: true,
    ..TaskSpec::plain(TaskId::BreathTaps)
};

/// In 30 seconds.
pub static COUNT_30: TaskSpec = TaskSpec {
    title: "Breaths in 30 seconds",
    steps: &["Tap each breath in. The count ends by itself; it is doubled."],
    say: "",
    pad: pad("Start", Length::Fixed(THIRTY), false, None),
    questions: &[ASK_STATE],
    caveat: "Steps of 2 a minute. It missed a quarter of the rates that are \
             highest on an early-warning scale (published: RIM19): count for 60 seconds where it \
             matters.",
    for_whom: "Where a whole minute can't be had: it clears no adult.",
    rules: &[&rules::BREATHING_THIRTY],
    slug: "breaths-30",
    flags,
    fits,
    ..TaskSpec::plain(TaskId::Breaths30)
};
