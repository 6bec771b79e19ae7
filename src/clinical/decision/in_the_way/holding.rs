//! What was seen in a trial that holds every other one, and the next of its own.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Flag, Level};
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::by_mouth;
use crate::clinical::tasks::by_mouth::lag;
use std::cmp::Reverse;

/// Such flags of a task, the gravest first: a sign, a saturation at which nothing is given, a
/// request to stop, a sign of which nobody said whether the next was in the mouth.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    if by_mouth::given(task, exam).next().is_none() {
        return Vec::new();
    }
    let mut flags: Vec<Flag> = tasks::flags(task, exam)
        .into_iter()
        .filter(|flag| {
            flag.level() >= Level::Refer
                || flag.level() == Level::Incomplete
                    && (flag.fact().is_of_breathing() || flag.rule() == &rules::TRIAL_ASKED_TO_STOP)
        })
        .collect();
    // One of them holds all trials, whichever series it stands between.
    let rule = match task {
        TaskId::Own => &rules::OWN_UNFINISHED,
        _ => &rules::SIPS_UNFINISHED,
    };
    flags.extend(lag::late_flags(task, exam, rule));
    flags.sort_by_key(|flag| Reverse(flag.level()));
    flags
}
