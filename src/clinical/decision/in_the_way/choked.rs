//! Choking. Watching a meal gives nothing, but after a choke nobody eats on unasked.
//!
//! **Invariant:** nobody goes on, with whatever reason, before the person is back to baseline, and
//! the breaths were counted and the voice heard since.

use super::kind::InTheWay;
use crate::clinical::decision::fresh;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::{AfterChoking, Obstacle};
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;

pub(super) fn choked(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let eats = task.is_by_mouth() || task == TaskId::Meal;
    (has_choked(exam) && eats).then(|| Obstacle::Choked {
        task,
        at: exam.choked_at(),
        missing: missing(exam),
    })
}

fn has_choked(exam: &Exam) -> bool {
    exam.choked || exam.choke_pressed()
}

/// What was not recorded since the newest choking; nothing where nobody choked.
pub fn missing(exam: &Exam) -> Vec<AfterChoking> {
    if !has_choked(exam) {
        return Vec::new();
    }
    let since = |at: Option<Moment>| {
        let choked = exam.choking_noted;
        at.zip(choked)
            .is_some_and(|(at, choked)| at.is_after(choked))
    };
    [
        (AfterChoking::Baseline, exam.choking_over),
        (AfterChoking::Breaths, since(fresh::breaths_at(exam))),
        (AfterChoking::Voice, since(by_mouth::voice_heard_at(exam))),
    ]
    .into_iter()
    .filter_map(|(what, recorded)| (!recorded).then_some(what))
    .collect()
}
