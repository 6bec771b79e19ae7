//! Jaw.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Points, Spot, Takes, graded, graded_on, on, plain, towards,
};
use crate::clinical::knowledge::rules;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "jaw.open",
        name: "Jaw opens and closes",
        ask: "Open your mouth wide, then close it.",
        look: "Straight, smooth, closed all the way.",
        nerve: Cranial::Fifth,
        exceptions: &[
            towards(
                "to-side",
                "opens towards one side",
                "opens towards the",
                Points::JawTo,
            ),
            graded("narrow", "does not open fully"),
            graded("not-closed", "does not close fully"),
            on("pain", "hurts or clicks"),
        ],
        spot: Some(Spot(104, 150)),
        ..BLANK
    },
    Item {
        id: "jaw.fingers",
        name: "Jaw opening in fingers",
        ask: "Open wide and put three of your own fingers in, one above the other.",
        look: "The patient's own fingers, between the front teeth. Recorded, not judged.",
        care: "Not where the person might bite or can't follow.",
        nerve: Cranial::Fifth,
        by: By::Alone,
        exceptions: &[
            plain("two", "only two fingers go in"),
            plain("one", "only one finger goes in"),
            plain("none", "no finger goes in"),
        ],
        ..BLANK
    },
    Item {
        id: "jaw.sides",
        name: "Jaw side to side",
        ask: "Move your lower jaw to one side, then to the other.",
        look: "Equally far to both sides.",
        nerve: Cranial::Fifth,
        exceptions: &[graded_on("less", "goes less far")],
        ..BLANK
    },
    Item {
        id: "jaw.forward",
        name: "Jaw forward and back",
        ask: "Push your lower jaw forward, then bring it back.",
        look: "Straight, lower teeth before the upper ones.",
        nerve: Cranial::Fifth,
        exceptions: &[
            graded("less", "moves less"),
            towards(
                "to-side",
                "turns to one side",
                "turns to the",
                Points::Nowhere,
            ),
        ],
        ..BLANK
    },
    Item {
        id: "jaw.bite",
        name: "Bite",
        ask: "Bite your back teeth together, hard.",
        look: "Feel cheeks and temples: both sides harden alike.",
        care: "Not on loose teeth.",
        nerve: Cranial::Fifth,
        by: By::Hand,
        exceptions: &[graded_on("weak", "weak").says(Points::Weak)],
        spot: Some(Spot(92, 76)),
        ..BLANK
    },
    Item {
        id: "jaw.against",
        name: "Jaw open against the hand",
        ask: "Open your mouth and don't let me close it.",
        look: "One hand under the chin, the other holds the head.",
        nerve: Cranial::Fifth,
        by: By::Hand,
        exceptions: &[graded("weak", "weak")],
        ..BLANK
    },
    Item {
        id: "jaw.against-side",
        name: "Jaw sideways against the hand",
        ask: "Push your jaw sideways against my hand. Now to the other side.",
        look: "Equally strong to both sides.",
        nerve: Cranial::Fifth,
        by: By::Hand,
        exceptions: &[graded_on("weak", "push weak")],
        ..BLANK
    },
    Item {
        id: "jaw.mm",
        name: "Mouth opening in millimetres",
        ask: "Open your mouth as wide as you can.",
        look: "With a ruler, edge to edge of the upper and lower front teeth; the widest of the tries.",
        care: "No wider than it goes by itself.",
        nerve: Cranial::Fifth,
        by: By::Alone,
        takes: Takes::Millimetres,
        rule: Some(&rules::MOUTH_OPENING),
        ..BLANK
    },
];
