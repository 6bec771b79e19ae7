//! A cup of water against the clock: from lip contact until the larynx rests.
//!
//! An index of efficiency, not a sign of aspiration. Its signs count as in every trial by mouth.

pub mod judge;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{TimedWaterFact, With};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
pub use crate::clinical::tasks::by_mouth::questions::{
    EMPTY, TIMED_CUP as CUP, TIMED_LEFT as LEFT,
};
use crate::clinical::tasks::by_mouth::questions::{
    NOT_GIVEN_REASONS, SOME_LEFT, VOICE_AFTER, VOICE_BEFORE, VOICES,
};
use crate::clinical::tasks::by_mouth::reading::{Cup as HowEmpty, Reading};
use crate::clinical::tasks::by_mouth::signs;
use crate::clinical::tasks::by_mouth::within::WATCH;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::spec::{NOT_VALID, Pad, Question, Takes, TaskSpec, When};
use crate::clinical::tasks::timed_water::judge as timed_water;
use crate::clinical::tasks::timed_water::judge::{Cup, figures};
use crate::measure::units::Millilitres;

/// How much is offered.
pub const OFFERED: &str = "cup-size";
/// Another volume, in mL.
pub const OTHER: &str = "cup-other";
/// Swallows counted otherwise than by taps.
pub const SWALLOWS: &str = "cup-swallows";

const fn question(id: &'static str, when: When, takes: Takes) -> Question {
    Question {
        id,
        when,
        takes,
        only_if: None,
        needed: true,
    }
}

const fn number(least: i32, most: i32, step: i32) -> Takes {
    Takes::Number { least, most, step }
}

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        counts: true,
        watch: Some(WATCH),
        ..Pad::PLAIN
    },
    questions: &[
        question(
            OFFERED,
            When::Before,
            Takes::OneOf(&["100", "150", "other"]),
        ),
        Question {
            only_if: Some((OFFERED, "other")),
            ..question(OTHER, When::Before, number(20, 500, 10))
        },
        question(VOICE_BEFORE, When::Before, Takes::OneOf(VOICES)),
        question(CUP, When::After, Takes::OneOf(&[EMPTY, SOME_LEFT])),
        Question {
            only_if: Some((CUP, SOME_LEFT)),
            ..question(LEFT, When::After, number(1, 500, 5))
        },
        question(SWALLOWS, When::After, number(1, 99, 1)),
        question(VOICE_AFTER, When::AfterWatch, Takes::OneOf(VOICES)),
        watched::question(When::AfterWatch),
        saturation::lowest(When::AfterWatch),
        Question {
            needed: false,
            ..question(NOT_VALID, When::Before, Takes::OneOf(NOT_GIVEN_REASONS))
        },
    ],
    usual: |_| vec![(OFFERED, "150")],
    rules: &[
        &rules::TIMED_WATER_SLOW,
        &rules::TIMED_WATER_LEFT,
        &rules::TIMED_WATER_VOLUME,
        &rules::TIMED_WATER_AFTER_SIPS,
        &rules::TIMED_CUP_UNFINISHED,
    ],
    slug: "timed-water",
    flags: |_, exam| flags(exam),
    taken_over: by_mouth::voice_of_sips,
    asks_first: Some(|exam| by_mouth::voice_is_known(TaskId::TimedWater, exam)),
    fits,
    studied_in_adults: true,
    ..TaskSpec::plain(TaskId::TimedWater)
};

/// The volume offered.
fn offered(trial: &Trial) -> Option<Millilitres> {
    let ml = match trial.choice(OFFERED)? {
        "100" => 100.0,
        "150" => 150.0,
        _ => trial.number(OTHER)?,
    };
    Millilitres::new(ml).ok()
}

