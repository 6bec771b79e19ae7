//! Another trial by mouth that is not over, or whose watch still runs. A meal gives nothing.

use crate::clinical::decision::in_the_way::{InTheWay, by_mouth};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth::given;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::water::Watch;

pub(super) fn runs(of: TaskId, task: TaskId, exam: &Exam) -> Option<InTheWay> {
    if !by_mouth(task) {
        return None;
    }
    let is_watched = tasks::spec(of).pad.watch.is_some();
    let runs = |t: &Trial| by_mouth(of) && t.end().is_none();
    let watched = |t: &Trial| is_watched && Reading::of(t).watch == Watch::Running;
    let tried = given(of, exam).count();
    if given(of, exam).any(runs) {
        Some(Obstacle::Running { of, tried, task })
    } else if given(of, exam).any(watched) {
        Some(Obstacle::Watched { of, tried, task })
    } else {
        None
    }
}
