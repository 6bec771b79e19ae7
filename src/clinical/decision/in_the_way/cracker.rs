//! What the cracker asks for first: teeth, no allergy, a diet order that allows it, a drink that
//! went well.

use crate::clinical::decision::in_the_way::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;

pub(super) fn reasons(task: TaskId, exam: &Exam) -> Vec<InTheWay> {
    if task != TaskId::Cracker {
        return Vec::new();
    }
    let reasons = tasks::cracker::holds(exam).into_iter();
    reasons
        .map(|(said, go_on, seen)| Obstacle::Cracker { go_on, said, seen })
        .collect()
}
