//! Jaw.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Points, Spot, Takes, graded, graded_on, on, plain, towards,
};
use crate::clinical::knowledge::rules;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "jaw.open",
        nerve: Cranial::Fifth,
        exceptions: &[
            towards("to-side", Points::JawTo),
            graded("narrow"),
            graded("not-closed"),
            on("pain"),
        ],
        spot: Some(Spot(104, 150)),
        ..BLANK
    },
    Item {
        id: "jaw.fingers",
        nerve: Cranial::Fifth,
        by: By::Alone,
        exceptions: &[plain("two"), plain("one"), plain("none")],
        ..BLANK
    },
    Item {
        id: "jaw.sides",
        nerve: Cranial::Fifth,
        exceptions: &[graded_on("less")],
        ..BLANK
    },
    Item {
        id: "jaw.forward",
        nerve: Cranial::Fifth,
        exceptions: &[graded("less"), towards("to-side", Points::Nowhere)],
        ..BLANK
    },
    Item {
        id: "jaw.bite",
        nerve: Cranial::Fifth,
        by: By::Hand,
        exceptions: &[graded_on("weak").says(Points::Weak)],
        spot: Some(Spot(92, 76)),
        ..BLANK
    },
    Item {
        id: "jaw.against",
        nerve: Cranial::Fifth,
        by: By::Hand,
        exceptions: &[graded("weak")],
        ..BLANK
    },
    Item {
        id: "jaw.against-side",
        nerve: Cranial::Fifth,
        by: By::Hand,
        exceptions: &[graded_on("weak")],
        ..BLANK
    },
    Item {
        id: "jaw.mm",
        nerve: Cranial::Fifth,
        by: By::Alone,
        takes: Takes::Millimetres,
        rule: Some(&rules::MOUTH_OPENING),
        ..BLANK
    },
];
