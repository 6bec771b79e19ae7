//! The examination in words for the ward: exceptions with side and severity, what was not tested
//! and why, and one line for everything else. No nerves.

use crate::clinical::findings::oral::Oral;
use crate::clinical::findings::oral::answer::{Answer, Reason};
use crate::clinical::findings::oral::findings::found;
use crate::clinical::knowledge::oral::item::Item;
use crate::clinical::knowledge::oral::region::Region;
use crate::measure::decimals::short;
use crate::wording::words::small;

/// The items of some regions.
fn items(regions: &[Region]) -> impl Iterator<Item = &'static Item> {
    regions.iter().flat_map(|region| region.items())
}

/// What was found, an item each, in the order of the regions: "wide smile: mouth pulled to the
/// left; ...". Measured values are flags of their own and are left out where `flagged` says so.
fn exceptions(
    oral: &Oral,
    regions: &[Region],
    flagged: impl Fn(&'static Item) -> bool,
) -> Vec<String> {
    let found = found(oral);
    let mut parts = Vec::new();
    for item in items(regions) {
        let words: Vec<String> = found
            .iter()
            .filter(|(i, _)| i.id == item.id)
            .map(|(_, found)| found.words())
            .collect();
        if !words.is_empty() {
            parts.push(format!("{}: {}", small(item.name), words.join(" and ")));
            continue;
        }
        match oral.answer(item) {
            Answer::Touched { left, right } if !oral.answer(item).is_as_expected() => {
                let sides: Vec<String> = [(left, "left"), (right, "right")]
                    .into_iter()
                    .map(|(touches, side)| {
                        let words = touches.words();
                        format!("{side} {}", words.as_deref().unwrap_or("not tested"))
                    })
                    .collect();
                parts.push(format!("{}: {}", small(item.name), sides.join(", ")));
            }
            Answer::Opening(mm, _) if !flagged(item) => {
                parts.push(format!("mouth opens {} millimetres", short(mm.get())));
            }
            Answer::Flow(flow) if !flagged(item) => parts.push(format!(
                "peak cough flow {} litres a minute",
                short(flow.get())
            )),
            _ => {}
        }
    }
    parts
}

/// What was not tested, by reason: "gag (no time)"; what has no reason comes last. A region of
/// which nothing was done stands by its own name.
pub fn not_tested(oral: &Oral, regions: &[Region]) -> Vec<String> {
    let mut parts = Vec::new();
    let reasons = Reason::ALL.into_iter().map(Some).chain([None]);
    for reason in reasons {
        let is = |item: &&'static Item| match (oral.answer(item), reason) {
            (Answer::NotTested(why), Some(reason)) => why == reason,
            (Answer::Open, None) => true,
            _ => false,
        };
        let mut names = Vec::new();
        for region in regions {
            if region.items().all(|item| is(&item)) {
                names.push(plain(region.title()));
            } else {
                names.extend(region.items().filter(is).map(|item| plain(item.name)));
            }
        }
        if !names.is_empty() {
            let why = reason.map_or("no reason given", Reason::words);
            parts.push(format!("{} ({why})", names.join(", ")));
        }
    }
    parts
}

/// A name within a sentence, without "(optional)".
fn plain(name: &str) -> String {
    small(name.split(" (").next().unwrap_or(name))
}

/// How many items are as expected, and whether that is all that was done.
pub fn as_expected(oral: &Oral, regions: &[Region]) -> (usize, bool) {
    let done: Vec<bool> = items(regions)
        .map(|item| oral.answer(item))
        .filter(Answer::is_done)
        .map(|answer| answer.is_as_expected())
        .collect();
    let expected = done.iter().filter(|e| **e).count();
    (expected, expected == done.len())
}

/// What the line ends with, where it names a side.
pub const WHOSE: &str = " Sides are the patient's.";

/// What the line begins with.
pub const BEGINS: &str = "Face, mouth and throat: ";

/// How many items were not tested, by reason: "4 items (no time)".
fn not_tested_counts(oral: &Oral, regions: &[Region]) -> Vec<String> {
    let reasons = Reason::ALL.into_iter().map(Some).chain([None]);
    let count = |reason: Option<Reason>| {
        items(regions)
            .filter(|item| match (oral.answer(item), reason) {
                (Answer::NotTested(why), Some(reason)) => why == reason,
                (Answer::Open, None) => true,
                _ => false,
            })
            .count()
    };
    reasons
        .filter(|reason| count(*reason) > 0)
        .map(|reason| {
            let why = reason.map_or("no reason given", Reason::words);
            format!("{} items ({why})", count(reason))
        })
        .collect()
}

/// So many parts and more: room enough to name everything.
pub const ROOM: usize = 12;

/// The whole in a line, `most` of the exceptions listed. Where room is short, what was not tested
/// is counted before an exception is left out.
pub fn line(
    oral: &Oral,
    regions: &[Region],
    most: usize,
    flagged: impl Fn(&'static Item) -> bool,
) -> String {
    if !oral.is_begun() {
        return format!("{BEGINS}not looked at.");
    }
    let mut sentences = Vec::new();
    let mut list = |before: &str, mut parts: Vec<String>| {
        if parts.is_empty() {
            return;
        }
        let more = parts.len().saturating_sub(most.max(1));
        parts.truncate(most.max(1));
        if more > 0 {
            parts.push(format!("{more} more in the record"));
        }
        sentences.push(format!("{before}{}.", parts.join("; ")));
    };
    list("", exceptions(oral, regions, flagged));
    let untested = if most < ROOM {
        not_tested_counts(oral, regions)
    } else {
        not_tested(oral, regions)
    };
    list("Not tested: ", untested);
    match as_expected(oral, regions) {
        (0, _) => {}
        (_, true) => sentences.push("All that was looked at: as expected.".to_owned()),
        (_, false) => sentences.push("Everything else looked at: as expected.".to_owned()),
    }
    let mut told = sentences.join(" ");
    if told.contains(" left") || told.contains(" right") {
        told.push_str(WHOSE);
    }
    format!("{BEGINS}{told}")
}
