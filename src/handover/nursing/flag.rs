//! A flag in the text: its words, and how soon they may be cut.

use std::cmp::Reverse;

use crate::clinical::findings::fact::Fact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::go_on::GonePast;
use crate::clinical::knowledge::rules;
use crate::handover::action::{calls_doctor, is_deterioration};
use crate::handover::parts::{Need, Part, Tells};
use crate::wording;
use crate::wording::flag::dry::counted;
use crate::wording::words::small;

/// A flag that says what was seen, or why: how much else it is needed is the list's to say.
pub(super) fn situated(flag: &Flag, need: Need) -> Part {
    let doctor = calls_doctor(flag) && flag.level() > Level::Note;
    if doctor || flag.domain() == Domain::Urgent || is_airway_tube(flag) {
        Part::new(Need::Always, worded(flag))
    } else if let Some(tells) = sign_of(flag) {
        let of = if tells.of_90 { " (90 mL)" } else { "" };
        let short = format!("{}{of}", tells.sign.past());
        Part::or(Need::Short, worded(flag), short).telling(tells)
    } else if let Some(short) = dry_few(flag) {
        Part::or(Need::Short, worded(flag), short)
    } else {
        Part::new(need, worded(flag))
    }
}

/// Too few dry swallows, in short.
fn dry_few(flag: &Flag) -> Option<String> {
    match flag.fact() {
        Fact::Dry(fact) if flag.rule() == &rules::DRY_FEW => counted(fact),
        _ => None,
    }
}

/// The sign a flag is of.
fn sign_of(flag: &Flag) -> Option<Tells> {
    let fact = flag.fact();
    Some(Tells {
        sign: fact.of_sign()?,
        of_90: fact.is_of_90(),
    })
}

/// A flag in words. A reading above its target reads as well as any, unless that is said.
pub(super) fn worded(flag: &Flag) -> String {
    let words = small(&flag.reason());
    if flag.rule().id == rules::BREATHING_SECOND_SCALE.id && flag.level() >= Level::Incomplete {
        format!("{words}, above the confirmed 88 to 92 %")
    } else {
        words
    }
}

/// Whether a flag says what was seen of the person, or read, rather than what was left out.
pub(super) fn is_seen(flag: &Flag) -> bool {
    // An emergency, and what can't be read: a sign may stand in it.
    let grave = [rules::RECORD_UNREAD.id, rules::GATE_SALIVA.id].contains(&flag.rule().id);
    grave
        || flag.domain() == Domain::Urgent
        || is_airway_tube(flag)
        || is_deterioration(flag)
        || flag.fact().names_sign().is_some()
}

/// The gravest first: what there is no room for is never what calls the doctor, nor what was seen.
pub(super) fn gravest_first<'a>(flags: impl Iterator<Item = &'a Flag>) -> Vec<&'a Flag> {
    let mut flags: Vec<&Flag> = flags.collect();
    let grave = |flag: &Flag| {
        let level = flag.level();
        let doctor = level > Level::Note && calls_doctor(flag);
        let names_sign = flag.fact().names_sign().is_some();
        (level, doctor, names_sign, is_seen(flag))
    };
    flags.sort_by_key(|flag| Reverse(grave(flag)));
    // The same reading of many trials takes the room of one.
    flags.dedup_by(|a, b| (a.rule(), a.fact()) == (b.rule(), b.fact()));
    flags
}

fn is_airway_tube(flag: &Flag) -> bool {
    flag.rule().id == rules::GATE_AIRWAY_TUBE.id
}

/// What was gone past with its reason: without it as soon as there is no room for both.
pub(super) fn gone_past(what: &str, gone: &GonePast) -> Part {
    let whole = small(&wording::gone_past::told(what, gone));
    Part::or(
        Need::GonePast,
        whole,
        small(&wording::gone_past::without_reason(what)),
    )
}
