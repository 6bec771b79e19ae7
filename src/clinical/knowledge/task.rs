//! The names of the tasks. What each asks, reads and judges stands in its own folder.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::sign::SignTask;

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

    /// Its id, as it stands in records.
    pub const fn id(self) -> &'static str {
        match self {
            TaskId::Breathing => "Breathing",
            TaskId::DrySwallow => "DrySwallow",
            TaskId::Water90 => "Water90",
            TaskId::FreeCount => "FreeCount",
            TaskId::SyllablePa => "SyllablePa",
            TaskId::SyllableTa => "SyllableTa",
            TaskId::SyllableKa => "SyllableKa",
            TaskId::Sequence => "Sequence",
            TaskId::LongestAh => "LongestAh",
            TaskId::LongestS => "LongestS",
            TaskId::LongestZ => "LongestZ",
            TaskId::PitchGlide => "PitchGlide",
            TaskId::BreathCount => "BreathCount",
            TaskId::BreathHold => "BreathHold",
            TaskId::FiveForFive => "FiveForFive",
            TaskId::Flow => "Flow",
            TaskId::Cracker => "Cracker",
            TaskId::Meal => "Meal",
            TaskId::SixSigns => "SixSigns",
            TaskId::Sips => "Sips",
            TaskId::TimedWater => "TimedWater",
            TaskId::Own => "Own",
            TaskId::BreathTaps => "BreathTaps",
            TaskId::Breaths30 => "Breaths30",
        }
    }

    /// Whether something is given by mouth: the gate and earlier signs then hold it up.
    pub const fn is_by_mouth(self) -> bool {
        matches!(
            self,
            TaskId::Water90 | TaskId::Sips | TaskId::TimedWater | TaskId::Cracker | TaskId::Own
        )
    }

    /// The column of the table of signs; none where nobody swallows.
    pub const fn sign_column(self) -> Option<SignTask> {
        Some(match self {
            TaskId::Water90 => SignTask::Water90,
            TaskId::Sips => SignTask::Sips,
            TaskId::TimedWater => SignTask::TimedWater,
            TaskId::Cracker => SignTask::Cracker,
            TaskId::Own => SignTask::Own,
            TaskId::Meal => SignTask::Meal,
            _ => return None,
        })
    }

    /// Whether one trial of it follows the other: the pad itself begins the next.
    pub const fn goes_on(self) -> bool {
        matches!(self, TaskId::Sips | TaskId::Own)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_id_is_what_records_hold() {
        for task in TaskId::ALL {
            let stored = serde_json::to_value(task).unwrap();
            assert_eq!(stored, task.id());
        }
    }
}
