//! Sentences about how long a sound is held, and s to z.

use crate::clinical::findings::fact::{NoRatio, VoiceFact};
use crate::clinical::findings::speech::{SToZ, Sound};
use crate::wording::compared::{CAVEAT, group, stands};
use crate::wording::flag::speech::age_remark;
use crate::wording::speech::{longest, s_to_z};

pub(super) fn reason(fact: &VoiceFact) -> String {
    match fact {
        VoiceFact::ShortAh { held, age_given } => format!(
            "{}: under 10 seconds. The spread among healthy people is wide, and a short one is not \
             specific to the larynx: frailty shortens it too.{} {CAVEAT}",
            longest(Sound::Ah, held),
            age_remark(*age_given)
        ),
        VoiceFact::AhOfChild {
            held,
            compared,
            short,
        } => {
            let says = if *short {
                "short beside this group"
            } else {
                "not short beside this group, which proves little: other samples of children hold \
                 longer"
            };
            format!(
                "{}: {says}; {}. {} {CAVEAT}",
                longest(Sound::Ah, held),
                stands(compared).unwrap_or_default(),
                group(compared)
            )
        }
        VoiceFact::RatioOfChild(ratio) => format!(
            "{}. In children it is reported, not judged: nodules often leave it normal, and some \
             healthy children reach 1.42.",
            s_to_z(ratio)
        ),
        VoiceFact::Ratio {
            ratio,
            above,
            age_given,
        } => {
            let ends = if *above { "; not a diagnosis." } else { "." };
            format!("{}{ends}{}", came_to(ratio, *above), age_remark(*age_given))
        }
        VoiceFact::NoRatio(why) => {
            let why = match why {
                NoRatio::NoS => "there is no time for s.",
                NoRatio::NoZ => "there is no time for z.",
                NoRatio::SNotHeld => "s was not held.",
                NoRatio::ZNotHeld => "z was not held.",
                NoRatio::OutOfRange => "please check both times.",
            };
            format!("The ratio of s to z cannot be computed: {why}")
        }
    }
}

/// What the ratio of an adult came to, in one clause; none of anything else.
pub(super) fn result(fact: &VoiceFact) -> Option<String> {
    match fact {
        VoiceFact::Ratio { ratio, above, .. } => Some(came_to(ratio, *above)),
        _ => None,
    }
}

fn came_to(ratio: &SToZ, above: bool) -> String {
    let says = if above {
        "above 1.4, a reason to have the larynx looked at"
    } else {
        "borderline (1.2 to 1.4), not above the line of 1.4"
    };
    format!("{}: {says}", s_to_z(ratio))
}
