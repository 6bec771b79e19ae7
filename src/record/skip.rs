//! What it costs to leave a task of the screen out.

use crate::clinical::decision::in_the_way::in_the_way;
use crate::clinical::findings::flag::Level;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::record::clears::{Clears, clears};
use crate::record::step::Step;
use crate::record::visit::Visit;

/// What it costs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Cost {
    /// What waits for it: not given without it, or only with a reason.
    pub waits: Option<TaskId>,
    /// The screen stays incomplete without it.
    pub incomplete: bool,
}

/// What it costs to leave a task out of the visit as it stands.
pub fn cost(visit: &Visit, task: TaskId) -> Cost {
    let exam = &visit.exam;
    let Some(screen) = visit.screen.map(|id| id.screen()) else {
        return Cost::default();
    };
    let here = Some(Clears::Page(Step::Task(task)));
    let waits = |other: &TaskId| {
        let held = in_the_way(*other, exam, exam.now);
        *other != task
            && !tasks::is_done(*other, exam)
            && held.iter().any(|one| clears(one, exam) == here)
    };
    let own = screen.tasks_of(exam);
    let incomplete = own.contains(&task)
        && tasks::flags(task, exam)
            .iter()
            .any(|flag| flag.level() == Level::Incomplete && flag.domain().decides());
    Cost {
        waits: own.into_iter().find(waits),
        incomplete,
    }
}
