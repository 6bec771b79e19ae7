//! A flag in the text: its words, and how soon they may be cut.

use crate::clinical::flag::{Flag, Level};
use crate::clinical::rules;
use crate::clinical::sign::{Sign, SignTask, meaning};
use crate::clinical::words::small;
use crate::handover::action::is_deterioration;
use crate::handover::room::{Part, always, kept, plain};

/// A flag in the situation: nothing of it is cut first.
pub(super) fn situated(flag: &Flag) -> Part {
    if is_airway_tube(flag) {
        always(worded(flag))
    } else {
        kept(worded(flag))
    }
}

/// A flag beside the headline: what was seen or read in a trial is among the last to be cut.
pub(super) fn beside(flag: &Flag) -> Part {
    if is_seen(flag) {
        situated(flag)
    } else {
        plain(worded(flag))
    }
}

/// A flag in words. A reading above its target reads as well as any, unless that is said.
pub(super) fn worded(flag: &Flag) -> String {
    let words = small(flag.reason());
    if flag.rule().id == rules::BREATHING_SECOND_SCALE.id && flag.level() >= Level::Incomplete {
        format!("{words}, above the confirmed 88 to 92 %")
    } else {
        words
    }
}

/// Whether a flag says what was seen of the person, or read, rather than what was left out.
pub(super) fn is_seen(flag: &Flag) -> bool {
    let rule = flag.rule().id;
    let named = |sign: Sign| {
        let table = |task: &SignTask| meaning(sign, *task).1.id == rule;
        flag.reason().contains(sign.past()) || SignTask::ALL.iter().any(table)
    };
    is_airway_tube(flag) || is_deterioration(flag) || Sign::ALL.into_iter().any(named)
}

fn is_airway_tube(flag: &Flag) -> bool {
    flag.rule().id == rules::GATE_AIRWAY_TUBE.id
}
