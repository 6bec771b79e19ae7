//! Signs in words.

use crate::clinical::knowledge::sign::Sign;

impl Sign {
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
