//! What the examination found that the gate says is not so: saliva pools, though the gate has it
//! managed. What was seen later and closer counts.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::GateFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate;
use crate::clinical::findings::gate::{Exception, HOLDS, Item, State};
use crate::clinical::findings::go_on::{GoOn, WentOn};
use crate::clinical::findings::in_the_way::against_key;
use crate::clinical::findings::oral::Found;
use crate::clinical::knowledge::oral;

/// Item and exception of the examination, and the item of the gate that it speaks against.
static AGAINST: [(&str, &str, &str); 8] = [
    ("mouth.moist", "pooled", "saliva"),
    ("mouth.moist", "drools", "saliva"),
    ("throat.wall", "pooled", "saliva"),
    ("throat.wall", "food", "mouth"),
    ("mouth.sulci", "food", "mouth"),
    ("mouth.sulci", "tablet", "mouth"),
    ("voice.ah", "wet", "saliva"),
    ("cough", "none", "cough"),
];

/// One such finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Against {
    /// The gate's item.
    pub item: &'static Item,
    /// The gravest of its exceptions: what to do about it is what is to be done here.
    pub worst: &'static Exception,
    /// What was found.
    pub found: Found,
    /// Who may go on past it: what can be put right on the spot, anybody who says so.
    pub go_on: GoOn,
}

/// All of them, where the gate's item was taken to hold: an exception there says it already.
pub fn against_gate(exam: &Exam) -> Vec<Against> {
    let one = |(id, exception, gate_item): &(&str, &str, &str)| {
        let item = oral::find(id)?;
        let answer = exam.oral.answer(item);
        let found = answer
            .found()
            .iter()
            .find(|f| f.exception().id == *exception)?;
        let gate_item = gate::find(gate_item)?;
        if exam.gate.0.get(gate_item.id).is_none_or(|a| a != HOLDS) {
            return None;
        }
        let worst = gate_item
            .exceptions
            .iter()
            .max_by_key(|e| gate::state_of(gate_item, e, &exam.policy))?;
        let go_on = match gate::state_of(gate_item, worst, &exam.policy) {
            State::Fix | State::Caution => GoOn::WithReason,
            state => gate::go_on(gate_item, state),
        };
        Some(Against {
            item: gate_item,
            worst,
            found: *found,
            go_on,
        })
    };
    AGAINST.iter().filter_map(one).collect()
}

/// What they say: incomplete, or a note where somebody went on past one with a reason.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    against_gate(exam)
        .into_iter()
        .map(|against| {
            let on = exam.went_on(&against_key(&against.found), against.go_on);
            let level = match on {
                Some(_) => Level::Note,
                None => Level::Incomplete,
            };
            let fact = GateFact::Against {
                item: against.item,
                found: against.found,
                gone_past: on.map(WentOn::gone_past),
            };
            against.item.rule.flag(level, Domain::EatingDrinking, fact)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_names_what_there_is() {
        for (id, exception, gate_item) in AGAINST {
            let item = oral::find(id).unwrap();
            assert!(
                item.exceptions.iter().any(|e| e.id == exception),
                "{id}.{exception}"
            );
            assert!(gate::find(gate_item).is_some(), "{gate_item}");
        }
    }
}
