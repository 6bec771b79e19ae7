//! What the gate says about an examination.

use std::cmp::Reverse;

use crate::clinical::decision::fresh;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::GateFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate;
use crate::clinical::findings::gate::{Exception, Group, Item, State, go_on};
use crate::clinical::findings::go_on::{GoOn, Ground, WentOn};
use crate::clinical::findings::in_the_way::{Obstacle, gate_key};
use crate::clinical::findings::oral::Found;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::against_gate;
use crate::clinical::tasks::oral::flags::{WEAKNESS, unsaid};

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
                GateFact::NotAsked { group, open },
            ));
        }
    }
    flags
}

/// What an exception says: told with its reason where it was gone past.
fn of(exam: &Exam, item: &'static Item, exception: &'static Exception, state: State) -> Flag {
    let passed = exam.went_on(&gate_key(item, exception), go_on(item, state));
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
    let fact = GateFact::Excepted {
        item,
        exception,
        gone_past: passed.map(WentOn::gone_past),
    };
    item.rule.flag(level, domain, fact)
}

/// What new or worse weakness says where a screen looks at the mouth. `gate`: the screen has a
/// gate, which says what was answered by itself.
pub fn of_weakness(exam: &Exam, gate: bool) -> Vec<Flag> {
    if !gate {
        return weakness_answered(exam);
    }
    // Without a gate nothing is given, and no verdict says that nothing was seen.
    let flag = to_be_said(exam).map(|_| {
        rules::GATE_NEW_WEAKNESS.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            GateFact::WeaknessNotSaid,
        )
    });
    flag.into_iter().collect()
}

/// The answer on new or worse weakness, for screens without a gate.
fn weakness_answered(exam: &Exam) -> Vec<Flag> {
    let Some(item) = gate::find(WEAKNESS) else {
        return Vec::new();
    };
    let mut flags: Vec<Flag> = exam
        .gate
        .exceptions(&exam.policy)
        .filter(|(i, _, _)| i.id == item.id)
        .map(|(item, exception, state)| of(exam, item, exception, state))
        .collect();
    if exam.oral.is_begun() && !exam.gate.answered(item) {
        flags.push(rules::ORAL_WEAKNESS_NOT_ASKED.flag(
            Level::Note,
            Domain::Urgent,
            GateFact::WeaknessNotAsked,
        ));
    }
    flags
}

/// Weakness of which nobody said whether it is new. Where somebody went on before something was
/// given because the team knows, that was the answer.
pub fn to_be_said(exam: &Exam) -> Option<Vec<Found>> {
    let weak = unsaid(exam)?;
    let asked = Obstacle::CouldBeNew { weak: weak.clone() };
    let said = exam.went_past(&asked, GoOn::WithReason);
    said.is_none_or(|on| on.picked() != Some(Ground::TeamKnows))
        .then_some(weak)
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
