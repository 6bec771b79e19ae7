//! Tongue.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Points, Spot, graded, graded_on, on, plain, towards,
};
use crate::clinical::knowledge::rules;

const SHORT: Points = Points::Range;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "tongue.rest",
        nerve: Cranial::Twelfth,
        exceptions: &[
            graded_on("wasted").says(Points::Wasted),
            on("twitching").says(Points::Twitching),
            plain("moves"),
            plain("large"),
        ],
        spot: Some(Spot(122, 96)),
        ..BLANK
    },
    Item {
        id: "tongue.out",
        nerve: Cranial::Twelfth,
        exceptions: &[
            towards("to-side", Points::TongueTo),
            graded("short").says(SHORT),
        ],
        spot: Some(Spot(122, 214)),
        rule: Some(&rules::TONGUE_RANGE),
        ..BLANK
    },
    Item {
        id: "tongue.sides",
        nerve: Cranial::Twelfth,
        exceptions: &[graded_on("short").says(SHORT), graded("slow")],
        spot: Some(Spot(52, 84)),
        ..BLANK
    },
    Item {
        id: "tongue.up",
        nerve: Cranial::Twelfth,
        exceptions: &[graded("short").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.palate",
        nerve: Cranial::Twelfth,
        exceptions: &[graded("short").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.lick-upper",
        nerve: Cranial::Twelfth,
        exceptions: &[graded_on("short").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.lick-lower",
        nerve: Cranial::Twelfth,
        exceptions: &[graded_on("short").says(SHORT)],
        ..BLANK
    },
    Item {
        id: "tongue.back",
        nerve: Cranial::Twelfth,
        exceptions: &[graded("weak")],
        ..BLANK
    },
    Item {
        id: "tongue.push",
        nerve: Cranial::Twelfth,
        by: By::Hand,
        exceptions: &[graded_on("weak").says(Points::Push)],
        spot: Some(Spot(52, 150)),
        ..BLANK
    },
];
