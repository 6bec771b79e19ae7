//! Sentences about face, mouth and throat.

use crate::clinical::findings::fact::{Opening, OralFact};
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::oral::{CoughFlow, FacePattern, Found, Gag, Sighting};
use crate::clinical::knowledge::oral::Item;
use crate::clinical::knowledge::oral::item::Cranial;
use crate::clinical::knowledge::oral::nerve::Side;
use crate::clinical::tasks::oral::mouth::{NARROW, USUAL_FLOW};
use crate::clinical::tasks::oral::points::tested_on;
use crate::measure::decimals::short;
use crate::measure::units::{LitresPerMinute, Millimetres};
use crate::wording::found::named;
use crate::wording::words::small;

pub(super) fn reason(fact: &OralFact, _flag: &Flag) -> String {
    match fact {
        OralFact::Deviates(seen) => {
            let (nerve, side) = seen.weak();
            let (nerve, side) = (nerve.words(), side.words());
            format!("{}: {nerve} weak on the {side}", sighting(*seen))
        }
        OralFact::BothSides { nerve, seen } => {
            let seen: Vec<String> = seen.iter().map(|seen| sighting(*seen)).collect();
            format!(
                "{}: findings point to both sides ({}); which counts is the clinician's to say",
                nerve.words(),
                seen.join("; ")
            )
        }
        OralFact::Face(pattern) => face(*pattern),
        OralFact::UpperFaceElsewhere(side) => format!(
            "lower face weak on the {}, forehead or eye on the {}: which counts is the \
             clinician's to say",
            side.words(),
            side.other().words()
        ),
        OralFact::TongueWastedAndTwitching(side) => format!(
            "tongue thin or furrowed and twitching on the {}: lower motor neuron pattern",
            side.words()
        ),
        OralFact::Strong {
            nerve,
            side,
            weak,
            strong,
        } => beside_strength(*nerve, *side, weak, strong),
        OralFact::TongueRange => "tongue does not move its full range: aspiration was seen more \
             often (odds ratio 2.72, 1.96 to 3.79)"
            .to_owned(),
        OralFact::Gag(gag) => format!(
            "{}: decides nothing; it is missing in 37 % of healthy people in one study and in 13 % \
             of adults who swallow well in another",
            gag_words(*gag)
        ),
        OralFact::Opening { width, judged } => opening(*width, *judged),
        OralFact::CoughFlow { flow, band } => cough_flow(*flow, *band),
        OralFact::WetVoice => "wet voice: a reason to look further, not proof".to_owned(),
        OralFact::NoSwallowFelt => {
            "no swallow felt under four fingers: tells nothing about how far the larynx moves"
                .to_owned()
        }
    }
}

/// What was seen, within a sentence.
fn sighting(seen: Sighting) -> String {
    match seen {
        Sighting::TonguePointsTo(side) => format!("tongue points to the {}", side.words()),
        Sighting::UvulaPulledTo(side) => format!("uvula pulled to the {}", side.words()),
        Sighting::JawOpensTo(side) => format!("jaw opens to the {}", side.words()),
        Sighting::SmilePulledTo(side) => {
            format!("mouth pulled to the {} on smiling", side.words())
        }
        Sighting::FoundWeak(nerve, side) => {
            format!("{} weak on the {}", nerve.words(), side.words())
        }
    }
}

fn face(pattern: FacePattern) -> String {
    match pattern {
        FacePattern::Upper(side) => format!(
            "lower face weak on the {}, forehead moves there: upper motor neuron pattern",
            side.words()
        ),
        FacePattern::Lower(side) => format!(
            "lower face and forehead weak on the {}: lower motor neuron pattern",
            side.words()
        ),
    }
}

fn beside_strength(nerve: Cranial, side: Side, weak: &[Found], strong: &[&Item]) -> String {
    let weak: Vec<String> = weak.iter().map(|found| small(&named(found))).collect();
    let strength = |item: &&Item| match nerve {
        Cranial::Twelfth => format!("tongue into the {} cheek", tested_on(nerve, side).words()),
        _ => format!("{} on the {}", small(item.name), side.words()),
    };
    let strong: Vec<String> = strong.iter().map(strength).collect();
    format!(
        "{}; but as expected: {}. Shown together, not resolved",
        weak.join("; "),
        strong.join(", ")
    )
}

const fn gag_words(gag: Gag) -> &'static str {
    match gag {
        Gag::Present => "gag present",
        Gag::Weak => "gag weak or on one side only",
        Gag::Absent => "no gag",
        Gag::NotTested => "gag not tested",
    }
}

fn opening(width: Millimetres, judged: Opening) -> String {
    let shown = short(width.get());
    let why = match judged {
        Opening::Narrow => {
            return format!(
                "mouth opens {shown} millimetres (more than {NARROW} expected): narrow opening"
            );
        }
        Opening::Child => "the line is for adults",
        Opening::NoTeeth => "the line is for people with upper and lower front teeth",
        Opening::TeethNotNoted => "not noted whether there are upper and lower front teeth",
    };
    format!("mouth opens {shown} millimetres: measured, not judged; {why}")
}

fn cough_flow(flow: LitresPerMinute, band: Option<CoughFlow>) -> String {
    let words = format!("peak cough flow {} litres a minute", short(flow.get()));
    let expected = format!("({USUAL_FLOW} or more expected)");
    match band {
        None => format!("{words}: measured, not judged under 16 years"),
        Some(CoughFlow::Usual) => format!("{words} {expected}"),
        Some(CoughFlow::Reduced) => format!("{words} {expected}: reduced"),
        Some(CoughFlow::Weak) => format!("{words} {expected}: weak, likely not effective"),
    }
}
