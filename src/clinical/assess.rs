//! From an examination to its decision.

use super::decision::{Decision, Verdict, decide};
use super::exam::{EndedEarly, Exam};
use super::flag::{Domain, Flag, Level};
use super::gate::{self, State};
use super::gate_flags;
use super::rules;
use super::screen::Screen;
use super::sign::Sign;
use super::task::TaskId;
use super::tasks::{self, breathing};
use super::words::small;

/// Every flag of a screen, in the order of its tasks.
pub fn flags(screen: &Screen, exam: &Exam) -> Vec<Flag> {
    let mut flags = Vec::new();
    if screen.gate {
        flags.extend(gate_flags::flags(exam));
    }
    for task in screen.tasks {
        flags.extend(tasks::flags(*task, exam));
    }
    // What was added to the screen counts as soon as it was begun.
    for task in screen.extras() {
        if exam.latest_started(task).is_some() {
            flags.extend(tasks::flags(task, exam));
        }
    }
    let signed = exam
        .trials
        .iter()
        .any(|t| t.signs().any(|(sign, _)| sign == Sign::Choke));
    if exam.choked && !signed {
        flags.push(rules::WATER_CHOKE.flag(Level::Stop, Domain::EatingDrinking, "choked"));
    }
    if exam.unread > 0 {
        flags.push(rules::RECORD_UNREAD.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            format!(
                "{} entries of this visit are missing or can't be read",
                exam.unread
            ),
        ));
    }
    if exam.age.is_none() {
        flags.push(rules::PERSON_AGE.flag(
            Level::Note,
            Domain::EatingDrinking,
            "age not given: the rules for adults were used",
        ));
    }
    // A reason for going on that led to nothing is no news.
    let given = exam
        .trials
        .iter()
        .any(|t| t.start().is_some() && tasks::spec(t.task).by_mouth);
    let what = match exam.latest_started(TaskId::Own) {
        Some(_) => "A trial by mouth",
        None => "Water",
    };
    for on in exam.went_on.iter().filter(|_| given) {
        // The gate and the breathing say theirs themselves, beside the reading.
        if !on.hold.starts_with("gate.") && !on.hold.starts_with("breathing.") {
            flags.push(rules::HOLD_PASSED.flag(
                Level::Note,
                Domain::EatingDrinking,
                format!(
                    "{what} was given despite this, decided by the {}: {}",
                    on.by.words(),
                    small(&on.because)
                ),
            ));
        }
    }
    flags
}

/// Why the gate is closed, if it is: an emergency, or a block nobody took on.
pub fn gate_closed(exam: &Exam) -> Option<EndedEarly> {
    let mut closed = None;
    for (item, exception, state) in exam.gate.exceptions(&exam.policy) {
        match state {
            State::Emergency => return Some(EndedEarly::Emergency),
            State::Block
                if exam
                    .went_on(&gate::hold_id(item, exception), gate::go_on(item))
                    .is_none() =>
            {
                closed = Some(EndedEarly::GateClosed);
            }
            _ => {}
        }
    }
    closed.or_else(|| {
        breathing::blocks(exam)
            .iter()
            .any(|b| b.closes() && exam.went_on(&b.hold, b.go_on).is_none())
            .then_some(EndedEarly::GateClosed)
    })
}

/// The decision of a screen.
pub fn assess(screen: &Screen, exam: &Exam) -> Decision {
    let closed = screen.gate.then(|| gate_closed(exam)).flatten();
    let too_young = screen
        .tasks
        .iter()
        .any(|task| tasks::spec(*task).by_mouth && tasks::aside(*task, exam).is_some())
        .then_some(EndedEarly::NotForAge);
    // An emergency or a closed gate is the graver word than "broken off".
    let mut decision = decide(flags(screen, exam), closed.or(too_young).or(exam.ended));
    if !screen.decides
        && decision.missing.is_empty()
        && matches!(decision.verdict, Verdict::Incomplete | Verdict::Pass)
    {
        decision.verdict = Verdict::NoDecision;
    }
    decision
}
