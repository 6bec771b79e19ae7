//! Whether somebody watched, where the app was not there to see the watch run out.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Choice, Question, Takes, When, choice};
use crate::clinical::tasks::water;
use crate::clinical::tasks::water::WATCH;
use crate::measure::time::{Doubt, Millis};

/// Question: whether the whole watch was watched.
pub const WATCHED: &str = "watched-through";

/// How late the end of a watch may be noticed and still count as seen: a page that was busy.
const LATE: Millis = Millis::from_secs(5);

static ANSWERS: &[Choice] = &[choice("yes", "Yes, all 60 seconds"), choice("no", "No")];

/// The question, for a task with a watch.
pub const fn question(when: When) -> Question {
    Question {
        id: WATCHED,
        ask: "The app was off when the 60 seconds ran out. Did you watch all of them?",
        when,
        takes: Takes::OneOf(ANSWERS),
        only_if: None,
        needed: false,
    }
}

/// Whether the end of this trial's watch was noticed long after it: the app was off, or slept.
fn unseen(trial: &Trial) -> bool {
    let Some((end, over)) = trial.end().zip(trial.first(MarkKind::WatchOver)) else {
        return false;
    };
    let off = matches!(
        water::read(trial).watch_doubt,
        Some(Doubt::Restarted | Doubt::Slept(_) | Doubt::Unknown)
    );
    let length = trial.between(end, over).length;
    off && length.is_none_or(|length| length > WATCH + LATE)
}

/// Whether the question is to be asked of the newest trial of a task.
pub fn asked(task: TaskId, exam: &Exam) -> bool {
    exam.latest_started(task).is_some_and(unseen)
}

/// What is missing of a trial whose watch nobody is known to have watched; none else.
pub fn missing(trial: &Trial) -> Option<&'static str> {
    if !unseen(trial) {
        return None;
    }
    match trial.choice(WATCHED) {
        Some("yes") => None,
        Some(_) => Some("the 60 seconds after it were not watched"),
        None => Some("the app was off when the watch ran out: not said whether it was watched"),
    }
}
