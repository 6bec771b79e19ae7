//! Whether a task was done.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::catalogue::{aside, spec};
use crate::clinical::tasks::spec::NOT_VALID;

/// Whether a task was done, was given up with a reason, or steps aside for this person.
pub fn is_done(task: TaskId, exam: &Exam) -> bool {
    let spec = spec(task);
    let newest = exam.latest(task);
    let finished = |t: &Trial| is_finished(t, exam);
    let through = match (spec.over)(exam) {
        Some(over) => over || newest.is_some_and(|t| t.choice(NOT_VALID).is_some()),
        None => {
            newest.is_some_and(finished) || {
                // Another trial that was opened and not begun takes nothing from those before it.
                let mut trials = exam.trials.iter().filter(|t| t.task == task);
                spec.trials > 1 && trials.any(finished)
            }
        }
    };
    aside(task, exam).is_some() || through
}

fn is_finished(trial: &Trial, exam: &Exam) -> bool {
    let spec = spec(trial.task);
    let ended = trial.end().is_some() || trial.first(MarkKind::WindowOver).is_some();
    let given_up = trial.choice(NOT_VALID).is_some();
    let entered = spec.entered.is_some_and(|id| trial.number(id).is_some());
    let whole = ended && by_mouth::answered(spec, trial, exam);
    whole || given_up || entered || spec.is_untimed(trial)
}
