//! The way through a screen: what comes next.
//!
//! **Invariant:** it leads to nothing by mouth past what ends the trials: a sign that refers or
//! stops, a choking, an order to fast. A speech-language pathologist who goes on says so on the
//! task's own page.

use crate::clinical::decision::assess::gate_closed;
use crate::clinical::decision::in_the_way::{InTheWay, in_the_way, standing};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::gate::{Group, State};
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::person::Role;
use crate::clinical::knowledge::screen::Screen;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::spec::Phase;
use crate::record::clears::{Clears, clears, comes_first};
use crate::record::visit::{Visit, is_running};

pub use crate::record::step::Step;

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
    // Neither waits for another question.
    if emergency(visit) || screen.gate && gate_stops(visit) {
        return Step::GateResult;
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
    }
    first_open(visit, screen)
}

/// The first region or task that is not done yet.
fn first_open(visit: &Visit, screen: &Screen) -> Step {
    let tasks = screen.tasks_of(&visit.exam);
    open_region(visit, screen.oral.before())
        .or_else(|| first_due(visit, &tasks).map(|task| asked_before(visit, task)))
        .or_else(|| open_region(visit, screen.oral.after()))
        .unwrap_or(Step::Decision)
}

fn open_region(visit: &Visit, regions: &[Region]) -> Option<Step> {
    let mut regions = regions.iter().copied();
    regions
        .find(|region| !visit.exam.oral.is_done(*region))
        .map(Step::Oral)
}

/// The first of these tasks that is neither done nor over.
fn first_due(visit: &Visit, tasks: &[TaskId]) -> Option<TaskId> {
    let mut tasks = tasks.iter().copied();
    tasks.find(|task| !tasks::is_done(*task, &visit.exam) && !is_over(*task, &visit.exam))
}

/// Whether nothing more of a task is led to: something ended the trials by mouth, and nobody who may
/// has said why to go on.
fn is_over(task: TaskId, exam: &Exam) -> bool {
    let held = || in_the_way(task, exam, exam.now);
    task.is_by_mouth() && held().iter().any(InTheWay::ends_trials)
}

/// Whether a task is shown among what can be done in a visit: not to a trained screener once it is
/// over and was not begun, nor to anybody in an emergency.
pub fn shows(visit: &Visit, task: TaskId) -> bool {
    let begun = visit.exam.latest(task).is_some();
    let open = visit.role == Role::Slp || !is_over(task, &visit.exam);
    begun || open && !emergency(visit)
}

/// Where a speech-language pathologist may go on after a sign ended the trials: by a press, to own
/// trials, where the reason is asked for.
pub fn trials_after_sign(visit: &Visit) -> Option<Step> {
    let exam = &visit.exam;
    let screen = visit.screen?.screen();
    let ended = || {
        standing(TaskId::Own, exam, exam.now)
            .iter()
            .any(InTheWay::ends_trials)
    };
    let open = screen.gate && exam.ended.is_none() && gate_closed(exam).is_none();
    (visit.role == Role::Slp && open && ended()).then_some(Step::Task(TaskId::Own))
}

/// Where looking and speech go on although nothing may be given by mouth.
pub fn looking_goes_on(visit: &Visit) -> Option<Step> {
    let screen = visit.screen?.screen();
    let tasks = screen.tasks_of(&visit.exam);
    let tasks: Vec<TaskId> = tasks.into_iter().filter(|t| is_speech(*t)).collect();
    let step = open_region(visit, screen.oral.before())
        .or_else(|| first_due(visit, &tasks).map(Step::Task));
    step.filter(|_| !emergency(visit))
}

fn is_speech(task: TaskId) -> bool {
    tasks::spec(task).speech
}

/// A task's page; before it what it needs, where its page could only refuse.
fn asked_before(visit: &Visit, task: TaskId) -> Step {
    needs(visit, task).unwrap_or(Step::Task(task))
}

/// The page after a task, which is this one. A count that was left out on the way is not led to once
/// more, in a round: the page that waits for it has the press for it.
fn asked_on(visit: &Visit, task: TaskId) -> Step {
    let needed = needs(visit, task).filter(|step| !matches!(step, Step::Task(_)));
    needed.unwrap_or(Step::Task(task))
}

/// What is asked before a task by mouth.
fn needs(visit: &Visit, task: TaskId) -> Option<Step> {
    let exam = &visit.exam;
    if !task.is_by_mouth() {
        return None;
    }
    let held = in_the_way(task, exam, exam.now);
    let mut first = held.iter().filter(|one| comes_first(one));
    first.find_map(|one| match (one, clears(one, exam)) {
        // Where it stands with what else the gate found.
        (Obstacle::Gate { .. }, _) => Some(Step::GateResult),
        (_, Some(Clears::Page(step))) => Some(step),
        _ => None,
    })
}

/// The page after a gate group.
pub fn after_group(visit: &Visit, group: Group) -> Step {
    if emergency(visit) || gate_stops(visit) {
        return Step::GateResult;
    }
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
    if emergency(visit) {
        return Step::GateResult;
    }
    if let Some(next) = screen.oral.next(region) {
        return Step::Oral(next);
    }
    if screen.gate && gate_closed(&visit.exam).is_some() {
        return looking_goes_on(visit).unwrap_or(Step::GateResult);
    }
    match first_due(visit, &screen.tasks_of(&visit.exam)) {
        Some(task) if screen.oral.before().contains(&region) => asked_before(visit, task),
        _ => Step::Decision,
    }
}

/// Whether the gag must wait: a swallow trial of this screen is still to come.
pub fn gag_waits(visit: &Visit) -> bool {
    visit.exam.ended.is_none()
        && visit.screen.is_some_and(|id| {
            id.screen().tasks.iter().any(|task| {
                let done = tasks::is_done(*task, &visit.exam);
                task.is_by_mouth() && !done && !is_over(*task, &visit.exam)
            })
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
    if emergency(visit) {
        return Step::GateResult;
    }
    let tasks = screen.tasks_of(&visit.exam);
    let after = tasks.iter().skip_while(|other| **other != task).skip(1);
    let mut after: Vec<TaskId> = after.copied().collect();
    let closed = screen.gate && gate_closed(&visit.exam).is_some();
    if closed {
        after.retain(|task| is_speech(*task));
    }
    match (
        first_due(visit, &after),
        open_region(visit, screen.oral.after()),
    ) {
        (Some(next), _) => asked_on(visit, next),
        (None, _) if closed => Step::GateResult,
        (None, Some(region)) => region,
        (None, None) => Step::Decision,
    }
}

/// Whether everything by mouth ends at the gate, there and then.
pub fn gate_stops(visit: &Visit) -> bool {
    let mut found = visit.exam.gate.exceptions(&visit.exam.policy);
    found.any(|(_, _, state)| state == State::Stop)
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
