//! The tasks, one file each: its data, its finding, its rules.

pub mod breath;
pub mod breathing;
pub mod dry_swallow;
pub mod free_count;
pub mod longest;
pub mod syllables;
pub mod water;

use super::exam::Exam;
use super::flag::Flag;
use super::task::{TaskId, TaskSpec};

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
    }
}

/// Why a task steps aside for this person, if it does.
pub fn aside(id: TaskId, exam: &Exam) -> Option<String> {
    (spec(id).not_for)(exam.age, &exam.policy)
        .or_else(|| Some(syllables::left_out(id, exam)?.reason().to_owned()))
}

/// What a speech or breath task came to, in a few words for the handover.
pub fn summary(id: TaskId, exam: &Exam) -> Option<String> {
    match id {
        TaskId::SyllablePa | TaskId::SyllableTa | TaskId::SyllableKa | TaskId::Sequence => {
            syllables::summary(id, exam)
        }
        TaskId::LongestAh | TaskId::LongestS | TaskId::LongestZ => longest::summary(id, exam),
        TaskId::PitchGlide | TaskId::BreathCount | TaskId::BreathHold | TaskId::FiveForFive => {
            breath::summary(id, exam)
        }
        TaskId::Breathing | TaskId::DrySwallow | TaskId::Water90 | TaskId::FreeCount => None,
    }
}

/// What a task's rules say about an examination.
pub fn flags(id: TaskId, exam: &Exam) -> Vec<Flag> {
    match id {
        TaskId::Breathing => breathing::flags(exam),
        TaskId::DrySwallow => dry_swallow::flags(exam),
        TaskId::Water90 => water::flags(exam),
        TaskId::FreeCount => Vec::new(),
        TaskId::SyllablePa | TaskId::SyllableTa | TaskId::SyllableKa | TaskId::Sequence => {
            syllables::flags(id, exam)
        }
        TaskId::LongestAh | TaskId::LongestS | TaskId::LongestZ => longest::flags(id, exam),
        TaskId::PitchGlide | TaskId::BreathCount | TaskId::BreathHold | TaskId::FiveForFive => {
            breath::flags(id, exam)
        }
    }
}
