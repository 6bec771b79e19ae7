//! Lips and cheeks.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Points, Spot, graded, graded_on, towards,
};

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "lips.together",
        name: "Lips pressed together",
        ask: "Press your lips together.",
        look: "Shut along their whole length. Not shutting fully, by itself, changed nothing in one large study (LED13).",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("gap", "not shut").says(Points::Weak)],
        ..BLANK
    },
    Item {
        id: "lips.smile",
        name: "Wide smile",
        ask: "Show me your teeth in a wide smile.",
        look: "Both corners go equally far.",
        nerve: Cranial::Seventh,
        exceptions: &[
            towards(
                "pulled",
                "mouth pulled to one side",
                "mouth pulled to the",
                Points::SmileTo,
            ),
            graded_on("less", "moves less").says(Points::Weak),
        ],
        spot: Some(Spot(124, 190)),
        ..BLANK
    },
    Item {
        id: "lips.pucker",
        name: "Lips pushed forward",
        ask: "Push your lips forward, as if to whistle.",
        look: "Round, in the middle.",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("less", "moves less").says(Points::Weak)],
        ..BLANK
    },
    Item {
        id: "lips.cheeks",
        name: "Cheeks puffed and held",
        ask: "Fill your cheeks with air and hold it while I press on them.",
        look: "Air stays in, both cheeks equally firm.",
        nerve: Cranial::Seventh,
        by: By::Hand,
        exceptions: &[graded_on("leak", "air leaks").says(Points::Weak)],
        spot: Some(Spot(92, 112)),
        ..BLANK
    },
    Item {
        id: "lips.pull",
        name: "Lips hold the depressor",
        ask: "Hold this between your lips and don't let me pull it out.",
        look: "Pull gently at the centre, then at the left, then at the right.",
        nerve: Cranial::Seventh,
        by: By::Hand,
        exceptions: &[
            graded("centre", "lets go at the centre"),
            graded_on("side", "lets go").says(Points::Weak),
        ],
        ..BLANK
    },
];
