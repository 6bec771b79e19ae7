//! The clinician's own trials: any food or drink, amount, way, posture and strategy.
//!
//! What is given is said once; a repeat of the same takes two presses, its settings are taken
//! over. The next trial may begin while the watch of the one before still runs; a sign is then
//! that of the newest, and that the other may be meant is said.

pub mod shared;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{OwnFact, SeenSign, With};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::next_trial::{NextTrial, ToGive, WaitsFor};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::SignTask;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::lag;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::by_mouth::signs;
use crate::clinical::tasks::by_mouth::{saturation, watched};
use crate::clinical::tasks::own::shared as own_shared;
use crate::clinical::tasks::spec::{
    NOT_VALID, Pad, Question, REMARK, Shows, Takes, TaskSpec, When,
};
use crate::clinical::tasks::water::{NOT_GIVEN_REASONS, WATCH};

mod given;
mod table;

use given::to_come;
pub use given::{
    AMOUNT, AMOUNTS, BY, LEVEL, LEVELS, MILLILITRES, POSTURE, POSTURES, STRATEGIES, STRATEGY,
    STRATEGY_WORDS, WAYS, WHAT, given, instead, taken_over,
};
use table::rows;
pub use table::{Came, InTrial, Lately, Row, is_unwatched, lately, table};

const fn before(id: &'static str, takes: Takes) -> Question {
    Question {
        id,
        when: When::Before,
        takes,
        only_if: None,
        needed: true,
    }
}

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        touch_ends: true,
        watch: Some(WATCH),
        ..Pad::PLAIN
    },
    questions: &[
        before(LEVEL, Takes::OneOf(LEVELS)),
        before(WHAT, Takes::Words(30)),
        before(AMOUNT, Takes::OneOf(AMOUNTS)),
        before(
            MILLILITRES,
            Takes::Number {
                least: 1,
                most: 250,
                step: 5,
            },
        ),
        before(BY, Takes::OneOf(WAYS)),
        before(POSTURE, Takes::OneOf(POSTURES)),
        before(STRATEGY, Takes::OneOf(STRATEGIES)),
        before(STRATEGY_WORDS, Takes::Words(30)),
        watched::question(When::After),
        saturation::lowest(When::After),
        Question {
            when: When::After,
            needed: false,
            ..before(REMARK, Takes::Words(80))
        },
        Question {
            needed: false,
            ..before(NOT_VALID, Takes::OneOf(NOT_GIVEN_REASONS))
        },
    ],
    trials: 2,
    rules: &[
        &rules::OWN_CLEAR,
        &rules::OWN_UNFINISHED,
        &rules::OWN_OVERLAP,
    ],
    slug: "own",
    shows: Shows::Table,
    flags: |_, exam| flags(exam),
    over: |exam| Some(by_mouth::given(TaskId::Own, exam).next().is_some()),
    next: next_trial,
    taken_over,
    instead,
    fits: |question, exam| by_mouth::fits(TaskId::Own, question, exam),
    ..TaskSpec::plain(TaskId::Own)
};

/// What the pad offers; none while a trial runs.
fn next_trial(exam: &Exam) -> Option<NextTrial> {
    let begun = exam.latest(TaskId::Own).filter(|t| t.start().is_some());
    if begun.is_some_and(|t| t.end().is_none()) {
        return None;
    }
    let again = begun.is_some();
    Some(match to_come(exam) {
        None if !again => NextTrial::Waits(WaitsFor::WhatIsGiven),
        // Given without a word of what it was, it is given so again.
        given => NextTrial::Now(ToGive::Own { again, given }),
    })
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let rows = rows(exam);
    if rows.is_empty() {
        let why = by_mouth::refused(TaskId::Own, exam);
        return vec![unfinished(OwnFact::NoneGiven { why })];
    }
    let mut flags = Vec::new();
    for (given, trials) in &rows {
        let seen: Vec<SeenSign> = trials.iter().flat_map(|t| Reading::of(t).signs()).collect();
        let with = With::Own {
            given: given.clone(),
            times: trials.len(),
        };
        flags.extend(signs::judge(&with, &seen));
    }
    flags.extend(own_shared::flags(exam));
    flags.extend(lag::late_flags(TaskId::Own, exam, &rules::OWN_UNFINISHED));
    flags.extend(by_mouth::doubt(TaskId::Own, exam, &rules::OWN_UNFINISHED));
    flags.extend(missing(exam).into_iter().map(unfinished));
    if flags.iter().all(|f| f.level() == Level::Note) {
        // What decides nothing was seen all the same.
        let seen = by_mouth::given(TaskId::Own, exam)
            .any(|t| !t.taken_back.is_empty() || !Reading::of(t).signs().is_empty());
        let given = by_mouth::given(TaskId::Own, exam).count();
        let fact = OwnFact::Clear { given, seen };
        flags.push(rules::OWN_CLEAR.flag(Level::Pass, Domain::EatingDrinking, fact));
    }
    flags
}

fn unfinished(fact: OwnFact) -> Flag {
    rules::OWN_UNFINISHED.flag(Level::Incomplete, Domain::EatingDrinking, fact)
}

/// What is missing of trials of which some were given.
fn missing(exam: &Exam) -> Vec<OwnFact> {
    let mut missing = Vec::new();
    let all = || by_mouth::given(TaskId::Own, exam);
    let open = all()
        .filter(|t| {
            let sign = Reading::of(t).signs().iter().any(|s| s.ends(SignTask::Own));
            !sign && by_mouth::unfinished(&SPEC, t, exam).is_some()
        })
        .count();
    if open > 0 {
        let of = all().count();
        missing.push(OwnFact::NotWatched { open, of });
    }
    for trial in exam.trials.iter().filter(|t| t.task == TaskId::Own) {
        if let Some(why) = Reading::of(trial).not_given {
            // Beside one that was given it is said of the next.
            let given = given(trial);
            let own = given.is_said() && trial.start().is_none();
            let given = own.then(|| given.brief());
            missing.push(OwnFact::NotGiven { given, why });
        }
    }
    if all().any(|t| !given(t).is_said()) {
        missing.push(OwnFact::NotSaidWhat);
    }
    missing
}
