//! The tasks, one file each: its data, its finding, its rules.

pub mod breathing;
pub mod dry_swallow;
pub mod free_count;
pub mod water;

use super::exam::Exam;
use super::flag::Flag;
use super::task::{TaskId, TaskSpec};

/// A task's data.
pub fn spec(id: TaskId) -> &'static TaskSpec {
    match id {
        TaskId::Breathing => &breathing::SPEC,
        TaskId::DrySwallow => &dry_swallow::SPEC,
        TaskId::Water90 => &water::SPEC,
        TaskId::FreeCount => &free_count::SPEC,
    }
}

/// Why a task steps aside for this person, if it does.
pub fn aside(id: TaskId, exam: &Exam) -> Option<String> {
    (spec(id).not_for)(exam.age, &exam.policy)
}

/// What a task's rules say about an examination.
pub fn flags(id: TaskId, exam: &Exam) -> Vec<Flag> {
    match id {
        TaskId::Breathing => breathing::flags(exam),
        TaskId::DrySwallow => dry_swallow::flags(exam),
        TaskId::Water90 => water::flags(exam),
        TaskId::FreeCount => Vec::new(),
    }
}
