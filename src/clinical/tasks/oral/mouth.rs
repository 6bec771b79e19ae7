//! How wide the mouth opens, and how strong a cough is on a meter.
//!
//! Never part of the headline: see [`crate::clinical::decision::verdict`].

use crate::clinical::findings::fact::{Opening, OralFact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::oral::{CoughFlow, FrontTeeth};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rules;
use crate::measure::units::{LitresPerMinute, Millimetres};

/// At or below so many millimetres the opening is narrow (source: GEE19).
pub const NARROW: i32 = 35;

/// From so many litres a minute on a cough flow is usual (source: CPF22).
pub const USUAL_FLOW: i32 = 270;

/// Below so many litres a minute it is weak (source: CPF22, WIL23).
const WEAK_FLOW: i32 = 160;

/// A value in tenths, as it is shown: what reads as 35 is 35.
fn tenths(value: f64) -> f64 {
    (value * 10.0).round()
}

/// A line in tenths.
fn line(whole: i32) -> f64 {
    f64::from(whole * 10)
}

/// What the rules say about a mouth opening. Without an age the rules for adults are used.
pub fn opening(width: Millimetres, age: Option<Age>, teeth: FrontTeeth) -> Vec<Flag> {
    let child = age.is_some_and(|age| !age.is_adult());
    let judged = match (child, teeth) {
        (true, _) => Opening::Child,
        (false, FrontTeeth::NotBoth) => Opening::NoTeeth,
        (false, FrontTeeth::NotLooked) => Opening::TeethNotNoted,
        (false, FrontTeeth::UpperAndLower) if tenths(width.get()) > line(NARROW) => {
            return Vec::new();
        }
        (false, FrontTeeth::UpperAndLower) => Opening::Narrow,
    };
    let (rule, level) = match judged {
        Opening::Narrow => (&rules::MOUTH_OPENING, Level::Refer),
        _ => (&rules::MOUTH_OPENING_WHO, Level::Note),
    };
    vec![rule.flag(level, Domain::Mouth, OralFact::Opening { width, judged })]
}

/// The band of a peak cough flow.
pub fn cough_band(flow: LitresPerMinute) -> CoughFlow {
    let tenths = tenths(flow.get());
    if tenths < line(WEAK_FLOW) {
        CoughFlow::Weak
    } else if tenths < line(USUAL_FLOW) {
        CoughFlow::Reduced
    } else {
        CoughFlow::Usual
    }
}

/// What the rules say about a peak cough flow. Without an age the rules for adults are used.
pub fn cough(flow: LitresPerMinute, age: Option<Age>) -> Vec<Flag> {
    let child = age.is_some_and(|age| !age.is_adult());
    let band = (!child).then(|| cough_band(flow));
    let (rule, level) = match band {
        None => (&rules::COUGH_FLOW_WHO, Level::Note),
        Some(CoughFlow::Usual) => return Vec::new(),
        Some(CoughFlow::Reduced) => (&rules::COUGH_FLOW_REDUCED, Level::Note),
        Some(CoughFlow::Weak) => (&rules::COUGH_FLOW_WEAK, Level::Refer),
    };
    vec![rule.flag(level, Domain::Breathing, OralFact::CoughFlow { flow, band })]
}
