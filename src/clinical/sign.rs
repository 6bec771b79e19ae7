//! Signs seen while somebody swallows, and the one table that says what each means.

use serde::{Deserialize, Serialize};

use super::flag::Level;
use super::rule::{Basis, Rule};
use super::source;

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

    /// The word on the button.
    pub const fn button(self) -> &'static str {
        match self {
            Sign::Cough => "Cough",
            Sign::VoiceChange => "Wet voice",
            Sign::ThroatClear => "Throat clear",
            Sign::Pause => "Pause",
            Sign::Spill => "Spill, drool",
            Sign::BreathingChange => "Breathing change",
            Sign::NoSwallow => "No swallow",
            Sign::AskedToStop => "Asked to stop",
            Sign::Choke => "Choking",
        }
    }

    /// What happened, in words for a sentence: "coughed".
    pub const fn past(self) -> &'static str {
        match self {
            Sign::Cough => "coughed",
            Sign::VoiceChange => "voice turned wet or changed",
            Sign::ThroatClear => "cleared the throat",
            Sign::Pause => "paused",
            Sign::Spill => "spilled or drooled",
            Sign::BreathingChange => "breathing changed",
            Sign::NoSwallow => "no swallow was seen or felt",
            Sign::AskedToStop => "asked to stop",
            Sign::Choke => "choked",
        }
    }
}

/// The task a sign was seen in. One column of the table each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SignTask {
    /// 3-oz (90 mL) water without a pause.
    Water90,
}

/// The rule for a cough while or after drinking.
pub static COUGH: Rule = Rule {
    id: "water.cough",
    says: "A cough while drinking or within 60 seconds after the last swallow is a reason to refer.",
    basis: Basis::Published(&[&source::TH4, &source::IDC, &source::GRA]),
};

/// The rule for a wet or changed voice.
pub static VOICE: Rule = Rule {
    id: "water.voice",
    says: "A wet, hoarse or otherwise changed voice after drinking that was not there before is a \
           reason to refer. Not proof; no voice change does not clear.",
    basis: Basis::LocalPolicy {
        why: "sources differ: the first rule has the voice sign, a later version drops it.",
        seen: &[&source::TH4, &source::IDC, &source::GRA, &source::WAI11],
    },
};

/// The rule for choking.
pub static CHOKE: Rule = Rule {
    id: "water.choke",
    says: "Choking or breathing distress ends the trial: no further oral trial.",
    basis: Basis::LocalPolicy {
        why: "the published rules refer after a cough or choke; marked choking is taken as a stop.",
        seen: &[&source::TH4, &source::IDC],
    },
};

/// The rule for a pause.
pub static PAUSE: Rule = Rule {
    id: "water.interrupted",
    says: "Not drinking all of it in one continuous go is a reason to refer.",
    basis: Basis::Published(&[&source::TH4, &source::IDC]),
};

/// The rule for spilling or drooling.
pub static SPILL: Rule = Rule {
    id: "water.spill",
    says: "Drooling or spilling during the trial: stop it and refer.",
    basis: Basis::LocalPolicy {
        why: "drooling is published as a reason to stop and tell; spilling and referring are added.",
        seen: &[&source::GRA],
    },
};

/// The rule for a change of breathing.
pub static BREATHING_CHANGE: Rule = Rule {
    id: "water.breathing-change",
    says: "A change of breathing or colour, or distress, ends the trial: no further oral trial.",
    basis: Basis::LocalPolicy {
        why: "the trial is stopped on any breathing change; no published rule was found.",
        seen: &[&source::GRA],
    },
};

/// The rule for no swallow.
pub static NO_SWALLOW: Rule = Rule {
    id: "water.no-swallow",
    says: "No swallow seen or felt: stop, clear the mouth and refer.",
    basis: Basis::LocalPolicy {
        why: "stated for the small-volume water test; taken over for 90 mL.",
        seen: &[&source::STM],
    },
};

/// The rule for a request to stop.
pub static ASKED_TO_STOP: Rule = Rule {
    id: "water.asked-to-stop",
    says: "A request to stop ends the trial; a trial that was not finished is a reason to refer.",
    basis: Basis::LocalPolicy {
        why: "the trial stops at once on request; an unfinished cup refers by the published rule.",
        seen: &[&source::TH4, &source::IDC],
    },
};

/// The rule for a throat clear alone.
pub static THROAT_CLEAR: Rule = Rule {
    id: "water.throat-clear",
    says: "Clearing the throat alone is noted and decides nothing.",
    basis: Basis::LocalPolicy {
        why: "the published rules name cough and voice, not throat clearing.",
        seen: &[],
    },
};

/// The sign x task table: what a sign means in a task, and by which rule.
///
/// **Invariant:** this is the only place that turns a sign into a level.
pub fn meaning(sign: Sign, task: SignTask) -> (Level, &'static Rule) {
    match (task, sign) {
        (SignTask::Water90, Sign::Cough) => (Level::Refer, &COUGH),
        (SignTask::Water90, Sign::VoiceChange) => (Level::Refer, &VOICE),
        (SignTask::Water90, Sign::ThroatClear) => (Level::Note, &THROAT_CLEAR),
        (SignTask::Water90, Sign::Pause) => (Level::Refer, &PAUSE),
        (SignTask::Water90, Sign::Spill) => (Level::Refer, &SPILL),
        (SignTask::Water90, Sign::BreathingChange) => (Level::Stop, &BREATHING_CHANGE),
        (SignTask::Water90, Sign::NoSwallow) => (Level::Stop, &NO_SWALLOW),
        (SignTask::Water90, Sign::AskedToStop) => (Level::Refer, &ASKED_TO_STOP),
        (SignTask::Water90, Sign::Choke) => (Level::Stop, &CHOKE),
    }
}
