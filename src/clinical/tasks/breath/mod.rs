//! Breath for speech: counting on one breath, holding it, 5 cm of water for 5 seconds; and the
//! glide of the voice, heard.

pub mod judge;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath::judge as breath;
use crate::clinical::tasks::breath::judge::Bubbles;
use crate::clinical::tasks::kept;
use crate::clinical::tasks::longest::{held, time_words};
use crate::clinical::tasks::spec::{Choice, Length, Pad, Question, Takes, TaskSpec, When};
use crate::measure::time::Millis;
use crate::wording::words::small;

/// The highest number said.
const REACHED: &str = "reached";
/// What was seen of the bubbles.
const BUBBLES: &str = "bubbles";

const fn pad(start: &'static str, end: &'static str, beat: Option<Millis>) -> Pad {
    Pad {
        counts: ("", ""),
        start,
        length: Length::Open,
        first_counts: false,
        touch_ends: true,
        beat,
        late: None,
        end: Some(end),
        watch: None,
        signs: None,
        countdown: false,
    }
}

/// Counting on one breath.
pub static COUNT: TaskSpec = TaskSpec {
    id: TaskId::BreathCount,
    title: "Counting on one breath",
    steps: &[
        "Sitting upright, usual voice. The beat is two a second: it sounds, and the number shows.",
        "A deep breath, then touch the pad: the first beat is \"one\".",
        "Touch it again at the next breath, and take over the highest number said.",
    ],
    say: "Take a deep breath and count aloud with the beat, for as long as you can without breathing in.",
    by_mouth: false,
    pad: pad(
        "Touch: the beat starts",
        "Touch at the next breath",
        Some(Millis(500)),
    ),
    more: "",
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
    usual: |_| Vec::new(),
    lines: Some(count_lines),
    compare: |_| Vec::new(),
    untimed: Some(kept::BREATH),
    caveat: "It depends on effort. The lines come from people with weak muscles.",
    for_whom: "Adults: in children the count depends on height and is reported only.",
    rules: &[
        &rules::BREATH_COUNT,
        &rules::BREATH_COUNT_CHECK,
        &rules::BREATH_COUNT_CHILD,
        &rules::SPEECH_NOT_SCORED,
    ],
    not_for: |_, _| None,
};

/// Breath hold.
pub static HOLD: TaskSpec = TaskSpec {
    id: TaskId::BreathHold,
    title: "Breath hold",
    steps: &[
        "5 seconds are asked (common practice); skip it where holding the breath is not wanted.",
        "Touch the pad when the breath is held, touch it again when it is let go.",
    ],
    say: "Breathe in, and hold your breath for five seconds.",
    by_mouth: false,
    pad: pad("Touch when held", "Touch when let go", None),
    more: "",
    questions: &[],
    trials: 3,
    usual: |_| Vec::new(),
    lines: Some(time_lines),
    compare: |_| Vec::new(),
    caveat: "Recorded, not judged.",
    untimed: Some(kept::BREATH),
    for_whom: "Anybody for whom holding the breath is allowed and wanted; no age has a line.",
    rules: &[&rules::BREATH_HOLD, &rules::SPEECH_NOT_SCORED],
    not_for: |_, _| None,
};

static BUBBLES_SEEN: &[Choice] = &[
    Choice {
        id: "continuous",
        words: "Continuous, at 5 cm",
    },
    Choice {
        id: "broken",
        words: "Broken off, or not at 5 cm",
    },
    Choice {
        id: "not-seen",
        words: "Nobody watched",
    },
];

/// 5 cm of water for 5 seconds.
pub static FIVE: TaskSpec = TaskSpec {
    id: TaskId::FiveForFive,
    title: "5 cm of water for 5 seconds",
    steps: &[
        "A cup of water marked in cm, a straw with a pinhole above the water. The tip is 5 cm under.",
        "Touch the pad at the first bubbles, touch it again when they end.",
        "Whether they were continuous at 5 cm is yours to say: the phone can't see the pressure.",
    ],
    say: "Blow bubbles through the straw, gently and without a break, until I say stop.",
    by_mouth: false,
    pad: pad("Touch at the first bubbles", "Touch when they end", None),
    more: "",
    questions: &[Question {
        id: BUBBLES,
        ask: "The bubbles",
        when: When::After,
        takes: Takes::OneOf(BUBBLES_SEEN),
        only_if: None,
        needed: true,
    }],
    trials: 3,
    usual: |_| Vec::new(),
    lines: Some(time_lines),
    compare: |_| Vec::new(),
    caveat: "The water is blown into, not drunk.",
    untimed: Some(kept::BREATH),
    for_whom: "Anybody who can close the lips on a straw and blow on request; no age has a line.",
    rules: &[&rules::BREATH_FIVE, &rules::SPEECH_NOT_SCORED],
    not_for: |_, _| None,
};

static GLIDES: &[Choice] = &[
    Choice {
        id: "smooth",
        words: "Smooth",
    },
    Choice {
        id: "stepped",
        words: "Stepped",
    },
    Choice {
        id: "narrow",
        words: "Narrow",
    },
    Choice {
        id: "none",
        words: "None",
    },
];

