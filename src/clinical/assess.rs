//! From an examination to its decision.

use super::decision::{Decision, decide};
use super::exam::{EndedEarly, Exam};
use super::flag::{Domain, Flag, Level};
use super::gate::{self, State};
use super::hold::PASSED;
use super::screen::Screen;
use super::tasks;

/// Every flag of a screen, in the order of its tasks.
pub fn flags(screen: &Screen, exam: &Exam) -> Vec<Flag> {
    let mut flags = Vec::new();
    if screen.gate {
        flags.extend(gate::flags(exam));
    }
    for task in screen.tasks {
        flags.extend(tasks::flags(*task, exam));
    }
    for on in &exam.went_on {
        // The gate and the breathing say theirs themselves, beside the reading.
        if !on.hold.starts_with("gate.") && !on.hold.starts_with("breathing.") {
            flags.push(PASSED.flag(
                Level::Note,
                Domain::EatingDrinking,
                format!(
                    "Water was given all the same ({}): {}",
                    on.by.words(),
                    on.because
                ),
            ));
        }
    }
    flags
}

/// Why the gate is closed, if it is: an emergency, or a block nobody took on.
pub fn gate_closed(exam: &Exam) -> Option<EndedEarly> {
    let mut closed = None;
    for (item, _, state) in exam.gate.exceptions(&exam.policy) {
        match state {
            State::Emergency => return Some(EndedEarly::Emergency),
            State::Block if exam.went_on(&gate::hold_id(item)).is_none() => {
                closed = Some(EndedEarly::GateClosed);
            }
            _ => {}
        }
    }
    closed.or_else(|| {
        super::tasks::breathing::blocks(exam)
            .iter()
            .any(|(hold, _)| *hold != "breathing.not-counted" && exam.went_on(hold).is_none())
            .then_some(EndedEarly::GateClosed)
    })
}

/// The decision of a screen.
pub fn assess(screen: &Screen, exam: &Exam) -> Decision {
    let closed = screen.gate.then(|| gate_closed(exam)).flatten();
    // An emergency or a closed gate is the graver word than "broken off".
    decide(flags(screen, exam), closed.or(exam.ended))
}
