//! What the rules say about the readings of an examination.

use crate::clinical::findings::breathing::State;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::{BreathingFact, UsualSpo2};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::breath_taps::reading as breath_taps;
use crate::clinical::tasks::breathing::Finding;
use crate::clinical::tasks::breathing::adult_bands::Band;
use crate::clinical::tasks::breathing::bands::{rate_band, reading_band, usual};
use crate::clinical::tasks::breathing::blocks::{Block, blocks};
use crate::clinical::tasks::breathing::child as breathing_child;
use crate::clinical::tasks::breathing::child::Usual;
use crate::clinical::tasks::breathing::reading::{count, reading};
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
    let rate = rate.whole();
    let fact = match breathing_child::usual(age, state) {
        Ok(Usual::Measured { low, high, state }) => BreathingFact::Measured {
            rate,
            age,
            state,
            off: None,
            low,
            high,
        },
        Ok(Usual::Taught(_)) => return Vec::new(),
        Err(why) => BreathingFact::NoRange { rate, why },
    };
    vec![note(&rules::BREATHING_INFANT, fact)]
}

fn note(rule: &'static Rule, fact: BreathingFact) -> Flag {
    rule.flag(Level::Note, Domain::Breathing, fact)
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let mut flags: Vec<Flag> = blocks(exam)
        .into_iter()
        .map(|block: Block| block.told(exam))
        .collect();
    let Some(finding) = reading(exam) else {
        return flags;
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
    flags.extend(rates_off(exam, &finding));
    flags.extend(saturation_off(exam, &finding));
    flags
}

/// Rates of an adult that are off the usual band and hold nothing up.
fn rates_off(exam: &Exam, finding: &Finding) -> Vec<Flag> {
    let off = finding
        .rates
        .iter()
        .filter(|(rate, _)| rate_band(*rate, &exam.policy) == Band::Caution);
    off.map(|(rate, method)| {
        note(
            &rules::BREATHING_RATE,
            BreathingFact::RateOff {
                rate: *rate,
                method: *method,
                usual: usual(&exam.policy),
            },
        )
    })
    .collect()
}

/// A saturation of an adult that is off what is usual and holds nothing up.
fn saturation_off(exam: &Exam, finding: &Finding) -> Option<Flag> {
    let spo2 = finding.saturation()?;
    if reading_band(finding, spo2.percent, &exam.policy) != Band::Caution {
        return None;
    }
    let (rule, usual) = match finding.confirmed {
        Some(_) => (&rules::BREATHING_SECOND_SCALE, UsualSpo2::Prescribed),
        None => {
            let from = exam.policy.spo2_caution.saturating_add(1);
            (&rules::BREATHING_SPO2, UsualSpo2::From(from))
        }
    };
    Some(note(rule, BreathingFact::SaturationOff { spo2, usual }))
}
