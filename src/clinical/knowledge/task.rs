//! The names of the tasks. What each asks, reads and judges stands in its own folder.

use serde::{Deserialize, Serialize};

/// Every task there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum TaskId {
    /// Breaths in 60 s.
    Breathing,
    /// Dry swallows in 30 s.
    DrySwallow,
    /// 90 mL (3 oz) of water without a pause.
    Water90,
    /// Just count something.
    FreeCount,
    /// pa, repeated.
    SyllablePa,
    /// ta, repeated.
    SyllableTa,
    /// ka, repeated.
    SyllableKa,
    /// pa-ta-ka, repeated.
    Sequence,
    /// The longest "ah".
    LongestAh,
    /// The longest s.
    LongestS,
    /// The longest z.
    LongestZ,
    /// Pitch glide.
    PitchGlide,
    /// Counting on one breath.
    BreathCount,
    /// Breath hold.
    BreathHold,
    /// 5 cm of water for 5 seconds.
    FiveForFive,
    /// How thick a drink is.
    Flow,
    /// One cracker against the clock.
    Cracker,
    /// A meal or a drink watched at the table.
    Meal,
    /// Two or more of six signs.
    SixSigns,
    /// Small sips of water, one size after the other.
    Sips,
    /// A cup of water against the clock.
    TimedWater,
    /// The clinician's own trials.
    Own,
    /// Breathing by a tap at every breath.
    BreathTaps,
    /// Breaths in 30 s.
    Breaths30,
}

impl TaskId {
    /// All, in the order offered.
    pub const ALL: &[TaskId] = &[
        TaskId::Breathing,
        TaskId::DrySwallow,
        TaskId::Water90,
        TaskId::FreeCount,
        TaskId::SyllablePa,
        TaskId::SyllableTa,
        TaskId::SyllableKa,
        TaskId::Sequence,
        TaskId::LongestAh,
        TaskId::LongestS,
        TaskId::LongestZ,
        TaskId::PitchGlide,
        TaskId::BreathCount,
        TaskId::BreathHold,
        TaskId::FiveForFive,
        TaskId::Flow,
        TaskId::Cracker,
        TaskId::Meal,
        TaskId::SixSigns,
        TaskId::Sips,
        TaskId::TimedWater,
        TaskId::Own,
        TaskId::BreathTaps,
        TaskId::Breaths30,
    ];
}
