//! Tongue, in words.

use super::item_words::{BLANK, ItemWords, is, to};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "tongue.rest",
        name: "Tongue at rest",
        ask: "Open your mouth and let your tongue lie still.",
        look: "Bulk, furrows, fine twitching: only while it lies in the mouth, not when it is put out.",
        exceptions: &[
            is("wasted", "thin or furrowed"),
            is("twitching", "twitches"),
            is("moves", "moves by itself"),
            is("large", "large or swollen"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "tongue.out",
        name: "Tongue put out",
        ask: "Put your tongue out, straight.",
        look: "Straight. With a weak face judge by the middle of the teeth, not of the lips.",
        exceptions: &[
            to("to-side", "points to one side", "points to the"),
            is("short", "does not come out fully"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "tongue.sides",
        name: "Tongue side to side",
        ask: "Touch one corner of your mouth with your tongue, then the other. Quickly, a few times.",
        look: "Reaches both corners, even pace.",
        exceptions: &[
            is("short", "does not reach the corner"),
            is("slow", "slow or uneven"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "tongue.up",
        name: "Tongue tip up",
        ask: "Lift the tip of your tongue to behind your upper teeth.",
        look: "Lifts without the jaw.",
        exceptions: &[is("short", "does not lift fully")],
        ..BLANK
    },
    ItemWords {
        id: "tongue.palate",
        name: "Tongue along the palate",
        ask: "Run the tip of your tongue back along the roof of your mouth.",
        look: "Reaches the soft part.",
        exceptions: &[is("short", "does not reach back")],
        ..BLANK
    },
    ItemWords {
        id: "tongue.lick-upper",
        name: "Tongue licks the upper lip",
        ask: "Lick your upper lip, from corner to corner.",
        look: "The whole lip.",
        exceptions: &[is("short", "misses part of it")],
        ..BLANK
    },
    ItemWords {
        id: "tongue.lick-lower",
        name: "Tongue licks the lower lip",
        ask: "And your lower lip.",
        look: "The whole lip.",
        exceptions: &[is("short", "misses part of it")],
        ..BLANK
    },
    ItemWords {
        id: "tongue.back",
        name: "Back of the tongue",
        ask: "Say: g, g, g.",
        look: "A clear, hard g each time.",
        exceptions: &[is("weak", "g not clear")],
        ..BLANK
    },
    ItemWords {
        id: "tongue.push",
        name: "Tongue into each cheek",
        ask: "Push your tongue into your cheek, against my finger. Now the other cheek.",
        look: "Equally strong into both cheeks. Named by the cheek pushed into.",
        exceptions: &[is("weak", "push into the cheek weak")],
        ..BLANK
    },
];
