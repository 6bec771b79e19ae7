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
use crate::clinical::tasks::spec::{Choice, Pad, Question, Takes, TaskSpec, When, choice};
use crate::measure::time::Millis;

/// The highest number said.
const REACHED: &str = "reached";
/// What was seen of the bubbles.
const BUBBLES: &str = "bubbles";
/// How the glide up was heard.
pub const GLIDE_UP: &str = "glide-up";
/// How the glide down was heard.
pub const GLIDE_DOWN: &str = "glide-down";

const fn pad(start: &'static str, end: &'static str, beat: Option<Millis>) -> Pad {
    Pad {
        start,
        touch_ends: true,
        beat,
        end: Some(end),
        ..Pad::PLAIN
    }
}

/// Counting on one breath.
pub static COUNT: TaskSpec = TaskSpec {
    title: "Counting on one breath",
    steps: &[
        "Sitting upright, usual voice. The beat is two a second: it sounds, and the number shows.",
        "A deep breath, then touch the pad: the first beat is \"one\".",
        "Touch it again at the next breath, and take over the highest number said.",
    ],
    say: "Take a deep breath and count aloud with the beat, for as long as you can without breathing in.",
    pad: pad(
        "Touch: the beat starts",
        "Touch at the next breath",
        Some(judge::BEAT),
    ),
    questions: &[Question {
        id: REACHED,
        ask: "Highest number said",
        when: When::After,
        takes: Takes::Number {
            unit: "",
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
    caveat: "It depends on effort. The lines come from people with weak muscles.",
    for_whom: "Adults: in children the count depends on height and is reported only.",
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
    title: "Breath hold",
    steps: &[
        "5 seconds are asked (common practice); skip it where holding the breath is not wanted.",
        "Touch the pad when the breath is held, touch it again when it is let go.",
    ],
    say: "Breathe in, and hold your breath for five seconds.",
    pad: pad("Touch when held", "Touch when let go", None),
    questions: &[],
    trials: 3,
    caveat: "Recorded, not judged.",
    untimed: Some(kept::BREATH),
    for_whom: "Anybody for whom holding the breath is allowed and wanted; no age has a line.",
    rules: &[&rules::BREATH_HOLD, &rules::SPEECH_NOT_SCORED],
    slug: "breath-hold",
    flags,
    used,
    speech: true,
    ..TaskSpec::plain(TaskId::BreathHold)
};

static BUBBLES_SEEN: &[Choice] = &[
    choice("continuous", "Continuous, at 5 cm"),
    choice("broken", "Broken off, or not at 5 cm"),
    choice("not-seen", "Nobody watched"),
];

/// 5 cm of water for 5 seconds.
pub static FIVE: TaskSpec = TaskSpec {
    title: "5 cm of water for 5 seconds",
    steps: &[
        "A cup of water marked in cm, a straw with a pinhole above the water. The tip is 5 cm under.",
        "Touch the pad at the first bubbles, touch it again when they end.",
        "Whether they were continuous at 5 cm is yours to say: the phone can't see the pressure.",
    ],
    say: "Blow bubbles through the straw, gently and without a break, until I say stop.",
    pad: pad("Touch at the first bubbles", "Touch when they end", None),
    questions: &[Question {
        id: BUBBLES,
        ask: "The bubbles",
        when: When::After,
        takes: Takes::OneOf(BUBBLES_SEEN),
        only_if: None,
        needed: true,
    }],
    trials: 3,
    caveat: "The water is blown into, not drunk.",
    untimed: Some(kept::BREATH),
    for_whom: "Anybody who can close the lips on a straw and blow on request; no age has a line.",
    rules: &[&rules::BREATH_FIVE, &rules::SPEECH_NOT_SCORED],
    slug: "five-for-five",
    flags,
    used,
    speech: true,
    ..TaskSpec::plain(TaskId::FiveForFive)
};

static GLIDES: &[Choice] = &[
    choice("smooth", "Smooth"),
    choice("stepped", "Stepped"),
    choice("narrow", "Narrow"),
    choice("none", "None"),
];

/// Pitch glide.
pub static GLIDE: TaskSpec = TaskSpec {
    title: "Pitch glide",
    steps: &["Up and down on \"ah\". Touch the pad when it starts and when it ends."],
    say: "Say \"ah\" and slide from your lowest to your highest voice, and down again.",
    pad: pad("Touch when it starts", "Touch when it ends", None),
    questions: &[
        Question {
            id: GLIDE_UP,
            ask: "Up",
            when: When::After,
            takes: Takes::OneOf(GLIDES),
            only_if: None,
            needed: true,
        },
        Question {
            id: GLIDE_DOWN,
            ask: "Down",
            when: When::After,
            takes: Takes::OneOf(GLIDES),
            only_if: None,
            needed: true,
        },
    ],
    caveat: "As heard; no line is drawn on it.",
    untimed: Some(kept::VOICE),
    for_whom: "Anybody who can follow a slide of the voice; as heard, no age has a line.",
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
    GLIDES.iter().find(|c| Some(c.id) == given).map(|c| c.id)
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
