//! Sentences about breaths and oxygen saturation before a trial.

use crate::clinical::findings::breathing::Reading;
use crate::clinical::findings::fact::{BreathingFact, Off, UsualSpo2};
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::go_on::GonePast;
use crate::clinical::tasks::breathing::adult_bands::SECOND_SCALE;
use crate::measure::decimals::decimals;
use crate::wording::breathing as words;
use crate::wording::gone_past;

pub(super) fn reason(fact: &BreathingFact, _flag: &Flag) -> String {
    match fact {
        BreathingFact::InTheWay {
            reading,
            chart,
            gone_past,
        } => in_the_way(*reading, *chart, gone_past.as_ref()),
        BreathingFact::RateOff {
            rate,
            method,
            usual: (low, high),
        } => {
            let words = words::rate(*rate, *method);
            format!("{words} ({low} to {high} is usual)")
        }
        BreathingFact::SaturationOff { spo2, usual } => {
            let words = words::spo2(*spo2);
            match usual {
                UsualSpo2::From(percent) => format!("{words} ({percent} % or more is usual)"),
                UsualSpo2::Prescribed => {
                    let (low, high) = (SECOND_SCALE.start(), SECOND_SCALE.end());
                    format!("{words} ({low} to {high} % is prescribed)")
                }
            }
        }
        BreathingFact::Measured {
            rate,
            age,
            state,
            off,
            low,
            high,
        } => format!(
            "breathing {rate} a minute {}: {} the middle 90 of 100 children of {age} ({} to {})",
            words::state(*state),
            off.map_or("among", side),
            decimals(low.get(), 1),
            decimals(high.get(), 1)
        ),
        BreathingFact::Taught {
            rate,
            age,
            off,
            low,
            high,
        } => format!(
            "breathing {rate} a minute: {} one taught range for {age} ({} to {}); taught ranges \
             differ",
            side(*off),
            decimals(*low, 0),
            decimals(*high, 0)
        ),
        BreathingFact::NoRange { rate, why } => {
            format!("breathing {rate} a minute. {}", words::no_range(*why))
        }
        BreathingFact::TapsUneven => {
            "breaths by taps: too few even ones yet; go on tapping, or count for 60 seconds"
                .to_owned()
        }
        BreathingFact::Taps {
            rate,
            left_out,
            alone,
        } => taps(*rate, *left_out, *alone),
        BreathingFact::Thirty { rate, alone } => thirty(*rate, *alone),
    }
}

fn in_the_way(reading: Reading, chart: bool, gone: Option<&GonePast>) -> String {
    let words = words::reading(reading);
    if !chart {
        return gone_past::told_if(words, gone);
    }
    let question = format!("{words}: does it fit the local chart for this age?");
    match gone {
        Some(gone) => gone_past::answered(&question, gone),
        None => question,
    }
}

const fn side(off: Off) -> &'static str {
    match off {
        Off::Below => "below",
        Off::Above => "above",
    }
}

fn taps(rate: u32, left_out: usize, alone: bool) -> String {
    let left_out = match left_out {
        0 => String::new(),
        1 => ", one uneven interval left out".to_owned(),
        n => format!(", {n} uneven intervals left out"),
    };
    let count = match alone {
        true => ": taps alone do not clear an adult; count for 60 seconds",
        false => "",
    };
    format!("breathing {rate} a minute by taps{left_out}{count}")
}

fn thirty(rate: Option<u32>, alone: bool) -> String {
    let words = match rate {
        Some(rate) => format!("breathing {rate} a minute (counted for 30 seconds, doubled)"),
        None => "breaths in 30 seconds: count again".to_owned(),
    };
    let end = match alone {
        true => ": that does not clear an adult; count for 60 seconds",
        false => "",
    };
    format!("{words}{end}")
}
