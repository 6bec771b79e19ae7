//! Face and neck.

use crate::clinical::knowledge::oral::item::{
    BLANK, Cranial, Item, Points, Spot, graded_on, on, plain, towards,
};

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "face.rest",
        name: "Face at rest",
        ask: "Look at me and let your face go loose.",
        look: "Both halves alike: fold beside the nose, corner of the mouth, eyelid. Nothing moves by itself. In one large study an uneven face went with less aspiration, not more (LED13).",
        nerve: Cranial::Seventh,
        exceptions: &[
            graded_on("droop", "droops").says(Points::Weak),
            graded_on("moves", "moves by itself"),
            on("swollen", "swollen"),
        ],
        spot: Some(Spot(104, 162)),
        ..BLANK
    },
    Item {
        id: "face.forehead",
        name: "Forehead",
        ask: "Raise your eyebrows as high as you can.",
        look: "Wrinkles on both sides. With a weak lower face this tells the pattern.",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("weak", "does not rise fully").says(Points::Forehead)],
        spot: Some(Spot(118, 32)),
        ..BLANK
    },
    Item {
        id: "face.eyes",
        name: "Eyes shut tight",
        ask: "Shut your eyes as tight as you can.",
        look: "Closed all the way, lashes buried alike.",
        care: "An eye that does not close dries out: tell the nurse.",
        nerve: Cranial::Seventh,
        exceptions: &[graded_on("weak", "not shut tight").says(Points::Eye)],
        spot: Some(Spot(112, 97)),
        ..BLANK
    },
    Item {
        id: "neck.rest",
        name: "Neck",
        ask: "Look straight ahead and let me see your neck.",
        look: "Scars, an opening, swelling, the head held to one side.",
        exceptions: &[
            towards(
                "held",
                "head held to one side",
                "head held to the",
                Points::Nowhere,
            ),
            on("swollen", "swollen"),
            plain("scar", "scar"),
            plain("opening", "opening or tube"),
        ],
        ..BLANK
    },
];
