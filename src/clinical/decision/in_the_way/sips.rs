//! Small sips come first, where a screen steps up by them, and before a timed cup. A sign in them
//! holds by itself.

use crate::clinical::decision::in_the_way::{InTheWay, seen};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::timed_water::judge as timed_water;
use crate::clinical::tasks::{by_mouth, sips};

pub(super) fn first(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let said = match task {
        TaskId::Water90 if sips::stepped(exam) => sips::before_90(exam),
        TaskId::TimedWater => timed_water::before(sips::clear(exam)),
        _ => None,
    }?;
    let sign = seen::in_other(TaskId::Sips, task, exam);
    let tried = by_mouth::given(TaskId::Sips, exam).count();
    sign.is_none()
        .then_some(Obstacle::SmallSipsFirst { task, tried, said })
}
