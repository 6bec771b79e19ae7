//! What the rules say about breathing by taps and in 30 seconds.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::BreathingFact;
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath_taps::judge::{Setting, decides, judge};
use crate::clinical::tasks::breath_taps::reading::{even_rate, series, state, thirty};
use crate::clinical::tasks::breathing;
use crate::measure::units::PerMinute;

/// What the rules say about an examination.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let Some(trial) = exam.latest_started(task) else {
        return Vec::new();
    };
    let counted = !breathing::counted(exam).is_empty();
    let mut flags = Vec::new();
    let rate = if task == TaskId::BreathTaps {
        let (taps, setting) = (series(trial), Setting::of(&exam.policy));
        flags.extend(judge(&taps, exam.age, counted, setting));
        even_rate(&taps, setting)
    } else {
        let rate = thirty(trial);
        let alone = exam.age.is_none_or(Age::is_adult) && !counted;
        let (level, domain) = decides(alone);
        let fact = BreathingFact::Thirty { rate, alone };
        flags.push(rules::BREATHING_THIRTY.flag(level, domain, fact));
        rate
    };
    let rate = rate.and_then(|rate| PerMinute::new(f64::from(rate)).ok());
    flags.extend(rate.map_or(Vec::new(), |rate| {
        breathing::child_notes(rate, exam, state(trial))
    }));
    flags
}
