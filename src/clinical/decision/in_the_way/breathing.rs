//! Breaths that were not counted, and readings at which nothing is given.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breathing;

pub(super) fn readings(task: TaskId, exam: &Exam) -> Vec<InTheWay> {
    match task.is_by_mouth() {
        true => all(exam).collect(),
        false => Vec::new(),
    }
}

/// Those that close the gate, rather than asking for a count or a look at the chart.
pub fn closing(exam: &Exam) -> impl Iterator<Item = InTheWay> {
    all(exam)
        .filter(|one| matches!(one, Obstacle::Breathing { said, .. } if breathing::closes(said)))
}

/// The same whatever is to be given.
pub(super) fn all(exam: &Exam) -> impl Iterator<Item = InTheWay> {
    let blocks = breathing::blocks(exam).into_iter();
    blocks.map(|block| Obstacle::Breathing {
        reading: block.reading,
        under: block.under,
        go_on: block.go_on,
        said: block.flag,
    })
}
