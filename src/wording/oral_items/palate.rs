//! Soft palate, in words.

use super::item_words::{BLANK, ItemWords, is, to};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "palate.rest",
        name: "Soft palate at rest",
        ask: "Open wide and breathe quietly.",
        look: "Both arches equally high.",
        exceptions: &[is("low", "hangs lower"), is("gap", "gap or scar")],
        ..BLANK
    },
    ItemWords {
        id: "palate.ah",
        name: "Soft palate on \"ah\"",
        ask: "Say a short \"ah\", five times.",
        look: "Lifts each time, in the middle, and does not tire.",
        exceptions: &[
            to("pulled", "uvula pulled to one side", "uvula pulled to the"),
            is("less", "lifts less"),
            is("none", "hardly lifts"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "throat.wall",
        name: "Back of the throat",
        ask: "Open wide once more and say \"ah\".",
        look: "Clear, nothing pooled.",
        care: "Pooled saliva or food: suction or mouth care first.",
        exceptions: &[
            is("pooled", "saliva pools"),
            is("food", "food remains"),
            is("red", "red or swollen"),
        ],
        ..BLANK
    },
];
