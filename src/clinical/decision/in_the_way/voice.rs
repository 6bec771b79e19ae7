//! A voice that is wet before anything is given: as answered here, as it would be taken over from
//! the trial before, or as it was heard after a choking.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::{by_mouth, water};

pub(super) fn wet_before(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let heard = by_mouth::heard_before(task, exam).map(str::to_owned);
    let voice = heard.or_else(|| taken_over(task, exam));
    let wet = voice.as_deref() == Some("wet") || by_mouth::is_wet_since_choking(exam);
    (wet && task.is_by_mouth()).then_some(Obstacle::WetBefore { task })
}

fn taken_over(task: TaskId, exam: &Exam) -> Option<String> {
    let answers = (tasks::spec(task).taken_over)(exam).into_iter();
    let mut voice = answers.filter(|(question, _)| *question == water::VOICE_BEFORE);
    voice.next()?.1.choice().map(str::to_owned)
}
