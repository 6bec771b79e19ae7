//! What is in the way of a task, with its words beside it.

use penlight::clinical::decision::in_the_way::in_the_way;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::findings::moment::Moment;
use penlight::clinical::knowledge::rule::Rule;
use penlight::clinical::knowledge::task::TaskId;
use penlight::wording::in_the_way::{advice, says};

/// One thing in the way, as the page shows it.
#[derive(Clone, Debug)]
pub(crate) struct Hold {
    pub(crate) id: String,
    pub(crate) says: String,
    pub(crate) advice: String,
    pub(crate) go_on: GoOn,
    pub(crate) rule: &'static Rule,
}

/// What is in the way when something last happened.
pub(crate) fn holds(task: TaskId, exam: &Exam) -> Vec<Hold> {
    holds_at(task, exam, exam.now)
}

/// What is in the way at a moment.
pub(crate) fn holds_at(task: TaskId, exam: &Exam, now: Moment) -> Vec<Hold> {
    let all = in_the_way(task, exam, now).into_iter();
    all.map(|one| Hold {
        id: one.key(),
        says: says(&one),
        advice: advice(&one, &exam.policy),
        go_on: one.who_may_go_on(),
        rule: one.rule(),
    })
    .collect()
}
