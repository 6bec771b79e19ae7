//! The way through a screen: what comes next.

use crate::clinical::decision::assess::gate_closed;
use crate::clinical::decision::fresh;
use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::gate::{Group, State};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::screen::Screen;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Phase;
use crate::record::visit::{Visit, is_running};

/// A place on the way through a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// All of the visit.
    Overview,
    /// A group of the gate.
    Gate(Group),
    /// What the gate found.
    GateResult,
    /// A region of the examination of face, mouth and throat.
    Oral(Region),
    /// A task.
    Task(TaskId),
    /// Choking.
    Choking,
    /// The decision.
    Decision,
}

/// Where what is missing or too old is asked again; none where that is on the task's own page.
pub fn again(what: Answered) -> Option<Step> {
    match what {
        Answered::Group(group) => Some(Step::Gate(group)),
        other => other.task().map(Step::Task),
    }
}

/// Where a visit goes on: a running trial, else the first step not done yet.
pub fn next(visit: &Visit) -> Step {
    if visit.is_choking() {
        return Step::Choking;
    }
    if let Some(trial) = visit.exam.trials.iter().rev().find(|t| is_running(t)) {
        return Step::Task(trial.task);
    }
    let Some(screen) = visit.screen.map(|id| id.screen()) else {
        return Step::Overview;
    };
    if visit.exam.ended.is_some() {
        return Step::Decision;
    }
    if screen.gate {
        if let Some(group) = Group::ALL
            .into_iter()
            .find(|g| g.items().any(|i| !visit.exam.gate.answered(i)))
        {
            return Step::Gate(group);
        }
        if gate_closed(&visit.exam).is_some() {
            return Step::GateResult;
        }
    } else if screen.oral.is_some() && emergency(visit) {
        return Step::GateResult;
    }
    first_open(visit, screen)
}

/// The first region or task that is not done yet.
fn first_open(visit: &Visit, screen: &Screen) -> Step {
    let open = |regions: &[Region]| {
        regions
            .iter()
            .find(|region| !visit.exam.oral.is_done(**region))
            .map(|region| Step::Oral(*region))
    };
    let tasks = screen.tasks_of(&visit.exam);
    let task = || {
        tasks
            .iter()
            .find(|task| !tasks::is_done(**task, &visit.exam))
    };
    open(screen.oral.before())
        .or_else(|| task().map(|task| not_old(visit, *task)))
        .or_else(|| open(screen.oral.after()))
        .unwrap_or(Step::Decision)
}

/// A task's page; before one by mouth, what must be asked again first.
fn not_old(visit: &Visit, task: TaskId) -> Step {
    let old = fresh::old(&visit.exam, visit.exam.now);
    match old.first() {
        Some(old) if task.is_by_mouth() => again(old.what).unwrap_or(Step::Task(task)),
        _ => Step::Task(task),
    }
}

/// The page after a gate group.
pub fn after_group(visit: &Visit, group: Group) -> Step {
    let at = Group::ALL.iter().position(|g| *g == group).unwrap_or(0);
    if let Some(next) = Group::ALL.get(at + 1) {
        return Step::Gate(*next);
    }
    let something = visit
        .exam
        .gate
        .exceptions(&visit.exam.policy)
        .next()
        .is_some();
    if something || visit.exam.gate.open().next().is_some() {
        Step::GateResult
    } else {
        next(visit)
    }
}

/// The page after a region of the examination.
pub fn after_region(visit: &Visit, region: Region) -> Step {
    let Some(screen) = visit.screen.map(|id| id.screen()) else {
        return Step::Overview;
    };
    if let Some(next) = screen.oral.next(region) {
        return Step::Oral(next);
    }
    match screen.tasks_of(&visit.exam).first() {
        Some(task) if screen.oral.before().contains(&region) => Step::Task(*task),
        _ => Step::Decision,
    }
}

/// Whether the gag must wait: a swallow trial of this screen is still to come.
pub fn gag_waits(visit: &Visit) -> bool {
    visit.exam.ended.is_none()
        && visit.screen.is_some_and(|id| {
            id.screen()
                .tasks
                .iter()
                .any(|task| task.is_by_mouth() && !tasks::is_done(*task, &visit.exam))
        })
}

/// The page after a task.
///
/// A closed gate and an emergency lead to the gate's page before anything else is offered.
pub fn after_task(visit: &Visit, task: TaskId) -> Step {
    let Some(screen) = visit.screen.map(|id| id.screen()) else {
        return Step::Overview;
    };
    if visit.exam.ended.is_some() {
        return Step::Decision;
    }
    if screen.extras().any(|extra| extra == task) {
        // It was added to the screen: back to where that goes on.
        return next(visit);
    }
    if !screen.tasks_of(&visit.exam).contains(&task) {
        // It stood beside the screen, and was come to from the overview.
        return Step::Overview;
    }
    if screen.gate && gate_closed(&visit.exam).is_some() {
        return Step::GateResult;
    }
    match (screen.after(task, &visit.exam), screen.oral.after().first()) {
        (Some(next), _) => Step::Task(next),
        (None, Some(region)) => Step::Oral(*region),
        (None, None) => Step::Decision,
    }
}

/// Whether any exception of the gate is an emergency.
pub fn emergency(visit: &Visit) -> bool {
    visit
        .exam
        .gate
        .exceptions(&visit.exam.policy)
        .any(|(_, _, state)| state == State::Emergency)
}

/// The trial whose watch is running, if one is.
pub fn watched(visit: &Visit) -> Option<&Trial> {
    visit.exam.trials.iter().rev().find(|trial| {
        trial.marks.last().is_some_and(|mark| {
            matches!(
                tasks::spec(trial.task).phase(trial, mark.at),
                Phase::Watching(_)
            )
        })
    })
}
