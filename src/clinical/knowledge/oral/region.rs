//! The regions, from the face to the throat: one page each.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::oral::item::{By, Item};
use crate::clinical::knowledge::oral::{
    face, feeling, gag, jaw, lips, mouth, palate, tongue, voice,
};

/// A region.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Region {
    /// Face and neck.
    Face,
    /// Lips and cheeks.
    Lips,
    /// Jaw.
    Jaw,
    /// Teeth, gums, lining, hard palate.
    Mouth,
    /// Tongue.
    Tongue,
    /// Soft palate.
    Palate,
    /// Touch.
    Feeling,
    /// Voice, breath, cough, larynx.
    Voice,
    /// The gag, and touch on the palate: last, since it must not come before a swallow trial.
    Gag,
}

impl Region {
    /// All, in the order looked at.
    pub const ALL: [Region; 9] = [
        Region::Face,
        Region::Lips,
        Region::Jaw,
        Region::Mouth,
        Region::Tongue,
        Region::Palate,
        Region::Feeling,
        Region::Voice,
        Region::Gag,
    ];

    /// Its items, in order.
    pub fn items(self) -> impl Iterator<Item = &'static Item> {
        match self {
            Region::Face => face::ITEMS,
            Region::Lips => lips::ITEMS,
            Region::Jaw => jaw::ITEMS,
            Region::Mouth => mouth::ITEMS,
            Region::Tongue => tongue::ITEMS,
            Region::Palate => palate::ITEMS,
            Region::Feeling => feeling::ITEMS,
            Region::Voice => voice::ITEMS,
            Region::Gag => gag::ITEMS,
        }
        .iter()
    }

    /// Its items of one kind.
    pub fn items_by(self, by: By) -> impl Iterator<Item = &'static Item> {
        self.items().filter(move |item| item.by == by)
    }

    /// The region of an item.
    pub fn of(item: &Item) -> Region {
        Region::ALL
            .into_iter()
            .find(|region| region.items().any(|i| i.id == item.id))
            .unwrap_or(Region::Face)
    }
}

/// How much of the examination a screen has, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Examination {
    /// None.
    None,
    /// All of it, before the tasks. For screens without a swallow trial.
    Whole,
    /// All but the gag before the tasks, and the gag after them: never before a swallow trial.
    GagLast,
}

impl Examination {
    /// The regions before the tasks.
    pub fn before(self) -> &'static [Region] {
        const ALL: &[Region] = &Region::ALL;
        match (self, ALL) {
            (Examination::None, _) => &[],
            (Examination::GagLast, [most @ .., _]) => most,
            (_, all) => all,
        }
    }

    /// The regions after them.
    pub fn after(self) -> &'static [Region] {
        match self {
            Examination::GagLast => &[Region::Gag],
            _ => &[],
        }
    }

    /// All its regions, in order.
    pub fn regions(self) -> impl Iterator<Item = Region> {
        self.before().iter().chain(self.after()).copied()
    }

    /// The region after one, if there is one on the same side of the tasks.
    pub fn next(self, region: Region) -> Option<Region> {
        [self.before(), self.after()].into_iter().find_map(|part| {
            let at = part.iter().position(|r| *r == region)?;
            part.get(at + 1).copied()
        })
    }

    /// Whether there is one at all.
    pub fn is_some(self) -> bool {
        self != Examination::None
    }
}
