//! Whether somebody watched, where the app was not there to see the watch run out.

use crate::clinical::findings::exam::Exam;
use crate::clinical::knowledge::task::TaskId;
pub use crate::clinical::tasks::by_mouth::questions::WATCHED;
use crate::clinical::tasks::by_mouth::questions::WATCHED_ALL;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::spec::{Question, Takes, When};

static ANSWERS: &[&str] = &[WATCHED_ALL, "no"];

/// The question, for a task with a watch.
pub const fn question(when: When) -> Question {
    Question {
        id: WATCHED,
        when,
        takes: Takes::OneOf(ANSWERS),
        only_if: None,
        needed: false,
    }
}

/// Whether the question is to be asked of the newest trial of a task.
pub fn asked(task: TaskId, exam: &Exam) -> bool {
    exam.latest_started(task)
        .is_some_and(|trial| Reading::of(trial).unseen)
}
