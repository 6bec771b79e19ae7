//! How wide the mouth opens, and how strong a cough is on a meter.
//!
//! Never part of the headline: see [`crate::clinical::decision::verdict`].

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::oral::FrontTeeth;
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::measure::decimals::short;
use crate::measure::units::{LitresPerMinute, Millimetres};

/// At or below so many tenths of a millimetre the opening is narrow (source: GEE19).
const NARROW: f64 = 350.0;

/// A value in tenths, as it is shown: what reads as 35 is 35.
fn tenths(value: f64) -> f64 {
    (value * 10.0).round()
}

/// What the rules say about a mouth opening. Without an age the rules for adults are used.
pub fn opening(width: Millimetres, age: Option<Age>, teeth: FrontTeeth) -> Vec<Flag> {
    let adult = age.is_none_or(Age::is_adult);
    let shown = short(width.get());
    if !adult || teeth != FrontTeeth::UpperAndLower {
        let why = match (adult, teeth) {
            (false, _) => "the line is for adults",
            (true, FrontTeeth::NotBoth) => {
                "the line is for people with upper and lower front teeth"
            }
            (true, _) => "not noted whether there are upper and lower front teeth",
        };
        return vec![rules::MOUTH_OPENING_WHO.flag(
            Level::Note,
            Domain::Mouth,
            format!("mouth opens {shown} millimetres: measured, not judged; {why}"),
        )];
    }
    if tenths(width.get()) > NARROW {
        return Vec::new();
    }
    vec![rules::MOUTH_OPENING.flag(
        Level::Refer,
        Domain::Mouth,
        format!("mouth opens {shown} millimetres (more than 35 expected): narrow opening"),
    )]
}

/// The band of a peak cough flow (sources: CPF22, WIL23). The lines come from neuromuscular
/// practice, not from swallow screening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CoughFlow {
    /// 270 litres a minute or more.
    Usual,
    /// From 160 to below 270.
    Reduced,
    /// Below 160.
    Weak,
}

/// The band of a peak cough flow.
pub fn cough_band(flow: LitresPerMinute) -> CoughFlow {
    let tenths = tenths(flow.get());
    if tenths < 1600.0 {
        CoughFlow::Weak
    } else if tenths < 2700.0 {
        CoughFlow::Reduced
    } else {
        CoughFlow::Usual
    }
}

/// What the rules say about a peak cough flow. Without an age the rules for adults are used.
pub fn cough(flow: LitresPerMinute, age: Option<Age>) -> Vec<Flag> {
    let shown = short(flow.get());
    let flag = |rule: &'static Rule, level, words: String| {
        vec![rule.flag(level, Domain::Breathing, words)]
    };
    if age.is_some_and(|age| !age.is_adult()) {
        return flag(
            &rules::COUGH_FLOW_WHO,
            Level::Note,
            format!("peak cough flow {shown} litres a minute: measured, not judged under 16 years"),
        );
    }
    match cough_band(flow) {
        CoughFlow::Usual => Vec::new(),
        CoughFlow::Reduced => flag(
            &rules::COUGH_FLOW_REDUCED,
            Level::Note,
            format!("peak cough flow {shown} litres a minute (270 or more expected): reduced"),
        ),
        CoughFlow::Weak => flag(
            &rules::COUGH_FLOW_WEAK,
            Level::Refer,
            format!(
                "peak cough flow {shown} litres a minute (270 or more expected): weak, likely not \
                 effective"
            ),
        ),
    }
}
