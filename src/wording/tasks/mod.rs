//! The tasks in English: what each is called, what is said and done in it, what it asks. Found by
//! the ids of [`mod@crate::clinical::tasks::spec`], which hold no words.

mod breath;
mod breath_taps;
mod breathing;
mod cracker;
mod dry_swallow;
mod flow;
mod free_count;
mod longest;
mod meal;
mod own;
pub mod shared;
mod sips;
mod six_signs;
mod syllables;
pub mod task_words;
mod timed_water;
mod water;

use crate::clinical::knowledge::task::TaskId;
use crate::wording::tasks::shared::SHARED;
use crate::wording::tasks::task_words::{Ask, TaskWords};

/// A task's words.
pub fn of(id: TaskId) -> &'static TaskWords {
    match id {
        TaskId::Breathing => &breathing::WORDS,
        TaskId::DrySwallow => &dry_swallow::WORDS,
        TaskId::Water90 => &water::WORDS,
        TaskId::FreeCount => &free_count::WORDS,
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
        TaskId::Flow => &flow::WORDS,
        TaskId::Cracker => &cracker::WORDS,
        TaskId::Meal => &meal::WORDS,
        TaskId::SixSigns => &six_signs::WORDS,
        TaskId::Sips => &sips::WORDS,
        TaskId::TimedWater => &timed_water::WORDS,
        TaskId::Own => &own::WORDS,
        TaskId::BreathTaps => &breath_taps::TAPS,
        TaskId::Breaths30 => &breath_taps::COUNT_30,
    }
}

/// A question of a task in words: its own, or one that several ask alike.
pub fn asked(task: TaskId, question: &str) -> Option<&'static Ask> {
    let mut all = of(task).asks.iter().chain(SHARED);
    all.find(|ask| ask.id == question)
}

/// What is asked.
pub fn ask(task: TaskId, question: &str) -> &'static str {
    asked(task, question).map_or("", |ask| ask.ask)
}

/// The unit of the number that is asked for; empty where it has none.
pub fn unit(task: TaskId, question: &str) -> &'static str {
    asked(task, question).map_or("", |ask| ask.unit)
}

/// The words of a choice; none for one that this version does not know.
pub fn choice(task: TaskId, question: &str, choice: &str) -> Option<&'static str> {
    asked(task, question)?.words_of(choice)
}

/// Choices with their words, as they are offered.
pub fn choices(
    task: TaskId,
    question: &str,
    ids: &'static [&'static str],
) -> impl Iterator<Item = (&'static str, &'static str)> {
    let asked = asked(task, question);
    let words = move |id| asked.and_then(|ask| ask.words_of(id));
    ids.iter().map(move |id| (*id, words(id).unwrap_or(id)))
}
