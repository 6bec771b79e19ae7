//! Choking. Watching a meal gives nothing, but after a choke nobody eats on unasked.

use crate::clinical::decision::in_the_way::{InTheWay, by_mouth};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;

pub(super) fn choked(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let choked = exam.choked || exam.choke_pressed();
    let eats = by_mouth(task) || task == TaskId::Meal;
    let at = exam.choked_at();
    (choked && eats).then_some(Obstacle::Choked { task, at })
}
