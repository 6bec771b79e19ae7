//! Oxygen saturation during a trial by mouth: asked only where it was read before, and judged for
//! respiratory safety alone.

use super::breathing;
use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::rules;
use crate::clinical::task::{Question, Takes, TaskId, When};
use crate::measure::decimals::short;

/// Question: the lowest SpO2 of a trial and its watch, in percent.
pub const LOWEST: &str = "lowest-spo2";

/// The question, for a task by mouth.
pub const fn lowest(when: When) -> Question {
    Question {
        id: LOWEST,
        ask: "Lowest SpO2 since it was given, if the oximeter stayed on",
        when,
        takes: Takes::Number {
            unit: "%",
            least: 50,
            most: 100,
            step: 0,
        },
        only_if: None,
        needed: false,
    }
}

/// Whether SpO2 was read before anything was given: else there is nothing to compare with.
pub fn was_read(exam: &Exam) -> bool {
    before(exam).is_some()
}

/// SpO2 before the trials in percent, and the lowest value of a prescribed target.
fn before(exam: &Exam) -> Option<(f64, Option<f64>)> {
    let reading = breathing::read(exam.latest(TaskId::Breathing)?);
    Some((reading.spo2?, reading.target))
}

/// A stop for each trial of a task in which SpO2 fell too far, or below a prescribed target.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let Some((before, target)) = before(exam) else {
        return Vec::new();
    };
    let trials = exam.trials.iter().filter(|t| t.task == task);
    trials
        .filter_map(|trial| trial.number(LOWEST))
        .filter(|lowest| {
            before - lowest > f64::from(exam.policy.spo2_fall)
                || target.is_some_and(|target| *lowest < target)
        })
        .map(|lowest| {
            rules::BREATHING_SPO2_FALL.flag(
                Level::Stop,
                Domain::EatingDrinking,
                format!(
                    "oxygen saturation fell from {} to {} % during the trial (stopped for \
                     respiratory safety; a fall does not show aspiration)",
                    short(before),
                    short(lowest)
                ),
            )
        })
        .collect()
}
