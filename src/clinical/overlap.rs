//! A sign within the minute after two trials of different tasks: either may be meant.
//!
//! What overlaps within the own trials is named there.

use super::exam::Exam;
use super::flag::{Domain, Flag, Level};
use super::rules;
use super::task::TaskId;
use super::tasks::{self, own, water::WATCH};
use super::trial::Trial;
use super::words::small;
use crate::measure::time::Millis;

/// A note for each such sign.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let given = |t: &&Trial| tasks::spec(t.task).by_mouth && t.start().is_some();
    let trials: Vec<&Trial> = exam.trials.iter().filter(given).collect();
    let mut flags = Vec::new();
    for now in &trials {
        for (sign, at) in now.signs() {
            // The minute of the trial before still ran: it ended, and the sign came within it.
            let other = trials.iter().rev().find(|before| {
                let (Some(end), Some(start)) = (before.end(), now.start()) else {
                    return false;
                };
                let since = before.between(end, at).length;
                let earlier = before.between(end, start).length;
                before.task != now.task
                    && earlier.is_some_and(|l| l >= Millis::ZERO)
                    && since.is_none_or(|l| l <= WATCH)
            });
            if let Some(other) = other {
                flags.push(rules::OWN_OVERLAP.flag(
                    Level::Note,
                    Domain::EatingDrinking,
                    format!(
                        "{} with {}: within 60 seconds of {} as well, either may be meant",
                        sign.past(),
                        name(now),
                        name(other)
                    ),
                ));
            }
        }
    }
    flags
}

/// What was given.
fn name(trial: &Trial) -> String {
    match trial.task {
        TaskId::Own => own::brief(trial),
        task => small(tasks::spec(task).title),
    }
}
