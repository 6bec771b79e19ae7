//! The gag, and touch on palate and back of the tongue that can bring it on: optional, last, and never decisive.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Takes, graded_on, on, plain,
};
use crate::clinical::knowledge::rules;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "touch.palate",
        nerve: Cranial::Ninth,
        by: By::Alone,
        exceptions: &[on("less"), on("none")],
        ..BLANK
    },
    Item {
        id: "touch.tongue-back",
        nerve: Cranial::Ninth,
        by: By::Alone,
        takes: Takes::Touches,
        ..BLANK
    },
    Item {
        id: "gag",
        nerve: Cranial::Tenth,
        by: By::Alone,
        exceptions: &[graded_on("weak"), plain("one-side"), plain("absent")],
        rule: Some(&rules::GAG_NEVER_DECIDES),
        ..BLANK
    },
];
