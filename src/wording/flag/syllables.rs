//! Sentences about repeated syllables.

use crate::clinical::findings::fact::{OlderLine, Pace, SyllablesFact};
use crate::clinical::findings::speech::Repeated;
use crate::clinical::knowledge::norms::Compared;
use crate::measure::decimals::decimals;
use crate::measure::units::SyllablesPerSecond;
use crate::wording::compared::{CAVEAT, group, stands};
use crate::wording::speech;

pub(super) fn reason(fact: &SyllablesFact) -> String {
    match fact {
        SyllablesFact::Placed {
            trial,
            compared,
            is,
        } => placed(trial, compared, *is),
        SyllablesFact::BelowAdultLine(rate) => format!(
            "pa-ta-ka {}: below 5.4, which the authors of the English norm call a possible \
             abnormality. It is one standard deviation below the mean: about 16 in 100 healthy \
             people fall below it.",
            exactly(*rate)
        ),
        SyllablesFact::BelowOlderLine(line, rate) => older(*line, *rate),
        SyllablesFact::TooQuickForAFinger(taps) => format!(
            "{} taps a second: above 7 a finger miscounts more, so this rate is less certain.",
            decimals(taps.get(), 2)
        ),
        SyllablesFact::NoTrial(what) => {
            format!("{}: no trial, so no rate.", speech::syllables(*what))
        }
        SyllablesFact::NoneCorrect { what, among } => format!(
            "{}: no correct trial with a time among {among}, so no rate is scored.",
            speech::syllables(*what)
        ),
        SyllablesFact::SoundNotSaid(what) => format!(
            "{}: how it sounded was not said, so no rate is scored.",
            speech::syllables(*what)
        ),
        SyllablesFact::SequencesLeftOut { succeeded, needed } => {
            format!("{}.", speech::sequences_left_out(*succeeded, *needed))
        }
        SyllablesFact::TooYoung(age) => format!(
            "{}; this child is {age} old. Under half of 2-year-olds managed more than one.",
            speech::from_three()
        ),
        SyllablesFact::Evenness { apart, variation } => format!(
            "The taps lie {} seconds apart on average and vary by {} %. This is the evenness of \
             the finger, not of the person: nothing is judged by it.",
            decimals(apart.get(), 2),
            decimals(variation.get(), 0)
        ),
    }
}

/// What a trial came to, without the group it stands beside; none of what is beside no group.
pub(super) fn result(fact: &SyllablesFact) -> Option<String> {
    match fact {
        SyllablesFact::Placed { trial, is, .. } => Some(came_to(trial, *is)),
        _ => None,
    }
}

fn placed(trial: &Repeated, compared: &Compared, is: Pace) -> String {
    format!(
        "{}; {}. {} {CAVEAT}",
        came_to(trial, is),
        stands(compared).unwrap_or_default(),
        group(compared)
    )
}

fn came_to(trial: &Repeated, is: Pace) -> String {
    let says = match is {
        Pace::SlowForAge => "slow for this age",
        Pace::WorthWatching => "worth watching",
        Pace::BelowUsual => "below the usual range",
        Pace::Usual => "in the usual range",
    };
    format!("{}: {says}", speech::repeated(trial))
}

/// A rate beside a line is shown to two decimals: 5.38 is below 5.4.
fn exactly(rate: SyllablesPerSecond) -> String {
    format!("{} syllables per second", decimals(rate.get(), 2))
}

fn older(line: OlderLine, rate: SyllablesPerSecond) -> String {
    let shown = exactly(rate);
    match line {
        OlderLine::Pa => format!(
            "pa {shown}: below 6.2, which went with swallowing difficulty in a questionnaire of \
             older people (odds ratio 2.9). Odds, not a rule: the mean of healthy people of 79 \
             and 80 is below that line too."
        ),
        OlderLine::TaOfMan => {
            format!("ta {shown}: below 5.2, called low for older men in one study.")
        }
        OlderLine::TaOfWoman => {
            format!("ta {shown}: below 5.4, called low for older women in one study.")
        }
        OlderLine::TaSexNotGiven => format!(
            "ta {shown}: one study calls less than 5.2 low for older men and less than 5.4 for \
             older women; the sex was not given."
        ),
    }
}
