//! 3-oz (90 mL) water swallow test: 90 mL in one go, then 60 seconds of watching.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::WaterFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::spec::{Choice, NOT_VALID, Pad, Question, Takes, TaskSpec, When};
use crate::measure::time::Millis;

mod judge;

pub use crate::clinical::findings::fact::{Seen, Voice};
pub use crate::clinical::tasks::by_mouth::questions::*;
use crate::clinical::tasks::by_mouth::reading::Reading;
pub use crate::clinical::tasks::by_mouth::reading::{Cup, Watch};
pub use crate::clinical::tasks::by_mouth::within::WATCH;
pub use judge::{ended, judge};

/// The volume offered, in mL.
pub const OFFERED: i32 = 90;
/// Nobody drinks a cup in less: two presses closer than this are a slip (common practice).
pub const LEAST: Millis = Millis::from_secs(1);

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    title: "90 mL of water without a pause",
    steps: &[
        "Upright, 90 mL of plain water in a cup; straw allowed; you may hold the cup.",
        "Voice first: a few seconds of \"ah\" and a short sentence.",
        "Press at first lip contact, then at the last swallow. Swallow taps are welcome, not needed.",
        "At a cough, choke, drool, wet voice or distress: stop, take the cup away, press the sign.",
        "Watch for 60 seconds, then hear the voice again.",
    ],
    say: "Drink all of this water, steadily, without stopping.",
    pad: Pad {
        counts: ("swallow", "swallows"),
        start: "First lip contact",
        end: Some("Last swallow"),
        watch: Some(WATCH),
        ..Pad::PLAIN
    },
    questions: &[
        Question {
            id: VOICE_BEFORE,
            ask: "Voice before",
            when: When::Before,
            takes: Takes::OneOf(VOICES),
            only_if: None,
            needed: true,
        },
        Question {
            id: CUP,
            ask: "The cup",
            when: When::After,
            takes: Takes::OneOf(&[
                Choice {
                    id: IN_ONE_GO,
                    words: "Empty, in one go",
                },
                Choice {
                    id: PAUSED,
                    words: "Empty, with a pause",
                },
                Choice {
                    id: SOME_LEFT,
                    words: "Some left",
                },
            ]),
            only_if: None,
            needed: true,
        },
        Question {
            id: REMAINING,
            ask: "Left in the cup",
            when: When::After,
            takes: Takes::Number {
                unit: "mL",
                least: 1,
                most: OFFERED,
                step: 5,
            },
            only_if: Some((CUP, SOME_LEFT)),
            needed: false,
        },
        Question {
            id: VOICE_AFTER,
            ask: "Voice after: say \"ah\" again",
            when: When::AfterWatch,
            takes: Takes::OneOf(VOICES),
            only_if: None,
            needed: true,
        },
        watched::question(When::AfterWatch),
        saturation::lowest(When::AfterWatch),
        Question {
            id: NOT_VALID,
            ask: "Not given?",
            when: When::Before,
            takes: Takes::OneOf(NOT_GIVEN_REASONS),
            only_if: None,
            needed: false,
        },
    ],
    caveat: "How well it finds aspiration depends on who is tested: sensitivity 96.5 % in 3,000 \
             mixed referrals (published: SL08), 55.2 % in ALS (published: ALS23). Silent \
             aspiration is not seen.",
    for_whom: "People from 2 years on, or from the age of the local policy, who are awake, upright and may have thin drinks.",
    rules: &[
        &rules::WATER_CLEAR,
        &rules::WATER_UNFINISHED,
        &rules::WATER_LEFT,
        &rules::WATER_FROM_TWO,
    ],
    not_for: |_, exam| match exam.age {
        Some(age) if age.under_years(exam.policy.water_from_years) => {
            Some(rules::WATER_FROM_TWO.flag(
                Level::Incomplete,
                Domain::EatingDrinking,
                WaterFact::TooYoung {
                    under: exam.policy.water_from_years,
                    given: false,
                },
            ))
        }
        _ => None,
    },
    slug: "water",
    flags: |_, exam| flags(exam),
    taken_over: by_mouth::voice_of_sips,
    fits: |question, exam| by_mouth::fits(TaskId::Water90, question, exam),
    ..TaskSpec::plain(TaskId::Water90)
};

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let mut flags: Vec<Flag> = (SPEC.not_for)(SPEC.id, exam).into_iter().collect();
    // What was given before the age was put right is judged all the same.
    let given = exam.latest_started(TaskId::Water90).is_some();
    if !flags.is_empty() && !given {
        return flags;
    }
    for flag in &mut flags {
        let fact = WaterFact::TooYoung {
            under: exam.policy.water_from_years,
            given: true,
        };
        *flag = flag.rule().flag(flag.level(), flag.domain(), fact);
    }
    flags.extend(by_mouth::of_all(exam, TaskId::Water90, |trial| {
        let mut chokings = exam.chokings.iter();
        let choked = chokings.any(|at| by_mouth::was_within(trial, *at));
        judge(&Reading::of(trial), choked, &exam.policy)
    }));
    if flags.is_empty() && by_mouth::given(TaskId::Water90, exam).next().is_none() {
        flags.push(rules::WATER_UNFINISHED.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            WaterFact::NotGiven(None),
        ));
    }
    flags
}
