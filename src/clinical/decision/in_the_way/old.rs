//! Answers, counts and readings that are too old for a trial by mouth.

use crate::clinical::decision::fresh;
use crate::clinical::decision::in_the_way::{InTheWay, by_mouth};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::moment::Moment;
use crate::clinical::knowledge::task::TaskId;

pub(super) fn answers(task: TaskId, exam: &Exam, now: Moment) -> Vec<InTheWay> {
    if !by_mouth(task) {
        return Vec::new();
    }
    let voice = fresh::old_voice(task, exam, now);
    let old = fresh::all_old(exam, now).into_iter();
    old.chain(voice).map(Obstacle::Old).collect()
}
