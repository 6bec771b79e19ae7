//! Oxygen saturation during a trial by mouth: asked only where it was read before, and judged for
//! respiratory safety alone.

use super::breathing::{self, Band};
use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::rules;
use crate::clinical::task::{Question, TaskId, When};
use crate::measure::decimals::short;

/// Question: the lowest SpO2 of a trial and its watch, in percent.
pub const LOWEST: &str = "lowest-spo2";

/// The question, for a task by mouth.
pub const fn lowest(when: When) -> Question {
    Question {
        id: LOWEST,
        ask: "Lowest SpO2 since it was given, if the oximeter stayed on",
        when,
        takes: breathing::PERCENT,
        only_if: None,
        needed: false,
    }
}

/// Whether SpO2 was read before anything was given: else there is nothing to compare with.
pub fn was_read(exam: &Exam) -> bool {
    breathing::reading(exam).is_some_and(|reading| reading.spo2.is_some())
}

/// What the lowest SpO2 of each trial of a task says: a stop where it fell too far, or below a
/// prescribed target; incomplete where nothing would be given at such a reading; else a note, so
/// that no reading is lost.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let readings = exam.trials.iter().enumerate();
    readings
        .filter(|(_, trial)| trial.task == task)
        .filter_map(|(at, trial)| Some(flag(at, trial.number(LOWEST)?, exam)))
        .collect()
}

fn flag(at: usize, lowest: f64, exam: &Exam) -> Flag {
    // Counting breaths again afterwards does not change what was read before the trial.
    let before = exam.trials[..at]
        .iter()
        .rev()
        .filter(|t| t.task == TaskId::Breathing)
        .find_map(|t| breathing::read(t).spo2);
    let target = breathing::reading(exam).and_then(|reading| reading.target);
    let below = target.is_some_and(|target| lowest < target);
    let adult = exam.age.is_none_or(|age| age.is_adult());
    let words = match before {
        Some(before) => format!("from {} to {} %", short(before), short(lowest)),
        None => format!("to {} %", short(lowest)),
    };
    if below || before.is_some_and(|before| before - lowest > f64::from(exam.policy.spo2_fall)) {
        return rules::BREATHING_SPO2_FALL.flag(
            Level::Stop,
            Domain::EatingDrinking,
            format!(
                "oxygen saturation fell {words} during the trial (stopped for respiratory safety; \
                 a fall does not show aspiration)"
            ),
        );
    }
    let held = adult && breathing::spo2_band(lowest, target, &exam.policy) == Band::Block;
    let level = if held { Level::Incomplete } else { Level::Note };
    rules::BREATHING_SPO2.flag(
        level,
        Domain::EatingDrinking,
        format!("oxygen saturation {words} during the trial"),
    )
}
