//! A screen that was ended: whoever declined, or wanted to stop, is asked again before anything is
//! given.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;

pub(super) fn ended(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let why = exam.ended.filter(|_| task.is_by_mouth())?;
    let water_from_years = exam.policy.water_from_years;
    Some(Obstacle::Ended {
        why,
        water_from_years,
    })
}
