//! At the table: a meal or a drink watched and tallied on one time line.
//!
//! **Invariant:** every mark of a tally is in exactly one part of its summary.

use crate::clinical::findings::counted::{Counted, counted, pads};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::With;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::sign::{Sign, SignTask};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth::seen;
use crate::clinical::tasks::by_mouth::signs;
use crate::clinical::tasks::spec::{Length, Pad, TaskSpec};
use crate::measure::time::Millis;

/// The length of one part of the summary.
pub const PART: Millis = Millis::from_secs(300);

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::Meal,
    title: "At the table",
    steps: &[
        "Watch what is ordered for this person; nothing is offered for the sake of the tally.",
        "A touch for each swallow and, if you like, each breath; a sign when you see or hear it.",
        "Lock the phone or leave the page: the time runs on, what you press is kept.",
        "End it a minute after the last mouthful.",
    ],
    say: "",
    by_mouth: false,
    pad: Pad {
        counts: ("swallow", "swallows"),
        start: "Start the tally",
        length: Length::Open,
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        end: Some("End the tally"),
        watch: None,
        signs: Some(SignTask::Meal),
        countdown: false,
    },
    more: "",
    questions: &[],
    trials: 1,
    usual: |_| Vec::new(),
    lines: Some(lines),
    compare: |_| Vec::new(),
    caveat: "Counted as pressed, compared with nothing. A tally without a sign clears nobody.",
    untimed: None,
    for_whom: "Anybody at any age who eats or drinks what is ordered: it is watched, not given.",
    rules: &[&rules::MEAL_TALLY],
    not_for: |_, _| None,
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
    let mut kinds: Vec<MarkKind> = pads(TaskId::Meal).iter().map(|pad| pad.kind).collect();
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
    // A clock that was set far ahead must not make a page of a million lines.
    let most = 12 * 24;
    let part_of = |at| {
        let length = trial.between(start, at).length?;
        usize::try_from(length.0.max(0) / PART.0)
            .ok()
            .filter(|part| *part < most)
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

/// One and many of what a press was, for a sentence.
pub fn words_of(kind: MarkKind) -> (&'static str, &'static str) {
    match kind {
        MarkKind::Sign(sign) => match sign {
            Sign::Cough => ("cough", "coughs"),
            Sign::VoiceChange => ("wet voice", "times wet voice"),
            Sign::ThroatClear => ("throat clear", "throat clears"),
            Sign::Pause => ("pause", "pauses"),
            Sign::Spill => ("spill or drool", "spills or drools"),
            Sign::BreathingChange => ("breathing change", "breathing changes"),
            Sign::NoSwallow => ("time no swallow felt", "times no swallow felt"),
            Sign::AskedToStop => ("request to stop", "requests to stop"),
            Sign::Choke => ("choking", "chokings"),
        },
        MarkKind::Count(Counted::Note) => ("note", "notes"),
        _ => pads(TaskId::Meal)
            .iter()
            .find(|pad| pad.kind == kind)
            .map_or(("", ""), |pad| (pad.one, pad.many)),
    }
}

/// Counts in words: "34 swallows, 2 coughs"; what was not pressed is left out.
pub fn in_words(counts: &[usize]) -> String {
    let parts: Vec<String> = kinds()
        .into_iter()
        .zip(counts)
        .filter(|(_, n)| **n > 0)
        .map(|(kind, n)| {
            let (one, many) = words_of(kind);
            counted(*n, one, many)
        })
        .collect();
    if parts.is_empty() {
        "nothing pressed".to_owned()
    } else {
        parts.join(", ")
    }
}

/// "0 to 5 min".
pub fn part_words(part: Option<usize>) -> String {
    part.map_or_else(
        || "time not known".to_owned(),
        |part| format!("{} to {} min", part * 5, part * 5 + 5),
    )
}

/// "12 min 5 s".
pub fn minutes(length: Millis) -> String {
    let seconds = length.0.max(0) / 1000;
    if seconds < 60 {
        format!("{seconds} s")
    } else {
        format!("{} min {} s", seconds / 60, seconds % 60)
    }
}

/// The length of a tally that was ended, in words.
fn length(trial: &Trial) -> String {
    trial.start().zip(trial.end()).map_or_else(
        || "not ended".to_owned(),
        |(start, end)| {
            trial
                .between(start, end)
                .length
                .map_or_else(|| "time not known".to_owned(), minutes)
        },
    )
}

/// The first line says it whole, the others part by part.
pub fn lines(trial: &Trial) -> Vec<String> {
    let mut lines = vec![format!("{}: {}", length(trial), in_words(&totals(trial)))];
    let parts = summary(trial);
    if parts.len() > 1 {
        lines.extend(
            parts
                .iter()
                .map(|part| format!("{}: {}", part_words(part.part), in_words(&part.counts))),
        );
    }
    lines
}

/// What the rules say about one tally.
pub fn judge(trial: &Trial) -> Vec<Flag> {
    let mut flags = signs::judge(&With::Meal, &seen::signs(trial));
    if trial.start().is_some() {
        flags.push(rules::MEAL_TALLY.flag(
            Level::Note,
            Domain::EatingDrinking,
            format!(
                "watched at the table, {}: {}",
                length(trial),
                in_words(&totals(trial))
            ),
        ));
    }
    flags
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    tasks::of_all(exam, TaskId::Meal, judge)
}
