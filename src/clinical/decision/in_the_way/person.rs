//! For whom a task is meant.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;

/// It steps aside for this person.
pub(super) fn not_for(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    tasks::aside(task, exam).map(|said| Obstacle::NotFor { task, said })
}

/// It was studied in adults, and this is a child.
pub(super) fn child(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    tasks::of_adults(task, exam).then_some(Obstacle::Child { task })
}
