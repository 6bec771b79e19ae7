//! What was seen in a trial: it holds the next of its own task, asked for anew each time, and every
//! other one; a reason given for one of them speaks for that one alone.

use super::holding;
use super::kind::InTheWay;
use super::meanwhile;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth::{given, lag};

/// In the trials of this task, then in those of each other one, with what still runs of it.
pub(super) fn in_trials(task: TaskId, exam: &Exam) -> Vec<InTheWay> {
    if !task.is_by_mouth() && task != TaskId::Meal {
        return Vec::new();
    }
    let mut all: Vec<InTheWay> = seen_in(task, task, exam).into_iter().collect();
    for other in TaskId::ALL.iter().copied().filter(|other| *other != task) {
        all.extend(meanwhile::runs(other, task, exam));
        all.extend(in_other(other, task, exam));
    }
    all
}

/// In a trial of another task.
pub(super) fn in_other(other: TaskId, task: TaskId, exam: &Exam) -> Option<InTheWay> {
    // A cracker has a reason of its own for a drink that went wrong.
    if task == TaskId::Cracker && other != TaskId::Own && other != TaskId::Meal {
        return None;
    }
    // A meal gives nothing, but what was seen at it holds as well.
    other.sign_column()?;
    seen_in(other, task, exam)
}

fn seen_in(of: TaskId, task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let seen = what(of, task, exam);
    (!seen.is_empty()).then(|| Obstacle::Seen {
        of,
        tried: given(of, exam).count(),
        task,
        seen,
        unsaid: given(of, exam).any(|trial| !lag::late(trial).is_empty()),
    })
}

/// Watching a meal gives nothing: what stops every trial holds it, and the choke that does so holds
/// it by itself.
fn what(of: TaskId, task: TaskId, exam: &Exam) -> Vec<Flag> {
    let mut seen = holding::flags(of, exam);
    if task == TaskId::Meal {
        let choke = [&rules::WATER_CHOKE, &rules::TRIAL_CHOKE];
        seen.retain(|flag| flag.level() == Level::Stop && !choke.contains(&flag.rule()));
    }
    seen
}
