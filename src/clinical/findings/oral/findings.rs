//! From the answers to what the judging functions take.

use crate::clinical::findings::looked::Looked;
use crate::clinical::findings::oral::Gag;
use crate::clinical::findings::oral::answer::{Answer, Found, Sides};
use crate::clinical::findings::oral::record::Oral;
use crate::clinical::findings::oral::sighting::{Forehead, Sighting};
use crate::clinical::knowledge::oral::item::{Cranial, Points};
use crate::clinical::knowledge::oral::nerve::Side;

/// Every exception found, in the order looked at.
pub fn found(oral: &Oral) -> Vec<Found> {
    crate::clinical::knowledge::oral::items()
        .flat_map(|item| oral.answer(item).found().to_vec())
        .collect()
}

/// What an exception says about the weak side; none without one side: what is weak on both sides,
/// or on a side nobody noted, points nowhere.
pub fn sighting(found: &Found) -> Option<Sighting> {
    let side = found.side().and_then(Sides::one)?;
    Some(match found.exception().points {
        Points::TongueTo => Sighting::TonguePointsTo(side),
        Points::UvulaTo => Sighting::UvulaPulledTo(side),
        Points::JawTo => Sighting::JawOpensTo(side),
        Points::SmileTo => Sighting::SmilePulledTo(side),
        Points::Weak | Points::Wasted => Sighting::FoundWeak(found.item().nerve.of_rules()?, side),
        Points::Nowhere
        | Points::Forehead
        | Points::Eye
        | Points::Range
        | Points::Twitching
        | Points::Push => return None,
    })
}

/// All of them by one nerve.
pub fn sightings(oral: &Oral, nerve: Cranial) -> Vec<Sighting> {
    found(oral)
        .iter()
        .filter(|found| found.item().nerve == nerve)
        .filter_map(sighting)
        .collect()
}

/// Exceptions that say a certain thing.
pub fn saying(oral: &Oral, points: Points) -> Vec<Found> {
    found(oral)
        .into_iter()
        .filter(|found| found.exception().points == points)
        .collect()
}

/// Whether the exceptions that say a thing take in a side for certain.
pub fn says_on(oral: &Oral, points: Points, side: Side) -> bool {
    saying(oral, points)
        .iter()
        .any(|found| found.side().is_some_and(|s| s.has(side)))
}

/// Whether the forehead moves, side by side. A weakness without a side leaves both open.
pub fn forehead(oral: &Oral) -> Forehead {
    let answer = crate::clinical::knowledge::oral::find("face.forehead")
        .map_or(Answer::Open, |item| oral.answer(item));
    let moves = |side: Side| match &answer {
        Answer::AsExpected => Looked::Present,
        Answer::Found(found) if found.iter().all(|f| f.side().is_some()) => {
            if says_on(oral, Points::Forehead, side) {
                Looked::Absent
            } else {
                Looked::Present
            }
        }
        _ => Looked::NotTested,
    };
    Forehead {
        left: moves(Side::Left),
        right: moves(Side::Right),
    }
}

/// Whether the tongue fell short somewhere.
pub fn tongue_short(oral: &Oral) -> Looked {
    let all: Vec<Looked> = crate::clinical::knowledge::oral::items()
        .filter(|item| item.exceptions.iter().any(|e| e.points == Points::Range))
        .map(|item| match oral.answer(item) {
            Answer::Found(found) if found.iter().any(|f| f.exception().points == Points::Range) => {
                Looked::Present
            }
            Answer::Found(_) | Answer::AsExpected => Looked::Absent,
            _ => Looked::NotTested,
        })
        .collect();
    Looked::any(&all)
}

/// What became of the gag.
pub fn gag(oral: &Oral) -> Gag {
    match crate::clinical::knowledge::oral::find("gag")
        .map_or(Answer::Open, |item| oral.answer(item))
    {
        Answer::AsExpected => Gag::Present,
        Answer::Found(found) if found.iter().any(|f| f.exception().id == "absent") => Gag::Absent,
        Answer::Found(_) => Gag::Weak,
        _ => Gag::NotTested,
    }
}

/// What was found that a new weakness could look like: weak, drooping, pulled to one side, slurred.
pub fn weakness(oral: &Oral) -> Vec<Found> {
    let mut all = found(oral);
    all.retain(|found| {
        found.item().id == "speech"
            || !matches!(
                found.exception().points,
                Points::Nowhere | Points::Twitching | Points::Wasted
            )
    });
    all
}
