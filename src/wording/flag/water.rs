//! Sentences about the 90 mL of water.

use crate::clinical::findings::fact::{Missing, WaterFact};
use crate::clinical::findings::flag::Flag;
use crate::measure::decimals::short;
use crate::wording::by_mouth::{missing, voice, why_not};

pub(super) fn reason(fact: &WaterFact, _flag: &Flag) -> String {
    match fact {
        WaterFact::NotGiven(None) => "90 mL of water not given".to_owned(),
        WaterFact::NotGiven(Some(why)) => format!("90 mL of water not given: {}", why_not(why)),
        WaterFact::GivenAndNot(why) => {
            format!(
                "90 mL of water: given, and said not to be: {}",
                why_not(why)
            )
        }
        WaterFact::TooYoung {
            under,
            given: false,
        } => {
            format!("The 90 mL water test is not given under {under} years.")
        }
        WaterFact::TooYoung { under, given: true } => format!(
            "90 mL of water was given, though it is not meant for anybody under {under} years"
        ),
        WaterFact::Paused => "did not drink the 90 mL in one go".to_owned(),
        WaterFact::Left(Some(ml)) => format!("{} of 90 mL left in the cup", short(*ml)),
        WaterFact::Left(None) => "did not finish the 90 mL".to_owned(),
        WaterFact::Voice { before, after } => {
            let after = voice(*after);
            match before {
                Some(before) => format!("voice {after} after the water, {} before", voice(*before)),
                None => format!("voice {after} after the water, not recorded before"),
            }
        }
        WaterFact::VoiceBefore(before) => {
            format!("voice {} already before the water", voice(*before))
        }
        WaterFact::Missing(Missing::End) => "the last swallow was not marked".to_owned(),
        WaterFact::Missing(Missing::VoiceBefore) => {
            "voice before the water not recorded".to_owned()
        }
        WaterFact::Missing(which) => missing(which),
        WaterFact::TooQuick => {
            "first lip contact and last swallow were marked within one second".to_owned()
        }
        WaterFact::CupNotRecorded => "not recorded whether the cup was emptied".to_owned(),
        WaterFact::VoiceAfterNotRecorded => "voice after the water not recorded".to_owned(),
        WaterFact::Clear { no_sign: true } => {
            "90 mL of water drunk in one go, no sign for 60 seconds after it".to_owned()
        }
        WaterFact::Clear { no_sign: false } => {
            "90 mL of water drunk in one go, watched for 60 seconds after it".to_owned()
        }
    }
}
