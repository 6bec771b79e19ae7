//! Repeated syllables: pa, ta, ka and pa-ta-ka, counted for a time or timed over a count.
//!
//! The window opens with the first tap. By count, the time runs from the first tap to the stop
//! press after the last syllable: stopping at the last tap would flatter by one interval.

pub mod speech;

use std::num::NonZeroU32;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::SyllablesFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::speech::{Repeated, Syllables, Timing, Unscored};
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::order::Order;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::compare::Comparison;
use crate::clinical::tasks::kept;
use crate::clinical::tasks::spec::{Length, Pad, Question, Takes, TaskSpec, Untimed, When, remark};
use crate::clinical::tasks::syllables::speech::repeated;
use crate::clinical::tasks::syllables::speech::trials;
use crate::clinical::tasks::syllables::speech::trials::{
    Outcome, Sequences, Singles, Try, from_three,
};
use crate::measure::time::Millis;
use crate::measure::units::Seconds;
use crate::measure::window::Window;

/// How it is timed.
const HOW: &str = "how";
/// By the count of the published table: 20 single syllables, 10 sequences.
const BY_COUNT: &str = "by-count";
/// What a tap stands for.
const EACH: &str = "each-tap";
/// How it sounded.
pub const SOUND: &str = "sound";

/// The windows, by the answer to [`HOW`]: those that adults were counted for in what is published.
static LENGTHS: &[(&str, Option<Millis>)] = &[
    ("5s", Some(Millis::from_secs(5))),
    ("8s", Some(Millis::from_secs(8))),
    ("10s", Some(Millis::from_secs(10))),
    ("15s", Some(Millis::from_secs(15))),
    (BY_COUNT, None),
];

static SOUNDS: &[&str] = &["correct", "distorted", "could-not"];

/// Of these, what can be said without a tap: who can't begin is not "not tested".
static COULD_NOT: &[&str] = &["could-not"];

const fn how() -> Question {
    Question {
        id: HOW,
        when: When::Before,
        takes: Takes::OneOf(&["5s", "8s", "10s", "15s", BY_COUNT]),
        only_if: None,
        needed: true,
    }
}

const fn sound() -> Question {
    Question {
        id: SOUND,
        when: When::After,
        takes: Takes::OneOf(SOUNDS),
        only_if: None,
        needed: true,
    }
}

static SINGLE: &[Question] = &[how(), sound(), remark()];

static SEQUENCE: &[Question] = &[
    // Before the length: it changes what the count means, and must not be below the fold.
    Question {
        id: EACH,
        when: When::Before,
        takes: Takes::OneOf(&["syllable", "sequence"]),
        only_if: None,
        needed: true,
    },
    how(),
    sound(),
    remark(),
];

const fn task(id: TaskId, slug: &'static str, questions: &'static [Question]) -> TaskSpec {
    TaskSpec {
        slug,
        pad: Pad {
            counts: true,
            length: Length::Answered(HOW, LENGTHS),
            first_counts: true,
            ..Pad::PLAIN
        },
        questions,
        trials: 3,
        usual,
        compare,
        untimed: Some(Untimed {
            question: SOUND,
            choices: COULD_NOT,
        }),
        rules: RULES,
        not_for: |task, exam| from_three(exam.age).or_else(|| left_out(task, exam)),
        flags,
        used,
        speech: true,
        ..TaskSpec::plain(id)
    }
}

static RULES: &[&Rule] = &[
    &rules::SPEECH_CHILD_TIME,
    &rules::SPEECH_ADULT_SEQUENCE,
    &rules::SPEECH_OLDER_SINGLE,
    &rules::SPEECH_NO_NORM,
    &rules::SPEECH_BEST_TRIAL,
    &rules::SPEECH_NOT_SCORED,
    &rules::SPEECH_SKIP_LONGER,
    &rules::SPEECH_FROM_THREE,
];

/// pa.
pub static PA: TaskSpec = task(TaskId::SyllablePa, "pa", SINGLE);

/// ta.
pub static TA: TaskSpec = task(TaskId::SyllableTa, "ta", SINGLE);

/// ka.
pub static KA: TaskSpec = task(TaskId::SyllableKa, "ka", SINGLE);

/// pa-ta-ka.
pub static PA_TA_KA: TaskSpec = task(TaskId::Sequence, "pa-ta-ka", SEQUENCE);

