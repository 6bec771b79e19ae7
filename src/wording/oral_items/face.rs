//! Face and neck, in words.

use super::item_words::{BLANK, ItemWords, is, to};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "face.rest",
        name: "Face at rest",
        ask: "Look at me and let your face go loose.",
        look: "Both halves alike: fold beside the nose, corner of the mouth, eyelid. Nothing moves by itself. In one large study an uneven face went with less aspiration, not more (LED13).",
        exceptions: &[
            is("droop", "droops"),
            is("moves", "moves by itself"),
            is("swollen", "swollen"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "face.forehead",
        name: "Forehead",
        ask: "Raise your eyebrows as high as you can.",
        look: "Wrinkles on both sides. With a weak lower face this tells the pattern.",
        exceptions: &[is("weak", "does not rise fully")],
        ..BLANK
    },
    ItemWords {
        id: "face.eyes",
        name: "Eyes shut tight",
        ask: "Shut your eyes as tight as you can.",
        look: "Closed all the way, lashes buried alike.",
        care: "An eye that does not close dries out: tell the nurse.",
        exceptions: &[is("weak", "not shut tight")],
        ..BLANK
    },
    ItemWords {
        id: "neck.rest",
        name: "Neck",
        ask: "Look straight ahead and let me see your neck.",
        look: "Scars, an opening, swelling, the head held to one side.",
        exceptions: &[
            to("held", "head held to one side", "head held to the"),
            is("swollen", "swollen"),
            is("scar", "scar"),
            is("opening", "opening or tube"),
        ],
        ..BLANK
    },
];
