//! Weakness found after the gate was told that nothing is new: before anything is given, somebody
//! says so.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::oral::flags::{WEAKNESS, unsaid};

pub(super) fn could_be_new(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let asked = exam.gate.0.contains_key(WEAKNESS);
    let weak = unsaid(exam).filter(|_| asked && task.is_by_mouth())?;
    Some(Obstacle::CouldBeNew { weak })
}
