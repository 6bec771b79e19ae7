//! The gag, and touch on palate and back of the tongue that can bring it on: optional, last, and never decisive.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Takes, graded_on, on, plain,
};
use crate::clinical::knowledge::rules;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "touch.palate",
        name: "Touch on the soft palate",
        ask: "Open wide. Tell me when you feel this, and on which side.",
        look: "Once, lightly, left and right.",
        nerve: Cranial::Ninth,
        by: By::Alone,
        exceptions: &[on("less", "less felt"), on("none", "not felt")],
        ..BLANK
    },
    Item {
        id: "touch.tongue-back",
        name: "Touch on the back of the tongue",
        ask: "Open wide. Which side do I touch?",
        look: "Back third of the tongue, lightly, only where it matters.",
        nerve: Cranial::Ninth,
        by: By::Alone,
        takes: Takes::Touches,
        ..BLANK
    },
    Item {
        id: "gag",
        name: "Gag",
        ask: "Open wide. I touch the back of your throat once. It is unpleasant, and short.",
        look: "Palate and throat wall tighten on both sides. It is missing in 37 % of healthy people in one study (DAV95) and in 13 % of adults who swallow well in another (LED96): it decides nothing, alone or together with other findings.",
        care: "Single-use depressor, one touch, stop at the first wish.",
        nerve: Cranial::Tenth,
        by: By::Alone,
        exceptions: &[
            graded_on("weak", "weak"),
            plain("one-side", "on one side only"),
            plain("absent", "none"),
        ],
        rule: Some(&rules::GAG_NEVER_DECIDES),
        ..BLANK
    },
];
