//! At the table: a meal or a drink watched and tallied on one time line.
//!
//! **Invariant:** every mark of a tally is in exactly one part of its summary.

use crate::clinical::findings::counted::Counted;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{Lasted, MealFact, With};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::pads::pads;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::by_mouth::reading::Reading;
use crate::clinical::tasks::by_mouth::signs;
use crate::clinical::tasks::spec::{Pad, Shows, TaskSpec};
use crate::measure::time::Millis;

/// The length of one part of the summary (local policy).
pub const PART: Millis = Millis::from_secs(300);

/// So many parts at most, a day of them: a clock that was set far ahead must not make a page of a
/// million lines.
const MOST_PARTS: usize = 12 * 24;

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    pad: Pad {
        counts: true,
        ..Pad::PLAIN
    },
    questions: &[],
    rules: &[&rules::MEAL_TALLY],
    slug: "table",
    shows: Shows::Tally,
    flags: |_, exam| flags(exam),
    ..TaskSpec::plain(TaskId::Meal)
};

/// How often each thing was pressed, in the order of [`kinds`].
pub type Counts = Vec<usize>;

/// One part of the summary.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Its number from 0, each five minutes long; none for marks whose time can't be known.
    pub part: Option<usize>,
    /// How often each thing was pressed in it.
    pub counts: Counts,
}

/// Everything that is tallied, in order: the pads, then the signs, then notes.
pub fn kinds() -> Vec<MarkKind> {
    let mut kinds: Vec<MarkKind> = pads(TaskId::Meal).to_vec();
    kinds.extend(Sign::ALL.map(MarkKind::Sign));
    kinds.push(MarkKind::Count(Counted::Note));
    kinds
}

/// The tally by parts of five minutes, empty ones in between included; last the marks whose time
/// can't be known, if there are any. A mark stamped before the start counts to the first part.
pub fn summary(trial: &Trial) -> Vec<Part> {
    let kinds = kinds();
    let mut parts: Vec<Part> = Vec::new();
    let mut unknown = vec![0; kinds.len()];
    let Some(start) = trial.start() else {
        return parts;
    };
    let empty = |part| Part {
        part: Some(part),
        counts: vec![0; kinds.len()],
    };
    let fill = |parts: &mut Vec<Part>, to: usize| {
        while parts.len() <= to {
            parts.push(empty(parts.len()));
        }
    };
    let part_of = |at| {
        let length = trial.between(start, at).length?;
        usize::try_from(length.0.max(0) / PART.0)
            .ok()
            .filter(|part| *part < MOST_PARTS)
    };
    for mark in &trial.marks {
        let Some(kind) = kinds.iter().position(|kind| *kind == mark.kind) else {
            continue;
        };
        let counts = match part_of(mark.at) {
            Some(part) => {
                fill(&mut parts, part);
                parts.get_mut(part).map(|part| &mut part.counts)
            }
            None => Some(&mut unknown),
        };
        if let Some(count) = counts.and_then(|counts| counts.get_mut(kind)) {
            *count += 1;
        }
    }
    if unknown.iter().any(|n| *n > 0) {
        parts.push(Part {
            part: None,
            counts: unknown,
        });
    }
    parts
}

/// How often each thing was pressed, over all.
pub fn totals(trial: &Trial) -> Counts {
    kinds()
        .into_iter()
        .map(|kind| trial.count_of(kind))
        .collect()
}

/// How long a tally lasted.
pub fn lasted(trial: &Trial) -> Lasted {
    let Some((start, end)) = trial.start().zip(trial.end()) else {
        return Lasted::NotEnded;
    };
    let length = trial.between(start, end).length;
    length.map_or(Lasted::NotKnown, Lasted::For)
}

/// What the rules say about one tally.
pub fn judge(trial: &Trial) -> Vec<Flag> {
    let mut flags = signs::judge(&With::Meal, &Reading::of(trial).pressed);
    if trial.start().is_some() {
        let counts = kinds().into_iter().zip(totals(trial));
        let fact = MealFact::Tally {
            lasted: lasted(trial),
            pressed: counts.filter(|(_, n)| *n > 0).collect(),
        };
        flags.push(rules::MEAL_TALLY.flag(Level::Note, Domain::EatingDrinking, fact));
    }
    flags
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    crate::clinical::tasks::by_mouth::of_all(exam, TaskId::Meal, judge)
}
