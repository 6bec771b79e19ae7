//! Trials that are kept with their reason and not scored: nothing is invented for them.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::SpeechFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::speech::{Unbegun, Unscored};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::spec::{TaskSpec, Untimed};
use crate::measure::time::Millis;

/// The answer "could not", and under which it is kept where a task has no question of its own for
/// it.
const COULD_NOT: &str = "could-not";
/// The answer that no voice came.
const NO_VOICE: &str = "no-voice";

static BREATH_CHOICES: &[&str] = &[COULD_NOT];
static VOICE_CHOICES: &[&str] = &[NO_VOICE, COULD_NOT];

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

/// What was answered without a press on the pad; none where there was one.
pub fn untimed(spec: &TaskSpec, trial: &Trial) -> Option<Unbegun> {
    let offered = spec.untimed.filter(|_| spec.is_untimed(trial))?;
    let given = trial.choice(offered.question)?;
    let choice = offered.choices.iter().find(|id| **id == given)?;
    Some(match *choice {
        NO_VOICE => Unbegun::NoVoice,
        _ => Unbegun::CouldNot,
    })
}

/// Why a trial has no time that could be scored; none where it has one, or still runs.
pub(super) fn why_no_time(spec: &TaskSpec, trial: &Trial) -> Option<Unscored> {
    if let Some(why) = untimed(spec, trial) {
        return Some(Unscored::Unbegun(why));
    }
    if trial.is_stopped() {
        return Some(Unscored::ScreenEnded);
    }
    let time = trial.between(trial.start()?, trial.end()?);
    if let Some(doubt) = time.doubt {
        return Some(Unscored::Doubted(doubt));
    }
    (time.length? <= Millis::ZERO).then_some(Unscored::NoTime)
}

/// The trials of a task that were tried, numbered from 1 as they are shown.
pub fn numbered<'a>(
    spec: &'static TaskSpec,
    exam: &'a Exam,
) -> impl Iterator<Item = (usize, &'a Trial)> {
    let tried = move |t: &&Trial| t.task == spec.id && spec.is_tried(t);
    (1..).zip(exam.trials.iter().filter(tried))
}

/// How many trials are used up: those with a time, and those that could not be begun.
pub(super) fn used(spec: &'static TaskSpec, exam: &Exam, timed: impl Fn(&Trial) -> bool) -> usize {
    numbered(spec, exam)
        .filter(|(_, trial)| timed(trial) || untimed(spec, trial).is_some())
        .count()
}

/// The trials that are not scored, each with its reason.
pub(super) fn unscored(
    spec: &'static TaskSpec,
    exam: &Exam,
    why: impl Fn(&Trial) -> Option<Unscored>,
) -> Vec<(usize, Unscored)> {
    numbered(spec, exam)
        .filter_map(|(n, trial)| Some((n, why(trial)?)))
        .collect()
}

/// It as notes: what is not scored must not be silent.
pub(super) fn flags(
    task: TaskId,
    domain: Domain,
    unscored: Vec<(usize, Unscored)>,
) -> impl Iterator<Item = Flag> {
    unscored.into_iter().map(move |(trial, why)| {
        let fact = SpeechFact::NotScored { task, trial, why };
        rules::SPEECH_NOT_SCORED.flag(Level::Note, domain, fact)
    })
}
