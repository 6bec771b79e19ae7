//! The answers of an examination, as the journal folds to them.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::clinical::findings::oral::answer::{Answer, Seen};
use crate::clinical::knowledge::oral::item::Item;
use crate::clinical::knowledge::oral::region::Region;

/// How a region was asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Cue {
    /// Said.
    Spoken,
    /// Shown in writing or as a picture.
    Shown,
    /// Done before, to be copied.
    Copied,
}

impl Cue {
    /// All, in the order offered.
    pub const ALL: [Cue; 3] = [Cue::Spoken, Cue::Shown, Cue::Copied];
}

/// The answers so far. What is not there is not tested.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Oral {
    answers: BTreeMap<String, Seen>,
    cues: Vec<(Region, Cue)>,
    /// The items that each press settled, oldest first, as far as it still stands.
    presses: Vec<Vec<String>>,
    /// What stood before each touch that was counted, oldest first: an item and its touches.
    before: Vec<(String, Seen)>,
}

impl Oral {
    /// Takes the answers of one press.
    pub fn take(&mut self, press: Vec<(String, Seen)>) {
        let items: Vec<String> = press.iter().map(|(item, _)| item.clone()).collect();
        let settles = press
            .iter()
            .all(|(_, seen)| matches!(seen, Seen::AsExpected | Seen::NotTested(_)));
        self.forget_presses(&items);
        if settles && !items.is_empty() {
            self.presses.push(items);
        }
        for (item, seen) in &press {
            self.remember_touch(item, seen);
        }
        self.answers.extend(press);
    }

    /// Remembers what stood before a touch. The touches as they stood before it are its undoing.
    fn remember_touch(&mut self, item: &str, seen: &Seen) {
        let newest = self.before.iter().rposition(|(i, _)| i == item);
        match (self.answers.get(item), seen) {
            (Some(Seen::Touched { .. }), Seen::Touched { .. })
                if newest.is_some_and(|at| self.before[at].1 == *seen) =>
            {
                newest.map(|at| self.before.remove(at));
            }
            (Some(touched @ Seen::Touched { .. }), Seen::Touched { .. }) => {
                self.before.push((item.to_owned(), touched.clone()));
            }
            _ => self.before.retain(|(i, _)| i != item),
        }
    }

    /// The touches as they stood before the newest one; none before the first.
    pub fn before_touch(&self, item: &Item) -> Option<&Seen> {
        let newest = self.before.iter().rev().find(|(i, _)| i == item.id);
        newest.map(|(_, seen)| seen)
    }

    /// Takes answers back: these items were not tested.
    pub fn take_back(&mut self, items: &[String]) {
        self.forget_presses(items);
        for item in items {
            self.answers.remove(item);
            self.before.retain(|(i, _)| i != item);
        }
    }

    /// An item answered otherwise is no longer what an earlier press settled.
    fn forget_presses(&mut self, items: &[String]) {
        for press in &mut self.presses {
            press.retain(|item| !items.contains(item));
        }
        self.presses.retain(|press| !press.is_empty());
    }

    /// Takes how a region was asked for; none takes it back.
    pub fn take_cue(&mut self, region: Region, cue: Option<Cue>) {
        self.cues.retain(|(r, _)| *r != region);
        self.cues.extend(cue.map(|cue| (region, cue)));
    }

    /// How a region was asked for, if said.
    pub fn cue(&self, region: Region) -> Option<Cue> {
        self.cues
            .iter()
            .find(|(r, _)| *r == region)
            .map(|(_, cue)| *cue)
    }

    /// What is stored for an item.
    pub fn seen(&self, item: &Item) -> Option<&Seen> {
        self.answers.get(item.id)
    }

    /// What it comes to.
    pub fn answer(&self, item: &'static Item) -> Answer {
        self.seen(item)
            .map_or(Answer::Open, |seen| Answer::read(item, seen))
    }

    /// The items that the newest press settled and that still stand as it left them.
    pub fn newest_press(&self) -> &[String] {
        self.presses.last().map_or(&[], Vec::as_slice)
    }

    /// Whether every item of a region has an answer.
    pub fn is_done(&self, region: Region) -> bool {
        region.items().all(|item| self.answer(item) != Answer::Open)
    }

    /// Whether anything at all was answered.
    pub fn is_begun(&self) -> bool {
        crate::clinical::knowledge::oral::items().any(|item| self.answer(item) != Answer::Open)
    }
}