/// The cup, once it is known how much was offered, how long it took and what was left.
pub fn cup(trial: &Trial) -> Option<Cup> {
    let reading = Reading::of(trial);
    let left = match reading.cup? {
        HowEmpty::Left(ml) => Millilitres::new(ml?).ok()?,
        HowEmpty::Empty | HowEmpty::InOneGo | HowEmpty::Paused => Millilitres::ZERO,
    };
    let swallows = match reading.swallows {
        0 => trial.number(SWALLOWS).map(|n| n as u32),
        n => u32::try_from(n).ok(),
    };
    Some(Cup {
        offered: offered(trial)?,
        left,
        time: reading.drinking?.length?,
        swallows,
    })
}

fn fits(question: &str, exam: &Exam) -> bool {
    match question {
        SWALLOWS => exam
            .latest_started(TaskId::TimedWater)
            .is_some_and(|t| t.taps() == 0),
        _ => by_mouth::fits(TaskId::TimedWater, question, exam),
    }
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let unfinished =
        |fact| rules::TIMED_CUP_UNFINISHED.flag(Level::Incomplete, Domain::EatingDrinking, fact);
    let refused = by_mouth::refused(TaskId::TimedWater, exam);
    let trials: Vec<&Trial> = by_mouth::given(TaskId::TimedWater, exam).collect();
    let Some((newest, earlier)) = trials.split_last() else {
        return vec![unfinished(TimedWaterFact::NotGiven(refused))];
    };
    // Only what was seen of an earlier cup stands beside a later one.
    let mut flags: Vec<Flag> = earlier.iter().flat_map(|trial| signs(trial)).collect();
    let signs = signs(newest);
    let sign = signs.iter().any(|f| f.level() >= Level::Refer);
    flags.extend(signs);
    let now = cup(newest);
    match now.map(|cup| timed_water::judge(&cup)) {
        // No adult line is drawn for a child.
        Some(Ok(judged)) => flags.extend(
            judged
                .into_iter()
                .filter(|f| is_adult(exam) || f.rule() != &rules::TIMED_WATER_SLOW),
        ),
        Some(Err(why)) => flags.push(unfinished(TimedWaterFact::NoFigures(why))),
        None if newest.end().is_some() && !sign => {
            flags.push(unfinished(TimedWaterFact::NoAmounts));
        }
        None => {}
    }
    let missing = by_mouth::unfinished(&SPEC, newest, exam).filter(|_| !sign);
    flags.extend(missing.map(|missing| unfinished(TimedWaterFact::Missing(missing))));
    let before = earlier.iter().filter_map(|trial| cup(trial)).next_back();
    flags.extend(
        now.zip(before)
            .and_then(|(now, before)| timed_water::other_volume(now.offered, before.offered)),
    );
    flags.extend(refused.map(|why| unfinished(TimedWaterFact::AnotherNotGiven(why))));
    flags.extend(by_mouth::doubt(
        TaskId::TimedWater,
        exam,
        &rules::TIMED_CUP_UNFINISHED,
    ));
    flags
}

fn signs(trial: &Trial) -> Vec<Flag> {
    signs::judge(&With::TimedCup, &Reading::of(trial).signs())
}

fn is_adult(exam: &Exam) -> bool {
    exam.age.is_none_or(|age| age.is_adult())
}

/// What was drunk of each cup; none where its amounts are not recorded.
pub fn drunk(exam: &Exam) -> Vec<Option<Drunk>> {
    let cups = by_mouth::given(TaskId::TimedWater, exam).map(|trial| {
        let cup = cup(trial)?;
        let figures = figures(&cup).ok()?;
        Some(Drunk {
            drunk: figures.drunk,
            offered: cup.offered,
            slow: figures.slow && is_adult(exam),
        })
    });
    cups.collect()
}

/// What was drunk of a cup: no rate, which means nothing on a ward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drunk {
    /// Drunk.
    pub drunk: Millilitres,
    /// Offered.
    pub offered: Millilitres,
    /// Slowly, by the line for adults.
    pub slow: bool,
}
