//! What the gate says about an examination.

use crate::clinical::decision::fresh;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate::{Exception, Group, Item, State, go_on, hold_id};
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::against_gate;
use std::cmp::Reverse;

/// What the gate says about this examination: notes, and what was gone past with a reason.
///
/// A closed gate itself is not a flag but the end of the visit, see [`crate::clinical::decision::verdict`].
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let mut flags = Vec::new();
    // The gravest first: what can be put right on the spot never stands for what closes the gate.
    let mut exceptions: Vec<_> = exam.gate.exceptions(&exam.policy).collect();
    exceptions.sort_by_key(|exception| Reverse(exception.2));
    for (item, exception, state) in exceptions {
        flags.push(of(exam, item, exception, state));
    }
    flags.extend(against_gate::flags(exam));
    flags.extend(fresh::flags(exam));
    for group in Group::ALL {
        let open = group.items().filter(|i| !exam.gate.answered(i)).count();
        if open > 0 {
            flags.push(rules::GATE_NOT_ASKED.flag(
                Level::Incomplete,
                Domain::EatingDrinking,
                format!(
                    "\"{}\": {open} of {} not asked",
                    group.title(),
                    group.items().count()
                ),
            ));
        }
    }
    flags
}

/// What an exception says: told with its reason where it was gone past.
pub fn of(exam: &Exam, item: &'static Item, exception: &'static Exception, state: State) -> Flag {
    let passed = exam.went_on(&hold_id(item, exception), go_on(item));
    let reason = match passed {
        Some(on) => on.told(exception.words),
        None => exception.words.to_owned(),
    };
    let level = match state {
        State::Caution => Level::Note,
        _ if passed.is_some() => Level::Note,
        // Told apart as the reason for "not done"; as a flag it keeps the screen incomplete.
        _ => Level::Incomplete,
    };
    let domain = match state {
        State::Emergency => Domain::Urgent,
        _ => Domain::EatingDrinking,
    };
    item.rule.flag(level, domain, reason)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_not_asked_keeps_the_screen_incomplete() {
        let flags = flags(&Exam::default());
        assert_eq!(flags.len(), 4);
        assert!(flags.iter().all(|f| f.level() == Level::Incomplete));
    }
}
