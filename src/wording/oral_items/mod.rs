//! What is looked at in face, mouth and throat, in words: what to ask, what to look for, what can be
//! found. A file a region, keyed by the ids of [`crate::clinical::knowledge::oral`].

use crate::clinical::knowledge::oral::nerve::{Nerve, Side};
use crate::clinical::knowledge::oral::{Cranial, Exception, Item, Region};

mod face;
mod feeling;
mod gag;
mod jaw;
mod lips;
mod mouth;
mod palate;
mod tongue;
mod voice;

/// The words of an item.
struct ItemWords {
    /// The item's id.
    id: &'static str,
    /// Its name, that can stand alone.
    name: &'static str,
    /// What to say, word for word; empty where nothing is said.
    ask: &'static str,
    /// What to look for, with figures where a figure helps.
    look: &'static str,
    /// What to mind; empty where there is nothing.
    care: &'static str,
    /// Its exceptions.
    exceptions: &'static [ExceptionWords],
}

/// The words of an exception.
struct ExceptionWords {
    /// The exception's id within its item.
    id: &'static str,
    /// The words on the button, and in the handover where it has no direction.
    words: &'static str,
    /// The words before "left" or "right", for a direction; else empty.
    towards: &'static str,
}

/// Where an item's words may be left out.
const BLANK: ItemWords = ItemWords {
    id: "",
    name: "",
    ask: "",
    look: "",
    care: "",
    exceptions: &[],
};

/// An exception without a direction.
const fn is(id: &'static str, words: &'static str) -> ExceptionWords {
    to(id, words, "")
}

/// An exception with a direction.
const fn to(id: &'static str, words: &'static str, towards: &'static str) -> ExceptionWords {
    ExceptionWords { id, words, towards }
}

static REGIONS: [&[ItemWords]; 9] = [
    face::WORDS,
    lips::WORDS,
    jaw::WORDS,
    mouth::WORDS,
    tongue::WORDS,
    palate::WORDS,
    feeling::WORDS,
    voice::WORDS,
    gag::WORDS,
];

fn of(item: &Item) -> &'static ItemWords {
    let mut all = REGIONS.iter().copied().flatten();
    all.find(|words| words.id == item.id).unwrap_or(&BLANK)
}

/// Its name, that can stand alone.
pub fn name(item: &Item) -> &'static str {
    of(item).name
}

/// What to say, word for word.
pub fn ask(item: &Item) -> &'static str {
    of(item).ask
}

/// What to look for, with figures where a figure helps.
pub fn look(item: &Item) -> &'static str {
    of(item).look
}

/// What to mind; empty where there is nothing.
pub fn care(item: &Item) -> &'static str {
    of(item).care
}

fn of_exception(item: &Item, exception: &Exception) -> Option<&'static ExceptionWords> {
    let mut all = of(item).exceptions.iter();
    all.find(|words| words.id == exception.id)
}

/// An exception: on the button, and in the handover where it has no direction.
pub fn exception(item: &Item, exception: &Exception) -> &'static str {
    of_exception(item, exception).map_or(exception.id, |words| words.words)
}

/// What stands before "left" or "right", for a direction; else empty.
pub fn towards(item: &Item, exception: &Exception) -> &'static str {
    of_exception(item, exception).map_or("", |words| words.towards)
}

/// A region's heading.
pub const fn region_title(region: Region) -> &'static str {
    match region {
        Region::Face => "Face and neck",
        Region::Lips => "Lips and cheeks",
        Region::Jaw => "Jaw",
        Region::Mouth => "Teeth and mouth",
        Region::Tongue => "Tongue",
        Region::Palate => "Soft palate",
        Region::Feeling => "Feeling",
        Region::Voice => "Voice and throat",
        Region::Gag => "Gag (optional)",
    }
}

/// What to mind before a region's first item.
pub const fn region_care(region: Region) -> &'static str {
    match region {
        Region::Face => "Neck limit ordered? Then look only, do not move it.",
        Region::Palate => {
            "Fresh single-use depressor, no further back than the middle of the tongue: \
             further back it can bring on the gag."
        }
        Region::Lips => "Fresh single-use depressor. Loose teeth: do not pull between them.",
        Region::Jaw => "Firm and brief, never against pain. Loose teeth: no hard bite.",
        Region::Mouth => {
            "Fresh single-use depressor. Dentures in first, then out. Take out what is left of food."
        }
        Region::Tongue => "Finger outside on the cheek, never between the teeth.",
        Region::Feeling => "Soft cotton tip, one for each person, lightly. Eyes closed.",
        Region::Voice => "Stand aside for the cough; cover mouth and eyes where it may splash.",
        Region::Gag => {
            "Leave it out if the person refuses, ate a short while ago, feels sick, has a sore \
             mouth, loose teeth, a risk of bleeding, or if pressure in the head may be raised."
        }
    }
}

/// A nerve, for a heading.
pub const fn nerve_heading(nerve: Cranial) -> &'static str {
    match nerve {
        Cranial::Fifth => "Cranial nerve V: jaw, touch on face and mouth",
        Cranial::Seventh => "Cranial nerve VII: face",
        Cranial::Ninth => "Cranial nerve IX: touch in the throat",
        Cranial::Tenth => "Cranial nerve X, with IX: palate, voice",
        Cranial::Eleventh => "Cranial nerve XI: neck and shoulders",
        Cranial::Twelfth => "Cranial nerve XII: tongue",
        Cranial::Several => "Several nerves together",
        Cranial::None => "",
    }
}

/// A nerve's number, for a line under an item; empty where there is none.
pub const fn nerve_number(nerve: Cranial) -> &'static str {
    match nerve {
        Cranial::Fifth => "V",
        Cranial::Seventh => "VII",
        Cranial::Ninth => "IX",
        Cranial::Tenth => "X",
        Cranial::Eleventh => "XI",
        Cranial::Twelfth => "XII",
        Cranial::Several => "V, VII, IX, X, XII",
        Cranial::None => "",
    }
}

/// A nerve, within a sentence.
pub const fn nerve(nerve: Nerve) -> &'static str {
    match nerve {
        Nerve::Fifth => "jaw (cranial nerve V)",
        Nerve::Seventh => "face (cranial nerve VII)",
        Nerve::Tenth => "palate (cranial nerve X)",
        Nerve::Twelfth => "tongue (cranial nerve XII)",
    }
}

/// A side.
pub const fn side(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clinical::knowledge::oral::{Sided, items};

    #[test]
    fn every_id_has_words_and_no_words_lack_an_id() {
        for item in items() {
            for words in [name(item), ask(item), look(item)] {
                assert!(!words.is_empty(), "{}", item.id);
            }
            let words = of(item).exceptions.iter().map(|words| words.id);
            let ids = item.exceptions.iter().map(|exception| exception.id);
            assert!(words.eq(ids), "{}", item.id);
        }
        assert_eq!(REGIONS.iter().copied().flatten().count(), items().count());
    }

    #[test]
    fn a_direction_has_words_before_its_side_and_nothing_else_has() {
        for item in items() {
            for exception in item.exceptions {
                let before = towards(item, exception);
                let is_direction = exception.side == Sided::To;
                assert_eq!(
                    is_direction,
                    !before.is_empty(),
                    "{} {}",
                    item.id,
                    exception.id
                );
            }
        }
    }
}
