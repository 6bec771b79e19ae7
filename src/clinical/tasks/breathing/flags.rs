//! What the rules say about the readings of an examination.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::breath_taps;
use crate::clinical::tasks::breathing::bands::{Band, rate_band, reading_band, usual};
use crate::clinical::tasks::breathing::blocks::blocks;
use crate::clinical::tasks::breathing::child as breathing_child;
use crate::clinical::tasks::breathing::child::State;
use crate::clinical::tasks::breathing::reading::{count, reading};
use crate::clinical::tasks::breathing::words::{rate_words, spo2_words};
use crate::measure::decimals::decimals;
use crate::measure::units::PerMinute;

/// A child's rate beside what is usual at the age: notes.
pub fn child_notes(rate: PerMinute, exam: &Exam, state: Option<State>) -> Vec<Flag> {
    let Some(age) = exam.age.filter(|a| !a.is_adult()) else {
        return Vec::new();
    };
    let flags = breathing_child::judge(rate, age, state);
    if !flags.is_empty() {
        return flags;
    }
    let words = match breathing_child::usual(age, state) {
        Ok(breathing_child::Usual::Measured { low, high, state }) => format!(
            "breathing {} a minute {}: among the middle 90 of 100 children of {age} ({} to {})",
            rate.whole(),
            state.words(),
            decimals(low.get(), 1),
            decimals(high.get(), 1)
        ),
        Ok(breathing_child::Usual::Taught(_)) => return Vec::new(),
        Err(why) => format!("breathing {} a minute. {why}", rate.whole()),
    };
    vec![rules::BREATHING_INFANT.flag(Level::Note, Domain::Breathing, words)]
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let mut flags: Vec<Flag> = blocks(exam)
        .into_iter()
        .map(|block| match exam.went_on(&block.hold, block.go_on) {
            Some(on) => block.flag.rule().flag(
                Level::Note,
                Domain::EatingDrinking,
                on.told(&block.flag.reason()),
            ),
            None => block.flag,
        })
        .collect();
    let Some(finding) = reading(exam) else {
        return flags;
    };
    let mut note = |rule: &'static Rule, words: String| {
        flags.push(rule.flag(Level::Note, Domain::Breathing, words));
    };
    if exam.age.is_some_and(|a| !a.is_adult()) {
        let state = count(exam).and_then(breath_taps::state);
        for (rate, _) in &finding.rates {
            if let Ok(rate) = PerMinute::new(f64::from(*rate)) {
                flags.extend(child_notes(rate, exam, state));
            }
        }
        return flags;
    }
    for (rate, method) in &finding.rates {
        if rate_band(*rate, &exam.policy) == Band::Caution {
            let words = rate_words(*rate, *method);
            let (low, high) = usual(&exam.policy);
            note(
                &rules::BREATHING_RATE,
                format!("{words} ({low} to {high} is usual)"),
            );
        }
    }
    if let Some(percent) = finding.spo2
        && reading_band(&finding, percent, &exam.policy) == Band::Caution
    {
        let words = spo2_words(percent, finding.oxygen, finding.target);
        if finding.confirmed.is_some() {
            note(
                &rules::BREATHING_SECOND_SCALE,
                format!("{words} (88 to 92 % is prescribed)"),
            );
            return flags;
        }
        let usual = exam.policy.spo2_caution.saturating_add(1);
        note(
            &rules::BREATHING_SPO2,
            format!("{words} ({usual} % or more is usual)"),
        );
    }
    flags
}
