//! Facts about the 90 mL of water.

use serde::Serialize;

use super::{Missing, Voice, WhyNot};

/// What a rule says about the 90 mL of water.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum WaterFact {
    /// Not given; why, where somebody said so.
    NotGiven(Option<WhyNot>),
    /// Given, and said not to be.
    GivenAndNot(WhyNot),
    /// Not meant for anybody under so many years.
    TooYoung {
        /// Years.
        under: i32,
        /// It was given all the same.
        given: bool,
    },
    /// Not drunk in one go.
    Paused,
    /// So many millilitres left; none where nobody measured.
    Left(Option<f64>),
    /// The voice after it is one that the rules name and was not there before.
    Voice {
        /// Before; none where nobody recorded it.
        before: Option<Voice>,
        /// After.
        after: Voice,
    },
    /// The voice was such already before it.
    VoiceBefore(Voice),
    /// What every trial by mouth needs.
    Missing(Missing),
    /// Its start and its end were marked closer together than anybody drinks.
    TooQuick,
    /// Not recorded whether the cup was emptied.
    CupNotRecorded,
    /// Voice after it not recorded.
    VoiceAfterNotRecorded,
    /// Drunk in one go and watched.
    Clear {
        /// Nothing was seen or heard, not even what decides nothing.
        no_sign: bool,
    },
}
