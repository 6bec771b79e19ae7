//! How thick a drink is: 10 mL in a syringe, 10 seconds, what is left.
//!
//! A drink is measured, never a person: nothing here says what anybody is to be given.

pub mod judge;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::trial::{Answer, Trial};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::flow::judge::{LeftOfTen, judge_of};
use crate::clinical::tasks::spec::{Length, Pad, Question, Takes, TaskSpec, When};
use crate::measure::time::Millis;

/// The time it flows (source: IDDSI-B).
pub const WINDOW: Millis = Millis::from_secs(10);
/// Question: what is left, in mL.
pub const LEFT: &str = "left-of-ten";
/// Question: which drink.
pub const DRINK: &str = "drink";

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        length: Length::Fixed(WINDOW),
        countdown: true,
        ..Pad::PLAIN
    },
    questions: &[
        Question {
            id: LEFT,
            when: When::After,
            takes: Takes::Tenths { least: 0, most: 10 },
            only_if: None,
            needed: true,
        },
        Question {
            id: DRINK,
            when: When::After,
            takes: Takes::Words(40),
            only_if: None,
            needed: false,
        },
    ],
    rules: &[
        &rules::FLOW_LEVEL,
        &rules::FLOW_BORDER,
        &rules::FLOW_NONE,
        &rules::FLOW_NO_DIET,
    ],
    slug: "drink-thickness",
    flags: |_, exam| flags(exam),
    ..TaskSpec::plain(TaskId::Flow)
};

/// What is left, where it was read.
pub fn left(trial: &Trial) -> Option<LeftOfTen> {
    match trial.answers.get(LEFT) {
        Some(Answer::Tenths(tenths)) => LeftOfTen::tenths(*tenths).ok(),
        _ => None,
    }
}

/// What the drink was, as somebody typed it.
fn drink(trial: &Trial) -> Option<&str> {
    match trial.answers.get(DRINK) {
        Some(Answer::Words(words)) => Some(words),
        _ => None,
    }
}

/// What the rules say: each drink that was measured.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    exam.trials
        .iter()
        .filter(|t| t.task == TaskId::Flow)
        .filter_map(|t| Some(judge_of(drink(t), left(t)?)))
        .flatten()
        .collect()
}
