//! What the findings point to: nerve by nerve, the weak side where a rule names it. What points
//! both ways is shown, not resolved. No place of a lesion, no diagnosis.

use crate::clinical::findings::fact::OralFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::oral::findings::{forehead, found, says_on, sighting, sightings};
use crate::clinical::findings::oral::{Answer, Forehead, Found, Oral, Sighting, Touches};
use crate::clinical::knowledge::oral;
use crate::clinical::knowledge::oral::item::{Cranial, Item, Points};
use crate::clinical::knowledge::oral::nerve::Side;
use crate::clinical::knowledge::rule::Rule;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::weak_side::{Weak, judge, weak_by};

/// What belongs to one nerve.
#[derive(Clone, Debug)]
pub struct Group {
    /// The nerve.
    pub nerve: Cranial,
    /// What was found; a deviation stands among the flags, with its rule.
    pub lines: Vec<Line>,
    /// What the rules say about it.
    pub flags: Vec<Flag>,
}

/// One thing that belongs to a nerve.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    /// What was found, and the weak side that it names, if it names one.
    Found(Found, Option<Side>),
    /// Touches of a side that were not all felt alike, or that differ from the other side's.
    Touched(&'static Item, Side, Touches),
}

/// The rules that a group's flags are made by.
const POINTING: [&str; 9] = [
    rules::WEAK_SIDE_TONGUE.id,
    rules::WEAK_SIDE_UVULA.id,
    rules::WEAK_SIDE_JAW.id,
    rules::WEAK_SIDE_SMILE.id,
    rules::WEAK_SIDE_CONFLICT.id,
    rules::ORAL_STRONG.id,
    rules::FACE_UPPER_NEURON.id,
    rules::FACE_LOWER_NEURON.id,
    rules::ORAL_TONGUE_LOWER_NEURON.id,
];

/// Whether a flag belongs to a nerve's group.
pub fn is_pointing(flag: &Flag) -> bool {
    POINTING.contains(&flag.rule().id)
}

/// Whether a flag shows findings that disagree.
pub fn is_conflict(flag: &Flag) -> bool {
    [rules::WEAK_SIDE_CONFLICT.id, rules::ORAL_STRONG.id].contains(&flag.rule().id)
}

/// The groups in which something was found, in the order of the nerves.
pub fn groups(oral: &Oral) -> Vec<Group> {
    Cranial::ALL
        .into_iter()
        .map(|nerve| group(oral, nerve))
        .filter(|group| !(group.lines.is_empty() && group.flags.is_empty()))
        .collect()
}

fn group(oral: &Oral, nerve: Cranial) -> Group {
    let seen = sightings(oral, nerve);
    let upper = if nerve == Cranial::Seventh && !upper_face_disagrees(oral) {
        forehead(oral)
    } else {
        Forehead::default()
    };
    let mut flags = judge(&seen, upper);
    flags.extend(strong(oral, nerve));
    match nerve {
        Cranial::Seventh => flags.extend(other_side_above(oral)),
        Cranial::Twelfth => flags.extend(lower_neuron_tongue(oral)),
        _ => {}
    }
    let mut lines = found_by(oral, nerve);
    lines.extend(touched_by(oral, nerve));
    Group {
        nerve,
        lines,
        flags,
    }
}

/// What was found, but for deviations.
fn found_by(oral: &Oral, nerve: Cranial) -> Vec<Line> {
    let mut lines = Vec::new();
    for one in found(oral) {
        if one.item().nerve != nerve {
            continue;
        }
        match sighting(&one) {
            // Its own rule says both, see the flags.
            Some(seen) if !matches!(seen, Sighting::FoundWeak(..)) => {}
            seen => lines.push(Line::Found(one, seen.map(|seen| seen.weak().1))),
        }
    }
    lines
}

/// Touches where not all were felt alike on both sides.
fn touched_by(oral: &Oral, nerve: Cranial) -> Vec<Line> {
    let mut lines = Vec::new();
    for item in oral::items().filter(|item| item.nerve == nerve) {
        let Answer::Touched { left, right } = oral.answer(item) else {
            continue;
        };
        if left.is_whole() && right.is_whole() {
            continue;
        }
        let sides = [(left, Side::Left), (right, Side::Right)];
        let touched = sides.into_iter().filter(|(touches, _)| touches.all() > 0);
        lines.extend(touched.map(|(touches, side)| Line::Touched(item, side, touches)));
    }
    lines
}

