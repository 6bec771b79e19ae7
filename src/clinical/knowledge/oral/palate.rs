//! Soft palate.

use crate::clinical::knowledge::oral::item::{
    BLANK, Cranial, Item, Points, Spot, graded, graded_on, plain, towards,
};

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "palate.rest",
        name: "Soft palate at rest",
        ask: "Open wide and breathe quietly.",
        look: "Both arches equally high.",
        nerve: Cranial::Tenth,
        exceptions: &[
            graded_on("low", "hangs lower").says(Points::Weak),
            plain("gap", "gap or scar"),
        ],
        spot: Some(Spot(108, 62)),
        ..BLANK
    },
    Item {
        id: "palate.ah",
        name: "Soft palate on \"ah\"",
        ask: "Say a short \"ah\", five times.",
        look: "Lifts each time, in the middle, and does not tire.",
        nerve: Cranial::Tenth,
        exceptions: &[
            towards(
                "pulled",
                "uvula pulled to one side",
                "uvula pulled to the",
                Points::UvulaTo,
            ),
            graded_on("less", "lifts less").says(Points::Weak),
            graded("none", "hardly lifts"),
        ],
        spot: Some(Spot(122, 134)),
        ..BLANK
    },
    Item {
        id: "throat.wall",
        name: "Back of the throat",
        ask: "Open wide once more and say \"ah\".",
        look: "Clear, nothing pooled.",
        care: "Pooled saliva or food: suction or mouth care first.",
        exceptions: &[
            plain("pooled", "saliva pools"),
            plain("food", "food remains"),
            plain("red", "red or swollen"),
        ],
        ..BLANK
    },
];
