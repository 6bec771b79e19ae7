//! Touch, left against right; taste. No published line for a weak answer was found, in words.

use super::item_words::{BLANK, ItemWords, is};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "touch.forehead",
        name: "Touch on the forehead",
        ask: "Shut your eyes. Point to where I touch you, and say if one side feels less.",
        look: "Several touches on each side, in no fixed order. The same goes for every place below.",
        ..BLANK
    },
    ItemWords {
        id: "touch.cheek",
        name: "Touch on the cheek",
        ask: "And here? Point, and say if one side feels less.",
        look: "Between cheekbone and mouth, both sides alike.",
        ..BLANK
    },
    ItemWords {
        id: "touch.chin",
        name: "Touch on the chin",
        ask: "And here? Point, and say if one side feels less.",
        look: "Beside the middle of the chin, both sides alike.",
        ..BLANK
    },
    ItemWords {
        id: "touch.tongue",
        name: "Touch on the side of the tongue",
        ask: "Open your mouth, eyes shut. Which side do I touch?",
        look: "Side of the tongue, front two thirds.",
        ..BLANK
    },
    ItemWords {
        id: "touch.inner-cheek",
        name: "Touch inside the cheek",
        ask: "Keep it open. Which side do I touch now?",
        look: "Inside, away from the gum.",
        ..BLANK
    },
    ItemWords {
        id: "taste",
        name: "Taste (optional)",
        within: "Taste",
        ask: "Put your tongue out. Is this sweet, salty, or nothing?",
        look: "A drop on each side of the front. Nerve VII; the back third is IX.",
        care: "Nothing that may not be swallowed. Not where nothing by mouth is ordered.",
        exceptions: &[is("less", "less taste"), is("none", "no taste")],
    },
];
