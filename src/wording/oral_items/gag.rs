//! The gag, and touch on palate and back of the tongue that can bring it on, in words.

use super::item_words::{BLANK, ItemWords, is};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "touch.palate",
        name: "Touch on the soft palate",
        ask: "Open wide. Tell me when you feel this, and on which side.",
        look: "Once, lightly, left and right.",
        exceptions: &[is("less", "less felt"), is("none", "not felt")],
        ..BLANK
    },
    ItemWords {
        id: "touch.tongue-back",
        name: "Touch on the back of the tongue",
        ask: "Open wide. Which side do I touch?",
        look: "Back third of the tongue, lightly, only where it matters.",
        ..BLANK
    },
    ItemWords {
        id: "gag",
        name: "Gag",
        ask: "Open wide. I touch the back of your throat once. It is unpleasant, and short.",
        look: "Palate and throat wall tighten on both sides. It is missing in 37 % of healthy people in one study (DAV95) and in 13 % of adults who swallow well in another (LED96): it decides nothing, alone or together with other findings.",
        care: "Single-use depressor, one touch, stop at the first wish.",
        exceptions: &[
            is("weak", "weak"),
            is("one-side", "on one side only"),
            is("absent", "none"),
        ],
        ..BLANK
    },
];
