//! What a task offers and what came of it, in words.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::{own, six_signs};
use crate::wording;

/// What a task of many trials was about last, in words beside its pad.
pub fn lately(id: TaskId, exam: &Exam) -> Option<String> {
    let lately = (id == TaskId::Own).then(|| own::lately(exam)).flatten();
    lately.as_ref().map(wording::own::lately)
}

/// What a speech or breath task came to, in a few words for the handover.
pub fn summary(id: TaskId, exam: &Exam) -> Option<String> {
    match id {
        TaskId::Sips => wording::sips::summary(exam),
        TaskId::TimedWater => wording::timed_water::summary(exam),
        // The others are told by their flags.
        _ => wording::speech::summary(id, exam),
    }
}

/// Where a task stands among the steps of a visit; none where its newest trial tells it.
pub fn step(id: TaskId, exam: &Exam) -> Option<String> {
    match id {
        TaskId::SixSigns => {
            let tested = six_signs::tested(exam);
            let words = wording::six_signs::tested(tested);
            Some(format!("{} found, {words}", tested.present))
        }
        _ => summary(id, exam),
    }
}

/// What a trial yields in words; none where the count and the time say it all.
pub fn lines(trial: &Trial) -> Option<Vec<String>> {
    Some(match trial.task {
        TaskId::SyllablePa | TaskId::SyllableTa | TaskId::SyllableKa | TaskId::Sequence => {
            wording::speech::syllable_lines(trial)
        }
        TaskId::LongestAh | TaskId::LongestS | TaskId::LongestZ => {
            wording::speech::held_lines(trial)
        }
        TaskId::PitchGlide => wording::speech::glide_lines(trial),
        TaskId::BreathCount => wording::speech::count_lines(trial),
        TaskId::BreathHold | TaskId::FiveForFive => wording::speech::time_lines(trial),
        TaskId::Flow => wording::flow::lines(trial),
        TaskId::Cracker => wording::cracker::lines(trial),
        TaskId::Meal => wording::meal::lines(trial),
        TaskId::Sips => vec![wording::sips::line(trial)],
        TaskId::TimedWater => wording::timed_water::lines(trial),
        TaskId::Own => wording::own::lines(trial),
        TaskId::Breathing
        | TaskId::DrySwallow
        | TaskId::Water90
        | TaskId::FreeCount
        | TaskId::SixSigns
        | TaskId::BreathTaps
        | TaskId::Breaths30 => return None,
    })
}
