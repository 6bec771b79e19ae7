//! Soft palate.

use crate::clinical::knowledge::oral::item::{
    BLANK, Cranial, Item, Points, Spot, graded, graded_on, plain, towards,
};

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "palate.rest",
        nerve: Cranial::Tenth,
        exceptions: &[graded_on("low").says(Points::Weak), plain("gap")],
        spot: Some(Spot(108, 62)),
        ..BLANK
    },
    Item {
        id: "palate.ah",
        nerve: Cranial::Tenth,
        exceptions: &[
            towards("pulled", Points::UvulaTo),
            graded_on("less").says(Points::Weak),
            graded("none"),
        ],
        spot: Some(Spot(122, 134)),
        ..BLANK
    },
    Item {
        id: "throat.wall",
        exceptions: &[plain("pooled"), plain("food"), plain("red")],
        ..BLANK
    },
];
