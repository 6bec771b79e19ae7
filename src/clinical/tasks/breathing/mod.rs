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
    id: TaskId::Breathing,
    by_mouth: false,
    pad: Pad {
        counts: true,
        length: Length::Fixed(WINDOW),
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        watch: None,
        signs: None,
        countdown: false,
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
    trials: 1,
    usual: |_| Vec::new(),
    compare,
    untimed: None,
    rules: &[
        &rules::BREATHING_RATE,
        &rules::BREATHING_SPO2,
        &rules::BREATHING_SPO2_FALL,
        &rules::BREATHING_SECOND_SCALE,
        &rules::BREATHING_CHILD,
        &rules::BREATHING_NOT_COUNTED,
    ],
    not_for: |_, _| None,
};

/// The rates of a child beside the range taught for the age; adults have bands of their own.
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
