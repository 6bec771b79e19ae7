//! What a flag is about, in words.

use crate::clinical::knowledge::level::Domain;

impl Domain {
    /// The domain in the words the app shows.
    pub const fn words(self) -> &'static str {
        match self {
            Domain::Urgent => "urgent",
            Domain::EatingDrinking => "eating and drinking",
            Domain::Breathing => "breathing",
            Domain::SpeechVoice => "speech and voice",
            Domain::Mouth => "mouth",
        }
    }
}
