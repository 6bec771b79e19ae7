//! Breath for speech: counting on one breath, holding it, 5 cm of water for 5 seconds; and the
//! glide of the voice, heard.

pub mod judge;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag};
use crate::clinical::findings::speech::{Bubbles, Unscored};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::kept;
use crate::clinical::tasks::longest::held;
use crate::clinical::tasks::spec::{Pad, Question, Takes, TaskSpec, When};
use crate::measure::time::Millis;

/// The highest number said.
const REACHED: &str = "reached";
/// What was seen of the bubbles.
const BUBBLES: &str = "bubbles";
/// How the glide up was heard.
pub const GLIDE_UP: &str = "glide-up";
/// How the glide down was heard.
pub const GLIDE_DOWN: &str = "glide-down";

const fn pad(beat: Option<Millis>) -> Pad {
    Pad {
        touch_ends: true,
        beat,
        ..Pad::PLAIN
    }
}

/// Counting on one breath.
pub static COUNT: TaskSpec = TaskSpec {
    pad: pad(Some(judge::BEAT)),
    questions: &[Question {
        id: REACHED,
        when: When::After,
        takes: Takes::Number {
            least: 0,
            most: 200,
            // Typed only: a stray press on "less" would make it the most there is.
            step: 0,
        },
        only_if: None,
        needed: true,
    }],
    trials: 3,
    untimed: Some(kept::BREATH),
    rules: &[
        &rules::BREATH_COUNT,
        &rules::BREATH_COUNT_CHECK,
        &rules::BREATH_COUNT_CHILD,
        &rules::SPEECH_NOT_SCORED,
    ],
    slug: "count-on-one-breath",
    flags,
    used,
    speech: true,
    ..TaskSpec::plain(TaskId::BreathCount)
};

/// Breath hold.
pub static HOLD: TaskSpec = TaskSpec {
    pad: pad(None),
    questions: &[],
    trials: 3,
    untimed: Some(kept::BREATH),
    rules: &[&rules::BREATH_HOLD, &rules::SPEECH_NOT_SCORED],
    slug: "breath-hold",
    flags,
    used,
    speech: true,
    ..TaskSpec::plain(TaskId::BreathHold)
};

static BUBBLES_SEEN: &[&str] = &["continuous", "broken", "not-seen"];

/// 5 cm of water for 5 seconds.
pub static FIVE: TaskSpec = TaskSpec {
    pad: pad(None),
    questions: &[Question {
        id: BUBBLES,
        when: When::After,
        takes: Takes::OneOf(BUBBLES_SEEN),
        only_if: None,
        needed: true,
    }],
    trials: 3,
    untimed: Some(kept::BREATH),
    rules: &[&rules::BREATH_FIVE, &rules::SPEECH_NOT_SCORED],
    slug: "five-for-five",
    flags,
    used,
    speech: true,
    ..TaskSpec::plain(TaskId::FiveForFive)
};

static GLIDES: &[&str] = &["smooth", "stepped", "narrow", "none"];

/// Pitch glide.
pub static GLIDE: TaskSpec = TaskSpec {
    pad: pad(None),
    questions: &[
        Question {
            id: GLIDE_UP,
            when: When::After,
            takes: Takes::OneOf(GLIDES),
            only_if: None,
            needed: true,
        },
        Question {
            id: GLIDE_DOWN,
            when: When::After,
            takes: Takes::OneOf(GLIDES),
            only_if: None,
            needed: true,
        },
    ],
    untimed: Some(kept::VOICE),
    rules: &[&rules::SPEECH_NOT_SCORED],
    slug: "glide",
    flags,
    used,
    speech: true,
    ..TaskSpec::plain(TaskId::PitchGlide)
};

fn own(task: TaskId) -> &'static TaskSpec {
    match task {
        TaskId::BreathCount => &COUNT,
        TaskId::BreathHold => &HOLD,
        TaskId::FiveForFive => &FIVE,
        _ => &GLIDE,
    }
}

/// How many of the trials asked for are used up.
fn used(task: TaskId, exam: &Exam) -> usize {
    kept::used(own(task), exam, |trial| held(trial).is_some())
}

/// The highest number said in a trial.
pub fn reached(trial: &Trial) -> Option<u32> {
    trial.number(REACHED).map(|n| n as u32)
}

/// How a glide was heard: the id of the choice; none where nobody said.
pub fn glide_heard(trial: &Trial, question: &str) -> Option<&'static str> {
    let given = trial.choice(question);
    GLIDES.iter().copied().find(|id| Some(*id) == given)
}

/// Why a trial is not scored, if it is not: it has no time, or what is asked after it is open.
fn why_not(trial: &Trial) -> Option<Unscored> {
    let spec = own(trial.task);
    let no_time = kept::why_no_time(spec, trial);
    let timed = || trial.between(trial.start()?, trial.end_pressed()?).length;
    match trial.task {
        TaskId::PitchGlide => kept::untimed(spec, trial).map(Unscored::Unbegun),
        TaskId::BreathCount if trial.number(REACHED).is_some() => None,
        TaskId::BreathCount => no_time.or_else(|| timed().map(Unscored::NumberNotSaid)),
        TaskId::FiveForFive if trial.choice(BUBBLES).is_none() => {
            no_time.or_else(|| timed().map(Unscored::BubblesNotSaid))
        }
        _ => no_time,
    }
}

/// The trials that are not scored.
pub fn unscored(task: TaskId, exam: &Exam) -> Vec<(usize, Unscored)> {
    kept::unscored(own(task), exam, why_not)
}

/// What the rules say about an examination.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let domain = match task {
        TaskId::PitchGlide => Domain::SpeechVoice,
        _ => Domain::Breathing,
    };
    let mut flags = scored(task, exam);
    flags.extend(kept::flags(task, domain, unscored(task, exam)));
    flags
}

/// What the rules say of the trials that are scored; the first tells the value.
pub fn scored(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let done = || exam.trials.iter().filter(move |t| t.task == task);
    let longest = || {
        done().filter_map(held).fold(None, |best, one| match best {
            Some(best) if best >= one => Some(best),
            _ => Some(one),
        })
    };
    match task {
        TaskId::BreathCount => done()
            .filter_map(reached)
            .max()
            .map_or(Vec::new(), |n| judge::count(n, &exam.who())),
        TaskId::BreathHold => longest().map(judge::hold).into_iter().collect(),
        TaskId::FiveForFive => done()
            .filter_map(|t| {
                let bubbles = match t.choice(BUBBLES)? {
                    "continuous" => Bubbles::Continuous,
                    "broken" => Bubbles::Broken,
                    _ => Bubbles::NotSeen,
                };
                Some(judge::five(held(t)?, bubbles))
            })
            .next_back()
            .into_iter()
            .collect(),
        _ => Vec::new(),
    }
}