/// The ages of the published table of times by count, in months: 6 to 13 years (FLE72).
const TIMED_BY_COUNT: std::ops::Range<u32> = 6 * 12..14 * 12;

/// Children of the ages of the published table are timed by count, everybody else for 5 seconds.
fn usual(exam: &Exam) -> Vec<(&'static str, &'static str)> {
    let months = exam.age.map(|age| age.at_least_months());
    if months.is_some_and(|m| TIMED_BY_COUNT.contains(&m)) {
        vec![(HOW, BY_COUNT), (EACH, "sequence")]
    } else {
        vec![(HOW, "5s"), (EACH, "syllable")]
    }
}

fn own(task: TaskId) -> &'static TaskSpec {
    match task {
        TaskId::SyllableTa => &TA,
        TaskId::SyllableKa => &KA,
        TaskId::Sequence => &PA_TA_KA,
        _ => &PA,
    }
}

/// What a task has repeated.
pub fn what(task: TaskId) -> Syllables {
    match task {
        TaskId::SyllableTa => Syllables::Ta,
        TaskId::SyllableKa => Syllables::Ka,
        TaskId::Sequence => Syllables::PaTaKa,
        _ => Syllables::Pa,
    }
}

/// The count and the time of a trial; none where it did not run to its end, or where nobody knows
/// how long it took.
pub fn timing(trial: &Trial) -> Option<Timing> {
    let start = trial.start()?;
    let sequences = trial.choice(EACH) == Some("sequence");
    let each = what(trial.task).each().get();
    match window(trial) {
        Some(length) => {
            let over = trial.first(MarkKind::WindowOver)?;
            if trial.doubt_over(start, length, over).is_some() {
                return None;
            }
            let counted = Window::new(length, None).ok()?.split(&trial.tap_offsets());
            let count = u32::try_from(counted.count()).ok()?;
            let window = Seconds::new(length.seconds()).ok()?;
            Some(if sequences {
                Timing::Sequences { count, window }
            } else {
                Timing::Syllables { count, window }
            })
        }
        None => {
            let time = trial.between(start, trial.end_pressed()?);
            let length = time.length.filter(|length| *length > Millis::ZERO)?;
            if time.doubt.is_some() {
                return None;
            }
            let taps = u32::try_from(trial.taps()).ok()?;
            let repetitions = if sequences { taps } else { taps / each };
            Some(Timing::ByCount {
                repetitions: NonZeroU32::new(repetitions)?,
                time: Seconds::new(length.seconds()).ok()?,
            })
        }
    }
}

fn window(trial: &Trial) -> Option<Millis> {
    let answer = trial.choice(HOW)?;
    LENGTHS.iter().find(|(id, _)| *id == answer)?.1
}

/// Whether a trial of syllables was heard as distorted.
pub fn distorted(trial: &Trial) -> bool {
    Order::ALL.contains(&trial.task) && outcome(trial) == Some(Outcome::Distorted)
}

fn outcome(trial: &Trial) -> Option<Outcome> {
    Some(match trial.choice(SOUND)? {
        "correct" => Outcome::Correct,
        "distorted" => Outcome::Distorted,
        _ => Outcome::CouldNot,
    })
}

fn tries(task: TaskId, exam: &Exam) -> Vec<Try> {
    exam.trials
        .iter()
        .filter(|t| t.task == task && own(task).is_tried(t))
        .filter_map(|t| {
            Some(Try {
                outcome: outcome(t)?,
                timing: timing(t),
            })
        })
        .collect()
}

/// Whether there is a trial that ended and of which nobody said how it sounded: it is not scored,
/// and that must not be silent.
fn sound_not_said(task: TaskId, exam: &Exam) -> bool {
    exam.trials.iter().any(|t| t.task == task && is_unsaid(t))
}

fn is_unsaid(trial: &Trial) -> bool {
    let ended = trial.end().is_some() || trial.first(MarkKind::WindowOver).is_some();
    ended && outcome(trial).is_none()
}

/// Whether it was said, and nobody timed it.
pub fn is_heard_only(trial: &Trial) -> bool {
    own(trial.task).is_untimed(trial) && outcome(trial) != Some(Outcome::CouldNot)
}

