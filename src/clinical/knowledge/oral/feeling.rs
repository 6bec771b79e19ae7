//! Touch, left against right; taste. No published line for a weak answer was found: what was felt
//! is counted and told, not judged.

use crate::clinical::knowledge::oral::item::{BLANK, By, Cranial, Item, Spot, Takes, on};

const fn touch(id: &'static str, name: &'static str, nerve: Cranial) -> Item {
    Item {
        id,
        name,
        nerve,
        by: By::Hand,
        takes: Takes::Touches,
        ..BLANK
    }
}

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        ask: "Shut your eyes. Point to where I touch you, and say if one side feels less.",
        look: "Several touches on each side, in no fixed order. The same goes for every place below.",
        spot: Some(Spot(118, 34)),
        ..touch("touch.forehead", "Touch on the forehead", Cranial::Fifth)
    },
    Item {
        ask: "And here? Point, and say if one side feels less.",
        look: "Between cheekbone and mouth, both sides alike.",
        spot: Some(Spot(96, 124)),
        ..touch("touch.cheek", "Touch on the cheek", Cranial::Fifth)
    },
    Item {
        ask: "And here? Point, and say if one side feels less.",
        look: "Beside the middle of the chin, both sides alike.",
        spot: Some(Spot(124, 220)),
        ..touch("touch.chin", "Touch on the chin", Cranial::Fifth)
    },
    Item {
        ask: "Open your mouth, eyes shut. Which side do I touch?",
        look: "Side of the tongue, front two thirds.",
        ..touch(
            "touch.tongue",
            "Touch on the side of the tongue",
            Cranial::Fifth,
        )
    },
    Item {
        ask: "Keep it open. Which side do I touch now?",
        look: "Inside, away from the gum.",
        ..touch(
            "touch.inner-cheek",
            "Touch inside the cheek",
            Cranial::Fifth,
        )
    },
    Item {
        id: "taste",
        name: "Taste (optional)",
        ask: "Put your tongue out. Is this sweet, salty, or nothing?",
        look: "A drop on each side of the front. Nerve VII; the back third is IX.",
        care: "Nothing that may not be swallowed. Not where nothing by mouth is ordered.",
        nerve: Cranial::Seventh,
        by: By::Alone,
        exceptions: &[on("less", "less taste"), on("none", "no taste")],
        ..BLANK
    },
];
