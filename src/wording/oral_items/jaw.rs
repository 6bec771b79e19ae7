//! Jaw, in words.

use super::item_words::{BLANK, ItemWords, is, to};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "jaw.open",
        name: "Jaw opens and closes",
        ask: "Open your mouth wide, then close it.",
        look: "Straight, smooth, closed all the way.",
        exceptions: &[
            to("to-side", "opens towards one side", "opens towards the"),
            is("narrow", "does not open fully"),
            is("not-closed", "does not close fully"),
            is("pain", "hurts or clicks"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "jaw.fingers",
        name: "Jaw opening in fingers",
        ask: "Open wide and put three of your own fingers in, one above the other.",
        look: "The patient's own fingers, between the front teeth. Recorded, not judged.",
        care: "Not where the person might bite or can't follow.",
        exceptions: &[
            is("two", "only two fingers go in"),
            is("one", "only one finger goes in"),
            is("none", "no finger goes in"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "jaw.sides",
        name: "Jaw side to side",
        ask: "Move your lower jaw to one side, then to the other.",
        look: "Equally far to both sides.",
        exceptions: &[is("less", "goes less far")],
        ..BLANK
    },
    ItemWords {
        id: "jaw.forward",
        name: "Jaw forward and back",
        ask: "Push your lower jaw forward, then bring it back.",
        look: "Straight, lower teeth before the upper ones.",
        exceptions: &[
            is("less", "moves less"),
            to("to-side", "turns to one side", "turns to the"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "jaw.bite",
        name: "Bite",
        ask: "Bite your back teeth together, hard.",
        look: "Feel cheeks and temples: both sides harden alike.",
        care: "Not on loose teeth.",
        exceptions: &[is("weak", "weak")],
        ..BLANK
    },
    ItemWords {
        id: "jaw.against",
        name: "Jaw open against the hand",
        ask: "Open your mouth and don't let me close it.",
        look: "One hand under the chin, the other holds the head.",
        exceptions: &[is("weak", "weak")],
        ..BLANK
    },
    ItemWords {
        id: "jaw.against-side",
        name: "Jaw sideways against the hand",
        ask: "Push your jaw sideways against my hand. Now to the other side.",
        look: "Equally strong to both sides.",
        exceptions: &[is("weak", "push weak")],
        ..BLANK
    },
    ItemWords {
        id: "jaw.mm",
        name: "Mouth opening in millimetres",
        ask: "Open your mouth as wide as you can.",
        look: "With a ruler, edge to edge of the upper and lower front teeth; the widest of the tries.",
        care: "No wider than it goes by itself.",
        ..BLANK
    },
];