/// Why a trial has no score of its own; none where it can have one.
fn why_not(trial: &Trial) -> Option<Unscored> {
    let no_time = match (trial.start(), window(trial)) {
        (Some(start), Some(length)) => match trial.first(MarkKind::WindowOver) {
            Some(over) => trial.doubt_over(start, length, over).map(Unscored::Doubted),
            None => trial.end().map(|_| Unscored::CutShort),
        },
        (None, _) if is_heard_only(trial) => Some(Unscored::NotTimed),
        _ => kept::why_no_time(own(trial.task), trial),
    };
    no_time.or_else(|| is_unsaid(trial).then_some(Unscored::SoundNotSaid))
}

/// Whether it was tried and never came.
fn could_not(task: TaskId, exam: &Exam) -> bool {
    let tries = tries(task, exam);
    !tries.is_empty() && tries.iter().all(|t| t.outcome == Outcome::CouldNot)
}

/// How many of the trials asked for are used up: those with a time, and those that failed.
pub fn used(task: TaskId, exam: &Exam) -> usize {
    kept::numbered(own(task), exam)
        .filter(|(_, t)| timing(t).is_some() || outcome(t) == Some(Outcome::CouldNot))
        .count()
}

fn best(task: TaskId, exam: &Exam) -> Option<Repeated> {
    trials::best(what(task), &tries(task, exam)).map(|(_, trial)| trial)
}

fn compare(task: TaskId, exam: &Exam) -> Vec<Comparison> {
    best(task, exam)
        .and_then(|trial| repeated(&trial, &exam.who()).ok())
        .and_then(|judged| Comparison::of(&judged))
        .into_iter()
        .collect()
}

/// How the single syllables went so far, each by its best trial.
fn singles(exam: &Exam) -> Singles {
    let one = |task| {
        let tries = tries(task, exam);
        let any = |wanted| tries.iter().any(|t| t.outcome == wanted);
        if any(Outcome::Correct) {
            Some(Outcome::Correct)
        } else {
            tries.first().map(|t| t.outcome)
        }
    };
    Singles {
        pa: one(TaskId::SyllablePa),
        ta: one(TaskId::SyllableTa),
        ka: one(TaskId::SyllableKa),
    }
}

/// Why sequences are left out, if they are: too few single syllables of a child succeeded.
pub fn left_out(task: TaskId, exam: &Exam) -> Option<Flag> {
    if task != TaskId::Sequence {
        return None;
    }
    match trials::sequences(&singles(exam), &exam.who()) {
        (Sequences::LeftOut, flag) => flag,
        _ => None,
    }
}

/// What the trials of a syllable came to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Came {
    /// The fastest correct one is scored.
    Scored(Repeated),
    /// How it sounded was not said of any.
    SoundNotSaid,
    /// It was tried and never came.
    CouldNot,
    /// None was correct and timed.
    NoneScored,
}

/// What the trials came to; none where nothing was tried.
pub fn came(task: TaskId, exam: &Exam) -> Option<Came> {
    if tries(task, exam).is_empty() {
        return sound_not_said(task, exam).then_some(Came::SoundNotSaid);
    }
    Some(match best(task, exam) {
        Some(trial) => Came::Scored(trial),
        None if could_not(task, exam) => Came::CouldNot,
        None => Came::NoneScored,
    })
}

/// The trials that are not scored.
pub fn unscored(task: TaskId, exam: &Exam) -> Vec<(usize, Unscored)> {
    kept::unscored(own(task), exam, why_not)
}

/// What the rules say about an examination.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let mut flags = match came(task, exam) {
        None => {
            let aside = from_three(exam.age).or_else(|| left_out(task, exam));
            return aside.into_iter().collect();
        }
        Some(Came::SoundNotSaid) => {
            let fact = SyllablesFact::SoundNotSaid(what(task));
            return vec![rules::SPEECH_BEST_TRIAL.flag(Level::Note, Domain::SpeechVoice, fact)];
        }
        Some(Came::Scored(trial)) => {
            repeated(&trial, &exam.who()).map_or_else(|_| Vec::new(), |judged| judged.flags)
        }
        Some(Came::CouldNot | Came::NoneScored) => {
            vec![trials::none_scored(what(task), tries(task, exam).len())]
        }
    };
    flags.extend(kept::flags(task, Domain::SpeechVoice, unscored(task, exam)));
    flags
}
