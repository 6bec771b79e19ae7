//! The way through a screen: what comes next.

use super::holds::again;
use super::route::Page;
use crate::clinical::decision::assess::gate_closed;
use crate::clinical::decision::fresh;
use crate::clinical::findings::gate::{Group, State};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::screen::Screen;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Phase;
use crate::record::visit::{Visit, is_running};

/// Where a visit goes on: a running trial, else the first step not done yet.
pub(super) fn next(visit: &Visit) -> Page {
    if visit.is_choking() {
        return Page::Choking;
    }
    if let Some(trial) = visit.exam.trials.iter().rev().find(|t| is_running(t)) {
        return Page::Task(trial.task);
    }
    let Some(screen) = visit.screen.map(|id| id.screen()) else {
        return Page::Overview;
    };
    if visit.exam.ended.is_some() {
        return Page::Decision;
    }
    if screen.gate {
        if let Some(group) = Group::ALL
            .into_iter()
            .find(|g| g.items().any(|i| !visit.exam.gate.answered(i)))
        {
            return Page::Gate(group);
        }
        if gate_closed(&visit.exam).is_some() {
            return Page::GateResult;
        }
    } else if screen.oral.is_some() && emergency(visit) {
        return Page::GateResult;
    }
    first_open(visit, screen)
}

/// The first region or task that is not done yet.
fn first_open(visit: &Visit, screen: &Screen) -> Page {
    let open = |regions: &[Region]| {
        regions
            .iter()
            .find(|region| !visit.exam.oral.is_done(**region))
            .map(|region| Page::Oral(*region))
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
        .unwrap_or(Page::Decision)
}

/// A task's page; before one by mouth, what must be asked again first.
fn not_old(visit: &Visit, task: TaskId) -> Page {
    let old = fresh::old(&visit.exam, visit.exam.now);
    match old.first() {
        Some(old) if task.is_by_mouth() => again(old.what).unwrap_or(Page::Task(task)),
        _ => Page::Task(task),
    }
}

/// The page after a gate group.
pub(super) fn after_group(visit: &Visit, group: Group) -> Page {
    let at = Group::ALL.iter().position(|g| *g == group).unwrap_or(0);
    if let Some(next) = Group::ALL.get(at + 1) {
        return Page::Gate(*next);
    }
    let something = visit
        .exam
        .gate
        .exceptions(&visit.exam.policy)
        .next()
        .is_some();
    if something || visit.exam.gate.open().next().is_some() {
        Page::GateResult
    } else {
        next(visit)
    }
}

/// The page after a region of the examination.
pub(super) fn after_region(visit: &Visit, region: Region) -> Page {
    let Some(screen) = visit.screen.map(|id| id.screen()) else {
        return Page::Overview;
    };
    if let Some(next) = screen.oral.next(region) {
        return Page::Oral(next);
    }
    match screen.tasks_of(&visit.exam).first() {
        Some(task) if screen.oral.before().contains(&region) => Page::Task(*task),
        _ => Page::Decision,
    }
}

/// Whether the gag must wait: a swallow trial of this screen is still to come.
pub(super) fn gag_waits(visit: &Visit) -> bool {
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
pub(super) fn after_task(visit: &Visit, task: TaskId) -> Page {
    let Some(screen) = visit.screen.map(|id| id.screen()) else {
        return Page::Overview;
    };
    if visit.exam.ended.is_some() {
        return Page::Decision;
    }
    if screen.extras().any(|extra| extra == task) {
        // It was added to the screen: back to where that goes on.
        return next(visit);
    }
    if !screen.tasks_of(&visit.exam).contains(&task) {
        // It stood beside the screen, and was come to from the overview.
        return Page::Overview;
    }
    if screen.gate && gate_closed(&visit.exam).is_some() {
        return Page::GateResult;
    }
    match (screen.after(task, &visit.exam), screen.oral.after().first()) {
        (Some(next), _) => Page::Task(next),
        (None, Some(region)) => Page::Oral(*region),
        (None, None) => Page::Decision,
    }
}

/// Whether any exception of the gate is an emergency.
pub(super) fn emergency(visit: &Visit) -> bool {
    visit
        .exam
        .gate
        .exceptions(&visit.exam.policy)
        .any(|(_, _, state)| state == State::Emergency)
}

/// The trial whose watch is running, if one is.
pub(super) fn watched(visit: &Visit) -> Option<&Trial> {
    visit.exam.trials.iter().rev().find(|trial| {
        trial.marks.last().is_some_and(|mark| {
            matches!(
                tasks::spec(trial.task).phase(trial, mark.at),
                Phase::Watching(_)
            )
        })
    })
}
