//! Lips and cheeks.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Points, Spot, graded, graded_on, towards,
};

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "lips.together",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("gap").says(Points::Weak)],
        ..BLANK
    },
    Item {
        id: "lips.smile",
        nerve: Cranial::Seventh,
        exceptions: &[
            towards("pulled", Points::SmileTo),
            graded_on("less").says(Points::Weak),
        ],
        spot: Some(Spot(124, 190)),
        ..BLANK
    },
    Item {
        id: "lips.pucker",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("less").says(Points::Weak)],
        ..BLANK
    },
    Item {
        id: "lips.cheeks",
        nerve: Cranial::Seventh,
        by: By::Hand,
        exceptions: &[graded_on("leak").says(Points::Weak)],
        spot: Some(Spot(92, 112)),
        ..BLANK
    },
    Item {
        id: "lips.pull",
        nerve: Cranial::Seventh,
        by: By::Hand,
        exceptions: &[graded("centre"), graded_on("side").says(Points::Weak)],
        ..BLANK
    },
];
