//! From what deviates to the weak side, nerve by nerve.
//!
//! The side is named, the place of the lesion is left to the clinician. Findings that point to
//! different sides stand side by side. Notes only.

use crate::clinical::findings::fact::OralFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::oral::{FacePattern, Forehead, Sighting};
use crate::clinical::knowledge::oral::nerve::{Nerve, Side};
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;

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

/// The rule of what deviates; none where nothing was concluded.
fn rule(sighting: Sighting) -> Option<&'static Rule> {
    match sighting {
        Sighting::TonguePointsTo(_) => Some(&rules::WEAK_SIDE_TONGUE),
        Sighting::UvulaPulledTo(_) => Some(&rules::WEAK_SIDE_UVULA),
        Sighting::JawOpensTo(_) => Some(&rules::WEAK_SIDE_JAW),
        Sighting::SmilePulledTo(_) => Some(&rules::WEAK_SIDE_SMILE),
        Sighting::FoundWeak(..) => None,
    }
}

/// Each once, in the order seen.
fn once(sightings: impl Iterator<Item = Sighting>) -> Vec<Sighting> {
    let mut once = Vec::new();
    for sighting in sightings {
        if !once.contains(&sighting) {
            once.push(sighting);
        }
    }
    once
}

/// What the rules say about what was seen.
pub fn judge(sightings: &[Sighting], forehead: Forehead) -> Vec<Flag> {
    let note = |rule: &'static Rule, fact: OralFact| rule.flag(Level::Note, Domain::Mouth, fact);
    let mut flags = Vec::new();
    for sighting in once(sightings.iter().copied()) {
        flags.extend(rule(sighting).map(|rule| note(rule, OralFact::Deviates(sighting))));
    }
    for nerve in Nerve::ALL {
        if weak_by(nerve, sightings) == Some(Weak::Conflict) {
            let of_nerve = sightings.iter().copied().filter(|s| s.weak().0 == nerve);
            let seen = once(of_nerve);
            let fact = OralFact::BothSides { nerve, seen };
            flags.push(note(&rules::WEAK_SIDE_CONFLICT, fact));
        }
    }
    flags.extend(face_pattern(sightings, forehead).map(|pattern| {
        let rule = match pattern {
            FacePattern::Upper(_) => &rules::FACE_UPPER_NEURON,
            FacePattern::Lower(_) => &rules::FACE_LOWER_NEURON,
        };
        note(rule, OralFact::Face(pattern))
    }));
    flags
}
