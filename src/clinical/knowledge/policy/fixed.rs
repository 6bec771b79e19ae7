//! Design choices that no policy file can change.

use crate::clinical::knowledge::policy::SETTINGS;
use crate::clinical::knowledge::rule::Basis;
use crate::clinical::knowledge::rules;

/// Choices that are no rule: how a task is done and how a result is worded. What it is, and why.
static BESIDE_RULES: [(&str, &str); 12] = [
    (
        "The voice is heard before water and again when the watch is over.",
        "a change is read against the voice before; when to listen was not found published.",
    ),
    (
        "First lip contact and last swallow are pressed; swallow taps are welcome.",
        "the rule counts from the last swallow, so that the minute has one beginning.",
    ),
    (
        "A swallow at 30.0 seconds, and a sign at 60.0, count.",
        "the published limits do not say; what lies on the line belongs to the time asked for.",
    ),
    (
        "A rate worked out from taps is rounded half up before it is banded: 24.5 is 25.",
        "the bands are in whole breaths, and half up takes the graver band at the upper end.",
    ),
    (
        "The gag is offered, and left out on refusal, nausea, a recent meal, pain, loose teeth, bleeding risk or worry about pressure in the head.",
        "it decides nothing, so no risk is taken for it.",
    ),
    (
        "Results read stop, refer, incomplete, no sign seen, or not done with its reason.",
        "a record must mean the same on every phone.",
    ),
    (
        "Drink and food levels stand in the handover as the clinician picked them.",
        "a screen derives no diet.",
    ),
    (
        "Supervision, pace, medicines and mouth care are said in plain sentences the same for everybody.",
        "what differs for one person, the clinician writes.",
    ),
    (
        "To whom a referral goes, and by when, is asked each time.",
        "services differ by day and hour; a text that names nobody helps nobody.",
    ),
    (
        "Names and numbers of drink and food levels stand unchanged, without the framework's figure or colours.",
        "its licence permits no work beyond translation.",
    ),
    (
        "Choking can be called a slip for two minutes, and no longer once help or baseline was recorded.",
        "later, a slip on the way to its page would take a real one back.",
    ),
    (
        "A visit has a label, never a name; nothing leaves the phone but what is copied, shared or saved.",
        "a lost phone must not name anybody.",
    ),
];

/// Every design choice that no setting changes, each with why: rules that rest on local policy,
/// and what is no rule.
///
/// Their range is the one value they have: safety or the meaning of a record hangs on them, so
/// that they are the same on every phone.
pub fn fixed() -> impl Iterator<Item = (&'static str, &'static str)> {
    let rules = rules::ALL.iter().filter_map(|rule| match rule.basis {
        Basis::LocalPolicy { why, .. } if SETTINGS.iter().all(|s| s.read_by != rule.id) => {
            Some((rule.says, why))
        }
        _ => None,
    });
    rules.chain(BESIDE_RULES)
}