fn note(rule: &'static Rule, fact: OralFact) -> Flag {
    rule.flag(Level::Note, Domain::Mouth, fact)
}

/// The side on which the lower face is weak, where all findings agree.
fn weak_face(oral: &Oral) -> Option<Side> {
    let seventh = Cranial::Seventh.of_rules()?;
    match weak_by(seventh, &sightings(oral, Cranial::Seventh)) {
        Some(Weak::On(side)) => Some(side),
        _ => None,
    }
}

/// Whether forehead or eye are weak on the side on which the lower face is not, and only there.
fn upper_face_disagrees(oral: &Oral) -> bool {
    weak_face(oral).is_some_and(|side| {
        [Points::Forehead, Points::Eye]
            .into_iter()
            .any(|points| says_on(oral, points, side.other()) && !says_on(oral, points, side))
    })
}

fn other_side_above(oral: &Oral) -> Option<Flag> {
    let side = weak_face(oral).filter(|_| upper_face_disagrees(oral))?;
    Some(note(
        &rules::WEAK_SIDE_CONFLICT,
        OralFact::UpperFaceElsewhere(side),
    ))
}

/// A tongue thin or furrowed and twitching on the same side (PASS).
fn lower_neuron_tongue(oral: &Oral) -> Vec<Flag> {
    [Side::Left, Side::Right]
        .into_iter()
        .filter(|side| {
            says_on(oral, Points::Wasted, *side) && says_on(oral, Points::Twitching, *side)
        })
        .map(|side| {
            note(
                &rules::ORAL_TONGUE_LOWER_NEURON,
                OralFact::TongueWastedAndTwitching(side),
            )
        })
        .collect()
}

/// Strengths by nerve: the item against resistance that speaks of a side.
const STRENGTHS: [(Cranial, &[&str]); 3] = [
    (Cranial::Fifth, &["jaw.bite"]),
    (Cranial::Seventh, &["lips.cheeks", "lips.pull"]),
    (Cranial::Twelfth, &["tongue.push"]),
];

/// A weak side beside a strength that was tested and is as expected on that side.
fn strong(oral: &Oral, nerve: Cranial) -> Vec<Flag> {
    let mut flags = Vec::new();
    for side in [Side::Left, Side::Right] {
        let mut weak = found(oral);
        weak.retain(|one| {
            one.item().nerve == nerve && sighting(one).is_some_and(|seen| seen.weak().1 == side)
        });
        let strong: Vec<&'static Item> = STRENGTHS
            .iter()
            .filter(|(n, _)| *n == nerve)
            .flat_map(|(_, ids)| ids.iter())
            .filter_map(|id| oral::find(id))
            .filter(|item| match oral.answer(item) {
                Answer::AsExpected => true,
                Answer::Found(list) => list.iter().all(|f| is_on_other(f, tested_on(nerve, side))),
                _ => false,
            })
            .collect();
        if !weak.is_empty() && !strong.is_empty() {
            let fact = OralFact::Strong {
                nerve,
                side,
                weak,
                strong,
            };
            flags.push(note(&rules::ORAL_STRONG, fact));
        }
    }
    flags
}

/// Where the strength of a side shows. Each half of the tongue moves it to the other side (LEW,
/// JUN12): a weak left half pushes weakly into the right cheek.
pub fn tested_on(nerve: Cranial, side: Side) -> Side {
    match nerve {
        Cranial::Twelfth => side.other(),
        _ => side,
    }
}

/// Whether an exception lies on the other side only.
fn is_on_other(found: &Found, side: Side) -> bool {
    found.side().is_some_and(|s| !s.has(side))
}

/// Every flag of every group.
pub fn flags(oral: &Oral) -> Vec<Flag> {
    groups(oral).into_iter().flat_map(|g| g.flags).collect()
}
