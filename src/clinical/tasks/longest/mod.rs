//! The longest "ah", s and z: up to three trials each, the whole pad is start and stop.

pub mod voice;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::NoRatio;
use crate::clinical::findings::flag::{Domain, Flag};
use crate::clinical::findings::speech::{Held, Sound, Unscored};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::compare::Comparison;
use crate::clinical::tasks::kept;
use crate::clinical::tasks::longest::voice::{JudgedRatio, longest, no_ratio, s_to_z};
use crate::clinical::tasks::spec::{Pad, Question, Takes, TaskSpec, Untimed, When, remark};
use crate::measure::time::Millis;
use crate::measure::units::Seconds;

/// How the voice sounded.
pub const VOICE: &str = "voice";

static VOICES: &[&str] = &["clear", "wet", "breathy", "hoarse", "strained"];

static WITH_VOICE: &[Question] = &[
    Question {
        id: VOICE,
        when: When::After,
        takes: Takes::OneOf(VOICES),
        only_if: None,
        needed: false,
    },
    remark(),
];

static PLAIN: &[Question] = &[remark()];

const fn task(
    id: TaskId,
    slug: &'static str,
    questions: &'static [Question],
    untimed: Untimed,
    rules: &'static [&'static Rule],
) -> TaskSpec {
    TaskSpec {
        slug,
        pad: Pad {
            touch_ends: true,
            ..Pad::PLAIN
        },
        questions,
        trials: 3,
        compare,
        untimed: Some(untimed),
        rules,
        flags,
        used,
        speech: true,
        ..TaskSpec::plain(id)
    }
}

/// "ah".
pub static AH: TaskSpec = task(
    TaskId::LongestAh,
    "longest-ah",
    WITH_VOICE,
    kept::VOICE,
    &[
        &rules::VOICE_LONGEST_AH,
        &rules::VOICE_LONGEST_CHILD,
        &rules::SPEECH_NOT_SCORED,
    ],
);

static RATIO_RULES: &[&Rule] = &[
    &rules::VOICE_S_Z,
    &rules::VOICE_S_Z_BORDER,
    &rules::VOICE_S_Z_CHILD,
    &rules::SPEECH_NOT_SCORED,
];

/// s.
pub static S: TaskSpec = task(
    TaskId::LongestS,
    "longest-s",
    PLAIN,
    kept::BREATH,
    RATIO_RULES,
);

/// z.
pub static Z: TaskSpec = task(
    TaskId::LongestZ,
    "longest-z",
    PLAIN,
    kept::VOICE,
    RATIO_RULES,
);

fn own(task: TaskId) -> &'static TaskSpec {
    match task {
        TaskId::LongestS => &S,
        TaskId::LongestZ => &Z,
        _ => &AH,
    }
}

/// How many of the trials asked for are used up.
fn used(task: TaskId, exam: &Exam) -> usize {
    kept::used(own(task), exam, |trial| held(trial).is_some())
}

/// What a task has held.
pub fn sound(task: TaskId) -> Sound {
    match task {
        TaskId::LongestS => Sound::S,
        TaskId::LongestZ => Sound::Z,
        _ => Sound::Ah,
    }
}

/// How long a trial was held; none where nobody can know, and none for a start and an end at the
/// same moment: that is a slip of the finger.
pub fn held(trial: &Trial) -> Option<Seconds> {
    let time = trial.between(trial.start()?, trial.end_pressed()?);
    if time.doubt.is_some() {
        return None;
    }
    let length = time.length.filter(|length| *length > Millis::ZERO)?;
    Seconds::new(length.seconds()).ok()
}

/// The trials that are scored: the first three with a time.
pub fn scored(task: TaskId, exam: &Exam) -> Option<Held> {
    let times: Vec<Seconds> = exam
        .trials
        .iter()
        .filter(|t| t.task == task)
        .filter_map(held)
        .take(Held::MOST)
        .collect();
    Held::new(&times).ok()
}

/// How the voice sounded in a trial: the id of the choice; none where nobody said.
pub fn voice_heard(trial: &Trial) -> Option<&'static str> {
    let voice = trial.choice(VOICE);
    VOICES.iter().copied().find(|id| Some(*id) == voice)
}

fn compare(task: TaskId, exam: &Exam) -> Vec<Comparison> {
    scored(task, exam)
        .and_then(|held| Comparison::of(&longest(sound(task), &held, &exam.who())))
        .into_iter()
        .collect()
}

/// What the rules say about an examination. The ratio stands with z, the second of the two.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let mut flags = scored(task, exam)
        .map(|held| longest(sound(task), &held, &exam.who()).flags)
        .unwrap_or_default();
    flags.extend(kept::flags(task, Domain::SpeechVoice, unscored(task, exam)));
    if task == TaskId::LongestZ {
        flags.extend(match ratio(exam) {
            Some(Ok(ratio)) => ratio.flag,
            Some(Err(why)) => Some(no_ratio(why)),
            None => None,
        });
    }
    flags
}

/// The ratio of s to z; none where neither has a time.
pub fn ratio(exam: &Exam) -> Option<Result<JudgedRatio, NoRatio>> {
    let s = scored(TaskId::LongestS, exam);
    let z = scored(TaskId::LongestZ, exam);
    if s.is_none() && z.is_none() {
        return None;
    }
    // Tried and not held at all is another reason than never tried.
    let tried = |spec| kept::numbered(spec, exam).any(|(_, t)| kept::untimed(spec, t).is_some());
    Some(
        s_to_z(s.as_ref(), z.as_ref(), &exam.who()).map_err(|why| match why {
            NoRatio::NoZ if tried(&Z) => NoRatio::ZNotHeld,
            NoRatio::NoS if tried(&S) => NoRatio::SNotHeld,
            why => why,
        }),
    )
}

/// The trials that are kept and not scored: without a time, or after those that are asked for.
pub fn unscored(task: TaskId, exam: &Exam) -> Vec<(usize, Unscored)> {
    let spec = own(task);
    let mut scored = 0;
    kept::numbered(spec, exam)
        .filter_map(|(n, trial)| {
            if held(trial).is_none() {
                return Some((n, kept::why_no_time(spec, trial)?));
            }
            scored += 1;
            (scored > Held::MOST).then_some((n, Unscored::AfterTheFirst(Held::MOST)))
        })
        .collect()
}
