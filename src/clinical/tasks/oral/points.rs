//! What the findings point to: nerve by nerve, the weak side where a rule names it. What points
//! both ways is shown, not resolved. No place of a lesion, no diagnosis.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::oral::Oral;
use crate::clinical::findings::oral::answer::{Answer, Found};
use crate::clinical::findings::oral::findings::{forehead, found, says_on, sighting, sightings};
use crate::clinical::knowledge::oral::item::{Cranial, Points};
use crate::clinical::knowledge::oral::nerve::Side;
use crate::clinical::knowledge::rules;
use crate::clinical::tasks::oral::weak_side::{Forehead, Sighting, Weak, judge, weak_by};
use crate::wording::words::small;

/// What belongs to one nerve.
#[derive(Clone, Debug)]
pub struct Group {
    /// The nerve.
    pub nerve: Cranial,
    /// What was found, each with the weak side that it names, if it names one; a deviation stands
    /// among the flags, with its rule.
    pub lines: Vec<String>,
    /// What the rules say about it.
    pub flags: Vec<Flag>,
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

/// What is meant by it, and what is not.
pub const MEANT: &str = "The weak side, and the nerve a finding belongs to. No place of a lesion \
    and no diagnosis is meant. Findings that disagree stand side by side.";

/// The groups in which something was found, in the order of the nerves.
pub fn groups(oral: &Oral) -> Vec<Group> {
    Cranial::ALL
        .into_iter()
        .map(|nerve| group(oral, nerve))
        .filter(|group| !(group.lines.is_empty() && group.flags.is_empty()))
        .collect()
}

fn group(oral: &Oral, nerve: Cranial) -> Group {
    let mut lines = Vec::new();
    for (item, one) in found(oral).iter().filter(|(item, _)| item.nerve == nerve) {
        let line = format!("{}: {}", item.name, one.words());
        match sighting(item, one) {
            // Its own rule says both, see the flags.
            Some(seen) if !matches!(seen, Sighting::FoundWeak(..)) => {}
            Some(seen) => lines.push(format!("{line}. Weak side: {}", seen.weak().1.words())),
            None => lines.push(line),
        }
    }
    for item in crate::clinical::knowledge::oral::items().filter(|item| item.nerve == nerve) {
        if let Answer::Touched { left, right } = oral.answer(item)
            && !(left.is_whole() && right.is_whole())
        {
            for (touches, side) in [(left, "left"), (right, "right")] {
                if let Some(words) = touches.words() {
                    lines.push(format!("{}, {side}: {words}", item.name));
                }
            }
        }
    }
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
    Group {
        nerve,
        lines,
        flags,
    }
}

fn note(rule: &'static crate::clinical::knowledge::rule::Rule, words: String) -> Flag {
    rule.flag(Level::Note, Domain::Mouth, words)
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
        format!(
            "lower face weak on the {}, forehead or eye on the {}: which counts is the \
             clinician's to say",
            side.words(),
            side.other().words()
        ),
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
                format!(
                    "tongue thin or furrowed and twitching on the {}: lower motor neuron pattern",
                    side.words()
                ),
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
    let signs: Vec<(String, Side)> = found(oral)
        .iter()
        .filter(|(item, _)| item.nerve == nerve)
        .filter_map(|(item, one)| {
            let side = sighting(item, one)?.weak().1;
            Some((format!("{}: {}", item.name, one.words()), side))
        })
        .collect();
    for side in [Side::Left, Side::Right] {
        let here: Vec<&(String, Side)> = signs.iter().filter(|(_, s)| *s == side).collect();
        let strong: Vec<String> = STRENGTHS
            .iter()
            .filter(|(n, _)| *n == nerve)
            .flat_map(|(_, ids)| ids.iter())
            .filter_map(|id| crate::clinical::knowledge::oral::find(id))
            .filter(|item| match oral.answer(item) {
                Answer::AsExpected => true,
                Answer::Found(list) => list.iter().all(|f| is_on_other(f, tested_on(nerve, side))),
                _ => false,
            })
            .map(|item| match nerve {
                Cranial::Twelfth => format!("tongue into the {} cheek", side.other().words()),
                _ => format!("{} on the {}", small(item.name), side.words()),
            })
            .collect();
        if !here.is_empty() && !strong.is_empty() {
            let here: Vec<String> = here.iter().map(|(words, _)| small(words)).collect();
            flags.push(note(
                &rules::ORAL_STRONG,
                format!(
                    "{}; but as expected: {}. Shown together, not resolved",
                    here.join("; "),
                    strong.join(", ")
                ),
            ));
        }
    }
    flags
}

/// Where the strength of a side shows. Each half of the tongue moves it to the other side (LEW,
/// JUN12): a weak left half pushes weakly into the right cheek.
fn tested_on(nerve: Cranial, side: Side) -> Side {
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
