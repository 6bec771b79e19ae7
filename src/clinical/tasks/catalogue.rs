//! Every task by its id.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::TaskSpec;
use crate::clinical::tasks::{
    breath, breath_taps, breathing, cracker, dry_swallow, flow, free_count, longest, meal, own,
    sips, six_signs, syllables, timed_water, water,
};

/// A task's data.
pub fn spec(id: TaskId) -> &'static TaskSpec {
    match id {
        TaskId::Breathing => &breathing::SPEC,
        TaskId::DrySwallow => &dry_swallow::SPEC,
        TaskId::Water90 => &water::SPEC,
        TaskId::FreeCount => &free_count::SPEC,
        TaskId::SyllablePa => &syllables::PA,
        TaskId::SyllableTa => &syllables::TA,
        TaskId::SyllableKa => &syllables::KA,
        TaskId::Sequence => &syllables::PA_TA_KA,
        TaskId::LongestAh => &longest::AH,
        TaskId::LongestS => &longest::S,
        TaskId::LongestZ => &longest::Z,
        TaskId::PitchGlide => &breath::GLIDE,
        TaskId::BreathCount => &breath::COUNT,
        TaskId::BreathHold => &breath::HOLD,
        TaskId::FiveForFive => &breath::FIVE,
        TaskId::Flow => &flow::SPEC,
        TaskId::Cracker => &cracker::SPEC,
        TaskId::Meal => &meal::SPEC,
        TaskId::SixSigns => &six_signs::SPEC,
        TaskId::Sips => &sips::SPEC,
        TaskId::TimedWater => &timed_water::SPEC,
        TaskId::Own => &own::SPEC,
        TaskId::BreathTaps => &breath_taps::TAPS,
        TaskId::Breaths30 => &breath_taps::COUNT_30,
    }
}

/// Tasks that stand beside every screen: given or looked at where the clinician wants to.
pub const BESIDE: [TaskId; 4] = [
    TaskId::Cracker,
    TaskId::Meal,
    TaskId::Flow,
    TaskId::SixSigns,
];

/// Why a task steps aside for this person, if it does.
pub fn aside(id: TaskId, exam: &Exam) -> Option<Flag> {
    (spec(id).not_for)(id, exam)
}
