//! From what deviates to the weak side, nerve by nerve.
//!
//! The side is named, the place of the lesion is left to the clinician. Findings that point to
//! different sides stand side by side. Notes only.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::oral::nerve::{Nerve, Side};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;

/// One thing seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sighting {
    /// The tongue, put out, points to this side.
    TonguePointsTo(Side),
    /// On "ah" the uvula is pulled to this side.
    UvulaPulledTo(Side),
    /// The jaw opens towards this side.
    JawOpensTo(Side),
    /// On smiling the mouth is pulled to this side.
    SmilePulledTo(Side),
    /// Found weak on this side by itself: at rest, against resistance, in range.
    FoundWeak(Nerve, Side),
}

impl Sighting {
    /// The nerve and the weak side it speaks of (sources: ALPF, DER, MW).
    pub const fn weak(self) -> (Nerve, Side) {
        match self {
            Sighting::TonguePointsTo(side) => (Nerve::Twelfth, side),
            Sighting::UvulaPulledTo(side) => (Nerve::Tenth, side.other()),
            Sighting::JawOpensTo(side) => (Nerve::Fifth, side),
            Sighting::SmilePulledTo(side) => (Nerve::Seventh, side.other()),
            Sighting::FoundWeak(nerve, side) => (nerve, side),
        }
    }

    /// Its rule; none where nothing was concluded.
    fn rule(self) -> Option<&'static Rule> {
        match self {
            Sighting::TonguePointsTo(_) => Some(&rules::WEAK_SIDE_TONGUE),
            Sighting::UvulaPulledTo(_) => Some(&rules::WEAK_SIDE_UVULA),
            Sighting::JawOpensTo(_) => Some(&rules::WEAK_SIDE_JAW),
            Sighting::SmilePulledTo(_) => Some(&rules::WEAK_SIDE_SMILE),
            Sighting::FoundWeak(..) => None,
        }
    }

    /// In words for a sentence.
    fn words(self) -> String {
        match self {
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
}

/// The weak side by one nerve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weak {
    /// All that was seen points to this side.
    On(Side),
    /// What was seen points to both sides.
    Conflict,
}

/// The weak side by a nerve; none where nothing was seen. The order of sightings has no meaning.
pub fn weak_by(nerve: Nerve, sightings: &[Sighting]) -> Option<Weak> {
    let mut sides = sightings
        .iter()
        .map(|s| s.weak())
        .filter(|(n, _)| *n == nerve)
        .map(|(_, side)| side);
    let first = sides.next()?;
    Some(if sides.all(|side| side == first) {
        Weak::On(first)
    } else {
        Weak::Conflict
    })
}

/// Whether the forehead moves, side by side: brows raised.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Forehead {
    /// It moves on the left.
    pub left: Looked,
    /// It moves on the right.
    pub right: Looked,
}

/// The pattern of a weak face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FacePattern {
    /// The forehead moves on the weak side: upper motor neuron.
    Upper(Side),
    /// The forehead does not move on the weak side either: lower motor neuron.
    Lower(Side),
}

/// The pattern, where one side of the lower face is weak and the forehead of that side was tested
/// (source: NB).
pub fn face_pattern(sightings: &[Sighting], forehead: Forehead) -> Option<FacePattern> {
    let Some(Weak::On(side)) = weak_by(Nerve::Seventh, sightings) else {
        return None;
    };
    let moves = match side {
        Side::Left => forehead.left,
        Side::Right => forehead.right,
    };
    match moves {
        Looked::Present => Some(FacePattern::Upper(side)),
        Looked::Absent => Some(FacePattern::Lower(side)),
        Looked::NotTested => None,
    }
}

/// What the rules say about what was seen.
pub fn judge(sightings: &[Sighting], forehead: Forehead) -> Vec<Flag> {
    let mut flags = Vec::new();
    let mut note = |rule: &'static Rule, words: String| {
        flags.push(rule.flag(Level::Note, Domain::Mouth, words));
    };
    let mut told: Vec<Sighting> = Vec::new();
    for sighting in sightings {
        if let Some(rule) = sighting.rule()
            && !told.contains(sighting)
        {
            told.push(*sighting);
            let (nerve, side) = sighting.weak();
            let words = format!(
                "{}: {} weak on the {}",
                sighting.words(),
                nerve.words(),
                side.words()
            );
            note(rule, words);
        }
    }
    for nerve in Nerve::ALL {
        if weak_by(nerve, sightings) == Some(Weak::Conflict) {
            let mut words: Vec<String> = Vec::new();
            for sighting in sightings.iter().filter(|s| s.weak().0 == nerve) {
                let more = sighting.words();
                if !words.contains(&more) {
                    words.push(more);
                }
            }
            let words = format!(
                "{}: findings point to both sides ({}); which counts is the clinician's to say",
                nerve.words(),
                words.join("; ")
            );
            note(&rules::WEAK_SIDE_CONFLICT, words);
        }
    }
    match face_pattern(sightings, forehead) {
        Some(FacePattern::Upper(side)) => note(
            &rules::FACE_UPPER_NEURON,
            format!(
                "lower face weak on the {}, forehead moves there: upper motor neuron pattern",
                side.words()
            ),
        ),
        Some(FacePattern::Lower(side)) => note(
            &rules::FACE_LOWER_NEURON,
            format!(
                "lower face and forehead weak on the {}: lower motor neuron pattern",
                side.words()
            ),
        ),
        None => {}
    }
    flags
}
