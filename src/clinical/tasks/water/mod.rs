//! 3-oz (90 mL) water swallow test: 90 mL in one go, then 60 seconds of watching.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::WaterFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::spec::{NOT_VALID, Pad, Question, Takes, TaskSpec, When};
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
    pad: Pad {
        counts: true,
        watch: Some(WATCH),
        ..Pad::PLAIN
    },
    questions: &[
        Question {
            id: VOICE_BEFORE,
            when: When::Before,
            takes: Takes::OneOf(VOICES),
            only_if: None,
            needed: true,
        },
        Question {
            id: CUP,
            when: When::After,
            takes: Takes::OneOf(&[IN_ONE_GO, PAUSED, SOME_LEFT]),
            only_if: None,
            needed: true,
        },
        Question {
            id: REMAINING,
            when: When::After,
            takes: Takes::Number {
                least: 1,
                most: OFFERED,
                step: 5,
            },
            only_if: Some((CUP, SOME_LEFT)),
            needed: false,
        },
        Question {
            id: VOICE_AFTER,
            when: When::AfterWatch,
            takes: Takes::OneOf(VOICES),
            only_if: None,
            needed: true,
        },
        watched::question(When::AfterWatch),
        saturation::lowest(When::AfterWatch),
        Question {
            id: NOT_VALID,
            when: When::Before,
            takes: Takes::OneOf(NOT_GIVEN_REASONS),
            only_if: None,
            needed: false,
        },
    ],
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
    asks_first: Some(|exam| by_mouth::voice_is_known(TaskId::Water90, exam)),
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