/// Pitch glide.
pub static GLIDE: TaskSpec = TaskSpec {
    id: TaskId::PitchGlide,
    title: "Pitch glide",
    steps: &["Up and down on \"ah\". Touch the pad when it starts and when it ends."],
    say: "Say \"ah\" and slide from your lowest to your highest voice, and down again.",
    by_mouth: false,
    pad: pad("Touch when it starts", "Touch when it ends", None),
    more: "",
    questions: &[
        Question {
            id: "glide-up",
            ask: "Up",
            when: When::After,
            takes: Takes::OneOf(GLIDES),
            only_if: None,
            needed: true,
        },
        Question {
            id: "glide-down",
            ask: "Down",
            when: When::After,
            takes: Takes::OneOf(GLIDES),
            only_if: None,
            needed: true,
        },
    ],
    trials: 1,
    usual: |_| Vec::new(),
    lines: Some(glide_lines),
    compare: |_| Vec::new(),
    caveat: "As heard; no line is drawn on it.",
    untimed: Some(kept::VOICE),
    for_whom: "Anybody who can follow a slide of the voice; as heard, no age has a line.",
    rules: &[&rules::VOICE_PITCH_RANGE, &rules::SPEECH_NOT_SCORED],
    not_for: |_, _| None,
};

fn time_lines(trial: &Trial) -> Vec<String> {
    vec![time_words(trial)]
}

/// The number is what is judged, whatever is known of the time.
fn count_lines(trial: &Trial) -> Vec<String> {
    let time = trial.start().zip(trial.end_pressed());
    let time = time.and_then(|(start, end)| trial.between(start, end).length);
    vec![match (trial.number(REACHED), time) {
        (Some(n), Some(time)) => format!("counted to {}, {time}", n as u32),
        (Some(n), None) => format!("counted to {}", n as u32),
        (None, _) => time_words(trial),
    }]
}

fn glide_lines(trial: &Trial) -> Vec<String> {
    if let Some(words) = kept::untimed(trial) {
        return vec![small(words)];
    }
    let heard = |question| {
        GLIDES
            .iter()
            .find(|c| Some(c.id) == trial.choice(question))
            .map_or("not said", |c| c.id)
    };
    vec![format!(
        "heard: up {}, down {}",
        heard("glide-up"),
        heard("glide-down")
    )]
}

/// Why a trial is not scored, if it is not: it has no time, or what is asked after it is open.
fn why_not(trial: &Trial) -> Option<String> {
    let no_time = kept::why_no_time(trial);
    let open = |said: &str| {
        let time = trial.between(trial.start()?, trial.end_pressed()?).length?;
        Some(format!("{time} timed, {said} was not said"))
    };
    match trial.task {
        TaskId::PitchGlide => kept::untimed(trial).map(small),
        TaskId::BreathCount if trial.number(REACHED).is_some() => None,
        TaskId::BreathCount => no_time.or_else(|| open("the highest number")),
        TaskId::FiveForFive if trial.choice(BUBBLES).is_none() => {
            no_time.or_else(|| open("what was seen of the bubbles"))
        }
        _ => no_time,
    }
}

/// The result in a few words, for the handover.
pub fn summary(task: TaskId, exam: &Exam) -> Option<String> {
    let glide = || {
        let trial = exam.latest(task).filter(|t| t.end_pressed().is_some())?;
        Some(format!("pitch glide {}", glide_lines(trial).join(" ")))
    };
    // The value stands before the colon or the semicolon.
    let judged = || {
        let flags = scored(task, exam);
        let reason = flags.first()?.reason();
        let end = reason.find([':', ';']).unwrap_or(reason.len());
        let head = if task == TaskId::FiveForFive {
            // "5 cm of water for 5 seconds: blown for 6.0 seconds; done"
            reason.split(". ").next().unwrap_or(&reason)
        } else {
            &reason[..end]
        };
        Some(small(head))
    };
    let result = if task == TaskId::PitchGlide {
        glide()
    } else {
        judged()
    };
    let name = small(crate::clinical::tasks::spec(task).title);
    kept::told(&name, result, &kept::unscored(task, exam, why_not))
}

/// What the rules say about an examination.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let domain = match task {
        TaskId::PitchGlide => Domain::SpeechVoice,
        _ => Domain::Breathing,
    };
    let mut flags = scored(task, exam);
    flags.extend(kept::flags(
        task,
        domain,
        &kept::unscored(task, exam, why_not),
    ));
    flags
}

/// What the rules say of the trials that are scored.
fn scored(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let done = || exam.trials.iter().filter(move |t| t.task == task);
    let longest = || {
        done().filter_map(held).fold(None, |best, one| match best {
            Some(best) if best >= one => Some(best),
            _ => Some(one),
        })
    };
    match task {
        TaskId::BreathCount => done()
            .filter_map(|t| t.number(REACHED))
            .map(|n| n as u32)
            .max()
            .map_or(Vec::new(), |n| breath::count(n, &exam.who()).flags),
        TaskId::BreathHold => longest().map_or(Vec::new(), |time| breath::hold(time).flags),
        TaskId::FiveForFive => done()
            .filter_map(|t| {
                let bubbles = match t.choice(BUBBLES)? {
                    "continuous" => Bubbles::Continuous,
                    "broken" => Bubbles::Broken,
                    _ => Bubbles::NotSeen,
                };
                Some(breath::five(held(t)?, bubbles).1.flags)
            })
            .next_back()
            .unwrap_or_default(),
        _ => Vec::new(),
    }
}
