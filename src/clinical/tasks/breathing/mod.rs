//! Breathing before water: breaths per minute, SpO2, oxygen.
//!
//! No published, validated limit for withholding a water trial was found. The lines are local
//! policy, borrowed from the single-parameter bands of NEWS2 (Royal College of Physicians 2017).

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::measured::Measured;
use crate::clinical::knowledge::norms;
use crate::clinical::knowledge::norms::{Quantity, Task, Unit};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath_taps;
use crate::clinical::tasks::compare;
use crate::clinical::tasks::compare::Comparison;
use crate::clinical::tasks::spec::{Length, Pad, Question, Takes, TaskSpec, When};

pub mod adult_bands;
mod bands;
mod blocks;
pub mod child;
mod flags;
mod questions;
mod reading;

pub use adult_bands::Band;
pub use bands::{rate_band, spo2_band};
pub use blocks::{Block, blocks, closes};
pub use child::child_notes;
pub use flags::flags;
pub(super) use questions::PERCENT;
pub use questions::{CONFIRMED, OXYGEN, SATURATION, TARGET, TYPED, WINDOW};
pub use reading::{Finding, count as newest_count, counted, read, reading};

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        counts: true,
        length: Length::Fixed(WINDOW),
        ..Pad::PLAIN
    },
    questions: &[
        Question {
            id: TYPED,
            when: When::Before,
            takes: Takes::Number {
                least: 1,
                most: 120,
                step: 0,
            },
            only_if: None,
            needed: false,
        },
        Question {
            id: SATURATION,
            when: When::Before,
            takes: PERCENT,
            only_if: None,
            needed: false,
        },
        Question {
            id: OXYGEN,
            when: When::Before,
            takes: Takes::OneOf(&["air", "oxygen"]),
            only_if: None,
            needed: false,
        },
        Question {
            id: TARGET,
            when: When::Before,
            takes: Takes::Number {
                least: 80,
                most: 99,
                step: 0,
            },
            only_if: None,
            needed: false,
        },
        Question {
            id: CONFIRMED,
            when: When::Before,
            takes: Takes::OneOf(&["yes", "no"]),
            only_if: None,
            needed: false,
        },
        Question {
            needed: false,
            ..breath_taps::ASK_STATE
        },
    ],
    compare: |_, exam| compare(exam),
    rules: &[
        &rules::BREATHING_RATE,
        &rules::BREATHING_SPO2,
        &rules::BREATHING_SPO2_LOW,
        &rules::BREATHING_SPO2_FALL,
        &rules::BREATHING_SECOND_SCALE,
        &rules::BREATHING_CHILD,
        &rules::BREATHING_NOT_COUNTED,
    ],
    slug: "breathing",
    other_ways: &[TaskId::BreathTaps, TaskId::Breaths30],
    entered: Some(TYPED),
    flags: |_, exam| flags(exam),
    over,
    fits: |question, exam| question != breath_taps::STATE || breath_taps::asks_state(exam),
    ..TaskSpec::plain(TaskId::Breathing)
};

/// The rates of a child beside the range taught for the age; adults have bands of their own.
/// A child's rate by taps is read with the local chart as a counted one is.
fn over(exam: &Exam) -> Option<bool> {
    let child = exam.age.is_some_and(|a| !a.is_adult());
    (child && breath_taps::rate(exam).is_some()).then_some(true)
}

fn compare(exam: &Exam) -> Vec<Comparison> {
    if exam.age.is_none_or(|age| age.is_adult()) {
        return Vec::new();
    }
    counted(exam)
        .into_iter()
        .map(|(rate, method)| {
            compare::compare(
                exam,
                Task::Breathe,
                norms::Method::Count60s,
                Quantity::counted(Unit::PerMinute, u32::from(rate)),
                Measured::Breaths(rate, method),
            )
        })
        .collect()
}
