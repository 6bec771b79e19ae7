//! Which file of examples stands for which rules: a group ("gate.") or one rule by its id.
//!
//! Each file holds that every rule of its groups has an example that raises it; `every_rule.rs`
//! holds that every rule there is lies in the groups of exactly one file.

#![allow(dead_code)]

/// `swallow_rule_examples.rs` and its table.
pub(crate) const SWALLOW: &[&str] = &[
    "three-ml.",
    "sips.",
    "trial.",
    "timed-water.",
    "cracker.",
    "six-signs.",
    "flow.",
    "mouth.",
    "cough.",
    "weak-side.",
    "face.",
    "tongue.",
    "decision.",
    "gag.",
    "breathing.infant",
    "breathing.taught-range",
    "breathing.taps",
];

/// `screen_rule_examples.rs`.
pub(crate) const SCREEN: &[&str] = &[
    "gate.",
    "breathing.rate",
    "breathing.spo2",
    "breathing.spo2-low",
    "breathing.spo2-fall",
    "breathing.second-scale",
    "breathing.child",
    "breathing.thirty",
    "breathing.not-counted",
    "dry.",
    "water.",
    "hold.",
    "record.",
    "person.",
    "own.",
    "timed-cup.",
    "eaten.",
    "meal.",
    "sign.",
];

/// `speech_rule_examples.rs`.
pub(crate) const SPEECH: &[&str] = &["speech.", "voice.", "breath."];

/// `oral_examples.rs`.
pub(crate) const ORAL: &[&str] = &["oral."];

/// Every file.
pub(crate) const FILES: [&[&str]; 4] = [SWALLOW, SCREEN, SPEECH, ORAL];

/// Whether a group, or a rule's own id, takes a rule in.
pub(crate) fn takes(entry: &str, id: &str) -> bool {
    match entry.ends_with('.') {
        true => id.starts_with(entry),
        false => id == entry,
    }
}

/// Whether a file stands for a rule.
pub(crate) fn stands_for(file: &[&str], id: &str) -> bool {
    file.iter().any(|entry| takes(entry, id))
}
