//! The examination in words for the ward: exceptions with side and severity, what was not tested
//! and why, and one line for everything else. No nerves.

use crate::clinical::findings::oral::Oral;
use crate::clinical::findings::oral::answer::{Answer, Reason, Seen, Sides};
use crate::clinical::findings::oral::findings;
use crate::clinical::knowledge::oral::item::Item;
use crate::clinical::knowledge::oral::region::Region;
use crate::measure::decimals::short;
use crate::wording::found;
use crate::wording::oral_answers;
use crate::wording::oral_items;
use crate::wording::words::small;

/// The items of some regions.
fn items(regions: &[Region]) -> impl Iterator<Item = &'static Item> {
    regions.iter().flat_map(|region| region.items())
}

/// Something found, in words.
pub struct Exception {
    /// The item and what was found of it.
    pub words: String,
    /// Whether it names a side.
    pub sided: bool,
}

/// What was found, an item each, in the order of the regions: "wide smile: mouth pulled to the
/// left; ...". Measured values are flags of their own and are left out where `flagged` says so.
fn exceptions(
    oral: &Oral,
    regions: &[Region],
    flagged: impl Fn(&'static Item) -> bool,
) -> Vec<Exception> {
    let all = findings::found(oral);
    let mut parts = Vec::new();
    for item in items(regions) {
        let of_item = || all.iter().filter(|found| found.item().id == item.id);
        let words: Vec<String> = of_item().map(found::words).collect();
        if !words.is_empty() {
            parts.push(Exception {
                words: format!("{}: {}", small(oral_items::name(item)), words.join(" and ")),
                sided: of_item().any(|f| f.side().and_then(Sides::one).is_some()),
            });
            continue;
        }
        let mut measured = |words: String, sided| parts.push(Exception { words, sided });
        match oral.answer(item) {
            Answer::Touched { left, right } if !oral.answer(item).is_as_expected() => {
                let sides: Vec<String> = [(left, "left"), (right, "right")]
                    .into_iter()
                    .map(|(touches, side)| {
                        let words = found::touches(touches);
                        format!("{side} {}", words.as_deref().unwrap_or("not tested"))
                    })
                    .collect();
                measured(
                    format!("{}: {}", small(oral_items::name(item)), sides.join(", ")),
                    true,
                );
            }
            Answer::Opening(mm, _) if !flagged(item) => {
                measured(
                    format!("mouth opens {} millimetres", short(mm.get())),
                    false,
                );
            }
            Answer::Flow(flow) if !flagged(item) => measured(
                format!("peak cough flow {} litres a minute", short(flow.get())),
                false,
            ),
            _ => {}
        }
    }
    parts
}

/// What was seen of an item, without its name: "mouth pulled to the left", "as expected".
pub fn said(item: &'static Item, seen: &Seen) -> String {
    let mut oral = Oral::default();
    oral.take(vec![(item.id.to_owned(), seen.clone())]);
    let found = findings::found(&oral);
    let words: Vec<String> = found.iter().map(found::words).collect();
    match oral.answer(item) {
        _ if !words.is_empty() => words.join(" and "),
        Answer::NotTested(why) => format!("not tested ({})", oral_answers::reason(why)),
        Answer::Opening(mm, _) => format!("{} millimetres", short(mm.get())),
        Answer::Flow(flow) => format!("{} litres a minute", short(flow.get())),
        answer if answer.is_as_expected() => "as expected".to_owned(),
        _ => "not tested".to_owned(),
    }
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
                names.push(oral_items::region_within(*region));
            } else {
                names.extend(region.items().filter(is).map(oral_items::name_within));
            }
        }
        if !names.is_empty() {
            let why = reason.map_or("no reason given", oral_answers::reason);
            parts.push(format!("{} ({why})", names.join(", ")));
        }
    }
    parts
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

/// That sides are the patient's, where a text names one.
pub const WHOSE: &str = "Sides are the patient's.";

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
            let why = reason.map_or("no reason given", oral_answers::reason);
            format!("{} items ({why})", count(reason))
        })
        .collect()
}

/// What is told of some regions.
pub struct Examined {
    /// What was found.
    pub exceptions: Vec<Exception>,
    /// What was not tested, by reason: by name, and counted where there is no room for names.
    pub not_tested: Vec<(String, String)>,
    /// What is said of everything else.
    pub rest: Option<&'static str>,
}

/// What is told of some regions; none where nothing was looked at at all.
pub fn examined(
    oral: &Oral,
    regions: &[Region],
    flagged: impl Fn(&'static Item) -> bool,
) -> Option<Examined> {
    let named = not_tested(oral, regions).into_iter();
    oral.is_begun().then(|| Examined {
        exceptions: exceptions(oral, regions, flagged),
        not_tested: named.zip(not_tested_counts(oral, regions)).collect(),
        rest: match as_expected(oral, regions) {
            (0, _) => None,
            (_, true) => Some("All that was looked at: as expected."),
            (_, false) => Some("Everything else looked at: as expected."),
        },
    })
}

/// Where nothing was looked at.
pub const NOT_LOOKED_AT: &str = "not looked at.";

impl Examined {
    /// All of it in a line.
    pub fn line(&self) -> String {
        let found: Vec<&str> = self.exceptions.iter().map(|e| e.words.as_str()).collect();
        let open: Vec<&str> = self
            .not_tested
            .iter()
            .map(|(named, _)| named.as_str())
            .collect();
        let found = (!found.is_empty()).then(|| format!("{}.", found.join("; ")));
        let open = (!open.is_empty()).then(|| format!("Not tested: {}.", open.join("; ")));
        let rest = self.rest.map(str::to_owned);
        let sentences: Vec<String> = [found, open, rest].into_iter().flatten().collect();
        sentences.join(" ")
    }

    /// Whether it names a side.
    pub fn is_sided(&self) -> bool {
        self.exceptions.iter().any(|e| e.sided)
    }
}

/// All that is told of some regions, in a line.
pub fn line(oral: &Oral, regions: &[Region]) -> String {
    examined(oral, regions, |_| false).map_or_else(|| NOT_LOOKED_AT.to_owned(), |told| told.line())
}
