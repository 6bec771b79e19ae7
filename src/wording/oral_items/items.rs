//! The words of all items, by their ids.

use super::item_words::{BLANK, ExceptionWords, ItemWords};
use super::{face, feeling, gag, jaw, lips, mouth, palate, tongue, voice};
use crate::clinical::knowledge::oral::{Exception, Item};
use crate::wording::words::small;

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

/// Its name within a sentence that says what was not done: there nobody needs to know that it is
/// optional.
pub fn name_within(item: &Item) -> String {
    let words = of(item);
    small(if words.within.is_empty() {
        words.name
    } else {
        words.within
    })
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
