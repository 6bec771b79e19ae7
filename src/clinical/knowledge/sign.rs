//! Signs seen while somebody swallows, and the one table that says what each means.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::level::Level;
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;

/// A sign. The order is that of the buttons.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Sign {
    /// Coughed.
    Cough,
    /// Voice wet or otherwise changed.
    VoiceChange,
    /// Cleared the throat.
    ThroatClear,
    /// Paused: did not drink in one go.
    Pause,
    /// Spilled or drooled.
    Spill,
    /// Breathing changed, colour changed, distress.
    BreathingChange,
    /// No swallow seen or felt.
    NoSwallow,
    /// Asked to stop.
    AskedToStop,
    /// Choked.
    Choke,
}

impl Sign {
    /// All signs, in the order of the buttons. Choking stands last and alone on the page.
    pub const ALL: [Sign; 9] = [
        Sign::Cough,
        Sign::VoiceChange,
        Sign::ThroatClear,
        Sign::Pause,
        Sign::Spill,
        Sign::BreathingChange,
        Sign::NoSwallow,
        Sign::AskedToStop,
        Sign::Choke,
    ];
}

/// The task a sign was seen in. One column of the table each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SignTask {
    /// 3-oz (90 mL) water without a pause.
    Water90,
    /// 3 mL of water from a syringe.
    ThreeMl,
    /// Small sips of water, one size after the other.
    Sips,
    /// A cup of water against the clock.
    TimedWater,
    /// One cracker against the clock.
    Cracker,
    /// The clinician's own trials, of any consistency.
    Own,
    /// A meal or a drink watched at the table.
    Meal,
}

impl SignTask {
    /// All columns, in order.
    pub const ALL: [SignTask; 7] = [
        SignTask::Water90,
        SignTask::ThreeMl,
        SignTask::Sips,
        SignTask::TimedWater,
        SignTask::Cracker,
        SignTask::Own,
        SignTask::Meal,
    ];
}

/// The sign x task table: what a sign means in a task, and by which rule.
///
/// **Invariant:** this, with what [`meaning_under`] lets a policy change, is the only place that
/// turns a sign into a level.
pub fn meaning(sign: Sign, task: SignTask) -> (Level, &'static Rule) {
    match (task, sign) {
        (SignTask::Water90, Sign::Cough) => (Level::Refer, &rules::WATER_COUGH),
        (SignTask::Water90, Sign::VoiceChange) => (Level::Refer, &rules::WATER_VOICE),
        (SignTask::Water90, Sign::ThroatClear) => (Level::Note, &rules::WATER_THROAT_CLEAR),
        (SignTask::Water90, Sign::Pause) => (Level::Refer, &rules::WATER_INTERRUPTED),
        (SignTask::Water90, Sign::Spill) => (Level::Refer, &rules::WATER_SPILL),
        (SignTask::Water90, Sign::BreathingChange) => (Level::Stop, &rules::WATER_BREATHING_CHANGE),
        (SignTask::Water90, Sign::NoSwallow) => (Level::Stop, &rules::WATER_NO_SWALLOW),
        (SignTask::Water90, Sign::AskedToStop) => (Level::Refer, &rules::WATER_ASKED_TO_STOP),
        (SignTask::Water90, Sign::Choke) => (Level::Stop, &rules::WATER_CHOKE),
        (
            SignTask::ThreeMl
            | SignTask::Sips
            | SignTask::TimedWater
            | SignTask::Cracker
            | SignTask::Own
            | SignTask::Meal,
            sign,
        ) => in_any_trial(sign),
    }
}

/// The columns but that of the 90 mL: they don't differ. Only the 90 mL are drunk in one go, so
/// only there a pause refers; only there an unfinished cup refers, and so a request to stop.
fn in_any_trial(sign: Sign) -> (Level, &'static Rule) {
    match sign {
        Sign::Cough => (Level::Refer, &rules::TRIAL_COUGH),
        Sign::VoiceChange => (Level::Refer, &rules::TRIAL_VOICE),
        Sign::ThroatClear => (Level::Note, &rules::TRIAL_THROAT_CLEAR),
        Sign::Pause => (Level::Note, &rules::TRIAL_PAUSE),
        Sign::Spill => (Level::Refer, &rules::TRIAL_SPILL),
        Sign::BreathingChange => (Level::Stop, &rules::TRIAL_BREATHING_CHANGE),
        Sign::NoSwallow => (Level::Stop, &rules::TRIAL_NO_SWALLOW),
        Sign::AskedToStop => (Level::Incomplete, &rules::TRIAL_ASKED_TO_STOP),
        Sign::Choke => (Level::Stop, &rules::TRIAL_CHOKE),
    }
}

/// What a sign means in a task under a policy: two signs on which the sources differ.
pub fn meaning_under(sign: Sign, task: SignTask, policy: &Policy) -> (Level, &'static Rule) {
    let (level, rule) = meaning(sign, task);
    let level = match (task, sign) {
        (SignTask::Water90, Sign::VoiceChange) if !policy.voice_refers => Level::Note,
        (SignTask::Water90, Sign::ThroatClear) if policy.throat_clear_refers => Level::Refer,
        _ => level,
    };
    (level, rule)
}
