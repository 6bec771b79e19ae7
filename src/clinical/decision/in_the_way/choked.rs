//! Choking. Watching a meal gives nothing, but after a choke nobody eats on unasked.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;

pub(super) fn choked(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let choked = exam.choked || exam.choke_pressed();
    let eats = task.is_by_mouth() || task == TaskId::Meal;
    let at = exam.choked_at();
    (choked && eats).then_some(Obstacle::Choked { task, at })
}
