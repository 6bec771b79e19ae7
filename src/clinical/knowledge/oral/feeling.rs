//! Touch, left against right; taste. No published line for a weak answer was found: what was felt
//! is counted and told, not judged.

use crate::clinical::knowledge::oral::item::{BLANK, By, Cranial, Item, Spot, Takes, on};

const fn touch(id: &'static str, nerve: Cranial) -> Item {
    Item {
        id,
        nerve,
        by: By::Hand,
        takes: Takes::Touches,
        ..BLANK
    }
}

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        spot: Some(Spot(118, 34)),
        ..touch("touch.forehead", Cranial::Fifth)
    },
    Item {
        spot: Some(Spot(96, 124)),
        ..touch("touch.cheek", Cranial::Fifth)
    },
    Item {
        spot: Some(Spot(124, 220)),
        ..touch("touch.chin", Cranial::Fifth)
    },
    touch("touch.tongue", Cranial::Fifth),
    touch("touch.inner-cheek", Cranial::Fifth),
    Item {
        id: "taste",
        nerve: Cranial::Seventh,
        by: By::Alone,
        exceptions: &[on("less"), on("none")],
        ..BLANK
    },
];
