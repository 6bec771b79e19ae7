//! Trials that are kept with their reason and not scored: nothing is invented for them.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{Choice, Untimed, choice};
use crate::measure::time::{Doubt, Millis};
use crate::wording::words::small;

/// Under which "could not" is kept, where a task has no question of its own for it.
const COULD_NOT: &str = "could-not";

static BREATH_CHOICES: &[Choice] = &[choice("could-not", "Could not")];
static VOICE_CHOICES: &[Choice] = &[
    choice("no-voice", "No voice came"),
    choice("could-not", "Could not"),
];

/// What can be answered of a breath, or of a sound without voice, that could not be begun.
pub(super) const BREATH: Untimed = Untimed {
    question: COULD_NOT,
    choices: BREATH_CHOICES,
};

/// What can be answered of a voice that could not be begun.
pub(super) const VOICE: Untimed = Untimed {
    question: COULD_NOT,
    choices: VOICE_CHOICES,
};

/// What was answered without a press on the pad, in words; none where there was one.
pub fn untimed(trial: &Trial) -> Option<&'static str> {
    let spec = crate::clinical::tasks::spec(trial.task);
    let given = trial.choice(spec.untimed?.question)?;
    let choice = spec.untimed?.choices.iter().find(|c| c.id == given)?;
    spec.is_untimed(trial).then_some(choice.words)
}

/// What speaks against a time, in short.
pub(super) fn doubted(doubt: Doubt) -> String {
    let words = doubt.to_string();
    let end = words.find([':', ';']).unwrap_or(words.len());
    words[..end].trim_end_matches('.').to_owned()
}

/// Why a trial has no time that could be scored; none where it has one, or still runs.
pub(super) fn why_no_time(trial: &Trial) -> Option<String> {
    if let Some(words) = untimed(trial) {
        return Some(small(words));
    }
    if trial.is_stopped() {
        return Some("the screen was ended meanwhile".to_owned());
    }
    let time = trial.between(trial.start()?, trial.end()?);
    if let Some(doubt) = time.doubt {
        return Some(doubted(doubt));
    }
    (time.length? <= Millis::ZERO).then(|| "start and stop are the same moment".to_owned())
}

/// The trials of a task that were tried, numbered from 1 as they are shown.
pub fn numbered(task: TaskId, exam: &Exam) -> impl Iterator<Item = (usize, &Trial)> {
    let tried = move |t: &&Trial| t.task == task && crate::clinical::tasks::spec(task).is_tried(t);
    (1..).zip(exam.trials.iter().filter(tried))
}

/// The trials that are not scored, each with its reason.
pub(super) fn unscored(
    task: TaskId,
    exam: &Exam,
    why: impl Fn(&Trial) -> Option<String>,
) -> Vec<(usize, String)> {
    numbered(task, exam)
        .filter_map(|(n, trial)| Some((n, why(trial)?)))
        .collect()
}

/// It as notes: what is not scored must not be silent.
pub(super) fn flags(task: TaskId, domain: Domain, unscored: &[(usize, String)]) -> Vec<Flag> {
    let title = crate::clinical::tasks::spec(task).title;
    unscored
        .iter()
        .map(|(n, why)| {
            let reason = format!("{title}, trial {n}: kept, not scored: {why}.");
            rules::SPEECH_NOT_SCORED.flag(Level::Note, domain, reason)
        })
        .collect()
}

/// The result in a few words with what was not scored beside it; none where nothing was tried.
pub(super) fn told(
    name: &str,
    result: Option<String>,
    unscored: &[(usize, String)],
) -> Option<String> {
    match (result, unscored) {
        (result, []) => result,
        (Some(result), [(_, why)]) => Some(format!("{result}, 1 trial more not scored ({why})")),
        (Some(result), many) => Some(format!("{result}, {} trials more not scored", many.len())),
        (None, [.., (_, why)]) => Some(format!("{name} not scored: {why}")),
    }
}
