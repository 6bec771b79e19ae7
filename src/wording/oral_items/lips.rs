//! Lips and cheeks, in words.

use super::item_words::{BLANK, ItemWords, is, to};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "lips.together",
        name: "Lips pressed together",
        ask: "Press your lips together.",
        look: "Shut along their whole length. Not shutting fully, by itself, changed nothing in one large study (LED13).",
        exceptions: &[is("gap", "not shut")],
        ..BLANK
    },
    ItemWords {
        id: "lips.smile",
        name: "Wide smile",
        ask: "Show me your teeth in a wide smile.",
        look: "Both corners go equally far.",
        exceptions: &[
            to("pulled", "mouth pulled to one side", "mouth pulled to the"),
            is("less", "moves less"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "lips.pucker",
        name: "Lips pushed forward",
        ask: "Push your lips forward, as if to whistle.",
        look: "Round, in the middle.",
        exceptions: &[is("less", "moves less")],
        ..BLANK
    },
    ItemWords {
        id: "lips.cheeks",
        name: "Cheeks puffed and held",
        ask: "Fill your cheeks with air and hold it while I press on them.",
        look: "Air stays in, both cheeks equally firm.",
        exceptions: &[is("leak", "air leaks")],
        ..BLANK
    },
    ItemWords {
        id: "lips.pull",
        name: "Lips hold the depressor",
        ask: "Hold this between your lips and don't let me pull it out.",
        look: "Pull gently at the centre, then at the left, then at the right.",
        exceptions: &[is("centre", "lets go at the centre"), is("side", "lets go")],
        ..BLANK
    },
];
