//! A flag in the text: its words, and how soon they may be cut.

use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::rules;
use crate::clinical::sign::{Sign, SignTask, meaning};
use crate::clinical::words::small;
use crate::handover::action::{calls_doctor, is_deterioration};
use crate::handover::room::{Part, always, kept};
use crate::measure::order::put_in_order;

/// A flag in the situation, or one that says what was seen: nothing of it is cut first.
pub(super) fn situated(flag: &Flag) -> Part {
    if is_airway_tube(flag) {
        always(worded(flag))
    } else {
        kept(worded(flag))
    }
}

/// A flag in words. A reading above its target reads as well as any, unless that is said.
pub(super) fn worded(flag: &Flag) -> String {
    let words = small(flag.reason().trim_end_matches('.'));
    if flag.rule().id == rules::BREATHING_SECOND_SCALE.id && flag.level() >= Level::Incomplete {
        format!("{words}, above the confirmed 88 to 92 %")
    } else {
        words
    }
}

/// Whether a flag is that of a sign, or names one.
pub(super) fn names_sign(flag: &Flag) -> bool {
    let named = |sign: Sign| {
        let table = |task: &SignTask| meaning(sign, *task).1.id == flag.rule().id;
        flag.reason().contains(sign.past()) || SignTask::ALL.iter().any(table)
    };
    Sign::ALL.into_iter().any(named)
}

/// Whether a flag says what was seen of the person, or read, rather than what was left out.
pub(super) fn is_seen(flag: &Flag) -> bool {
    // An emergency, and what can't be read: a sign may stand in it.
    let grave = [rules::RECORD_UNREAD.id, rules::GATE_SALIVA.id].contains(&flag.rule().id);
    grave
        || flag.domain() == Domain::Urgent
        || is_airway_tube(flag)
        || is_deterioration(flag)
        || names_sign(flag)
}

/// The gravest first: what there is no room for is never what calls the doctor, nor what was seen.
pub(super) fn gravest_first<'a>(flags: impl Iterator<Item = &'a Flag>) -> Vec<&'a Flag> {
    let mut flags: Vec<&Flag> = flags.collect();
    let grave = |flag: &Flag| {
        let level = flag.level();
        let doctor = level > Level::Note && calls_doctor(flag);
        (level, doctor, names_sign(flag), is_seen(flag))
    };
    put_in_order(&mut flags, |a, b| grave(b).cmp(&grave(a)));
    // The same reading of many trials takes the room of one.
    flags.dedup_by(|a, b| a.reason() == b.reason());
    flags
}

fn is_airway_tube(flag: &Flag) -> bool {
    flag.rule().id == rules::GATE_AIRWAY_TUBE.id
}
