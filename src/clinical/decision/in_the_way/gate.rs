//! The answers before the start: an emergency stops every task, the others what is given by mouth.

use super::kind::InTheWay;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::gate::State;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::oral::against_gate::against_gate;

/// Answers that hold this task.
pub(super) fn answers(task: TaskId, exam: &Exam) -> Vec<InTheWay> {
    let by_mouth = task.is_by_mouth();
    let holds = |state: State| match state {
        State::Caution => false,
        State::Emergency => true,
        State::Stop | State::Block | State::Fix => by_mouth,
    };
    let held = all_answers(exam);
    held.filter(|one| matches!(one, Obstacle::Gate { state, .. } if holds(*state)))
        .collect()
}

/// Every answer other than "holds".
pub(super) fn all_answers(exam: &Exam) -> impl Iterator<Item = InTheWay> + '_ {
    let exceptions = exam.gate.exceptions(&exam.policy);
    exceptions.map(|(item, exception, state)| Obstacle::Gate {
        item,
        exception,
        state,
    })
}

/// What the mouth shows against them, where something is given by mouth.
pub(super) fn against(task: TaskId, exam: &Exam) -> Vec<InTheWay> {
    match task.is_by_mouth() {
        true => all_against(exam).collect(),
        false => Vec::new(),
    }
}

/// What the mouth shows against them.
pub(super) fn all_against(exam: &Exam) -> impl Iterator<Item = InTheWay> {
    let all = against_gate(exam).into_iter();
    all.map(|against| Obstacle::AgainstGate {
        found: against.found,
        item: against.item,
        worst: against.worst,
        go_on: against.go_on,
    })
}

/// Questions that are not answered.
pub(super) fn open(task: TaskId, exam: &Exam) -> Option<InTheWay> {
    let open = exam.gate.open().count();
    (task.is_by_mouth() && open > 0).then_some(Obstacle::GateOpen { open })
}
