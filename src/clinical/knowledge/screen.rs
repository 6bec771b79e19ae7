//! A screen as data: an ordered set of tasks that ends in a decision.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::oral::Examination;
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::task::TaskId;

/// Every screen there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum ScreenId {
    /// Gate, breathing, dry swallows, 90 mL of water.
    Swallow,
    /// Face, mouth and throat, repeated syllables and the longest "ah".
    OralMotor,
    /// Face, mouth and throat, speech and breath timing, then the way of the swallow screen.
    FullVisit,
    /// Gate, breathing, dry swallows, small sips, 90 mL of water only when all were clear.
    Stepped,
    /// Gate, breathing, the clinician's own trials.
    OwnTrials,
    /// Gate, breathing, 90 mL of water.
    Water,
}

/// A screen.
#[derive(Debug)]
pub struct Screen {
    /// Which.
    pub id: ScreenId,
    /// Whether it starts at the gate.
    pub gate: bool,
    /// Whether it ends in a decision about eating and drinking.
    pub decides: bool,
    /// How much of the examination of face, mouth and throat it has, and where.
    pub oral: Examination,
    /// Its tasks, in order; those of a visit are [`Screen::tasks_of`].
    pub tasks: &'static [TaskId],
}

/// Swallow screen.
static SWALLOW: Screen = Screen {
    id: ScreenId::Swallow,
    gate: true,
    decides: true,
    oral: Examination::None,
    tasks: &[TaskId::Breathing, TaskId::DrySwallow, TaskId::Water90],
};

/// The 90 mL of water alone, as the published rule has them.
static WATER: Screen = Screen {
    id: ScreenId::Water,
    gate: true,
    decides: true,
    oral: Examination::None,
    tasks: &[TaskId::Breathing, TaskId::Water90],
};

/// Oral motor screen.
static ORAL_MOTOR: Screen = Screen {
    id: ScreenId::OralMotor,
    gate: false,
    decides: false,
    oral: Examination::Whole,
    tasks: &[
        TaskId::SyllablePa,
        TaskId::SyllableTa,
        TaskId::SyllableKa,
        TaskId::Sequence,
        TaskId::LongestAh,
    ],
};

/// Full visit. What is spoken comes before what is swallowed: a voice that water made wet is no
/// voice to time.
static FULL_VISIT: Screen = Screen {
    id: ScreenId::FullVisit,
    gate: true,
    decides: true,
    oral: Examination::GagLast,
    tasks: &[
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
        TaskId::Breathing,
        TaskId::DrySwallow,
        TaskId::Water90,
    ],
};

/// Stepped swallow screen.
static STEPPED: Screen = Screen {
    id: ScreenId::Stepped,
    gate: true,
    decides: true,
    oral: Examination::None,
    tasks: &[
        TaskId::Breathing,
        TaskId::DrySwallow,
        TaskId::Sips,
        TaskId::Water90,
    ],
};

/// Own trials.
static OWN_TRIALS: Screen = Screen {
    id: ScreenId::OwnTrials,
    gate: true,
    decides: true,
    oral: Examination::None,
    tasks: &[TaskId::Breathing, TaskId::Own],
};

/// What may be added to any visit that began with the questions of the gate.
const EXTRAS: &[TaskId] = &[
    TaskId::DrySwallow,
    TaskId::Sips,
    TaskId::TimedWater,
    TaskId::Own,
    TaskId::BreathTaps,
    TaskId::Breaths30,
];

impl ScreenId {
    /// All screens, in the order offered.
    pub const ALL: [ScreenId; 6] = [
        ScreenId::Swallow,
        ScreenId::Water,
        ScreenId::OralMotor,
        ScreenId::FullVisit,
        ScreenId::Stepped,
        ScreenId::OwnTrials,
    ];

    /// Its data.
    pub fn screen(self) -> &'static Screen {
        match self {
            ScreenId::Swallow => &SWALLOW,
            ScreenId::OralMotor => &ORAL_MOTOR,
            ScreenId::FullVisit => &FULL_VISIT,
            ScreenId::Stepped => &STEPPED,
            ScreenId::OwnTrials => &OWN_TRIALS,
            ScreenId::Water => &WATER,
        }
    }
}

impl Screen {
    /// The tasks that may be added to a visit with this screen.
    pub fn extras(&self) -> impl Iterator<Item = TaskId> + '_ {
        EXTRAS
            .iter()
            .copied()
            .filter(|task| self.gate && !self.tasks.contains(task))
            // Dry swallows inform a cup of water.
            .filter(|task| *task != TaskId::DrySwallow || self.tasks.contains(&TaskId::Water90))
    }

    /// Whether the repeated syllables are on it, whose order a visit may change.
    pub fn has_order(&self) -> bool {
        self.tasks.contains(&Order::ALL[0])
    }
}
