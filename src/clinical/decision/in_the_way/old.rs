//! Answers, counts and readings that are too old for a trial by mouth.

use super::kind::InTheWay;
use crate::clinical::decision::fresh;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::task::TaskId;

pub(super) fn answers(task: TaskId, exam: &Exam, now: Moment) -> Vec<InTheWay> {
    if !task.is_by_mouth() {
        return Vec::new();
    }
    let voice = fresh::old_voice(task, exam, now);
    let old = fresh::all_old(exam, now).into_iter();
    old.chain(voice).map(Obstacle::Old).collect()
}
