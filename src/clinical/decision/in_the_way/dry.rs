//! Dry swallows that were few, not valid or not counted. Where a screen is chosen that has none, a
//! count that was not made holds nothing.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::dry_swallow;

pub(super) fn swallows(task: TaskId, exam: &Exam) -> Vec<InTheWay> {
    let asked = exam.screen.is_none()
        || exam.on_screen(TaskId::DrySwallow)
        || exam.latest(TaskId::DrySwallow).is_some();
    if !asked || !task.is_by_mouth() {
        return Vec::new();
    }
    let said = tasks::flags(TaskId::DrySwallow, exam).into_iter();
    said.filter_map(|said| {
        let go_on = who(&said, exam)?;
        Some(Obstacle::DrySwallows { go_on, said })
    })
    .collect()
}

/// Who may go on; none where it holds nothing.
fn who(said: &Flag, exam: &Exam) -> Option<GoOn> {
    match said.level() {
        // None at all, or nobody knows.
        Level::Stop | Level::Refer if dry_swallow::is_none_at_all(said.fact()) => {
            Some(GoOn::SlpWithReason)
        }
        Level::Incomplete if dry_swallow::none_and_not_valid(exam) => Some(GoOn::SlpWithReason),
        Level::Stop | Level::Refer | Level::Incomplete => Some(GoOn::WithReason),
        Level::Note | Level::Pass => None,
    }
}
