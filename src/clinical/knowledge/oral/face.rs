//! Face and neck.

use crate::clinical::knowledge::oral::item::{
    BLANK, Cranial, Item, Points, Spot, graded_on, on, plain, towards,
};

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "face.rest",
        nerve: Cranial::Seventh,
        exceptions: &[
            graded_on("droop").says(Points::Weak),
            graded_on("moves"),
            on("swollen"),
        ],
        spot: Some(Spot(104, 162)),
        ..BLANK
    },
    Item {
        id: "face.forehead",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("weak").says(Points::Forehead)],
        spot: Some(Spot(118, 32)),
        ..BLANK
    },
    Item {
        id: "face.eyes",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("weak").says(Points::Eye)],
        spot: Some(Spot(112, 97)),
        ..BLANK
    },
    Item {
        id: "neck.rest",
        exceptions: &[
            towards("held", Points::Nowhere),
            on("swollen"),
            plain("scar"),
            plain("opening"),
        ],
        ..BLANK
    },
];
