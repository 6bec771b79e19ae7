//! Teeth, gums, lining, hard palate.

use crate::clinical::knowledge::oral::item::{BLANK, Exception, Item, Spot, graded, on, plain};

const TEETH: &[Exception] = &[
    on("missing", "some missing"),
    plain("none", "none, and no denture"),
    on("loose", "loose tooth"),
    on("broken", "broken or decayed"),
    plain("denture-out", "denture not in"),
    plain("denture-loose", "denture does not hold"),
];

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "teeth.upper",
        name: "Upper teeth or denture",
        ask: "Open your mouth. I look at your teeth.",
        look: "Teeth or a denture that holds.",
        care: "A loose tooth can be breathed in: no pressure on it, tell the doctor.",
        exceptions: TEETH,
        ..BLANK
    },
    Item {
        id: "teeth.lower",
        name: "Lower teeth or denture",
        ask: "And the lower ones.",
        look: "Teeth or a denture that holds.",
        care: "A loose tooth can be breathed in: no pressure on it, tell the doctor.",
        exceptions: TEETH,
        ..BLANK
    },
    Item {
        id: "mouth.gums",
        name: "Gums",
        ask: "I lift your lip and look at your gums.",
        look: "Firm, no bleeding.",
        exceptions: &[on("bleeding", "bleed"), on("swollen", "swollen or sore")],
        ..BLANK
    },
    Item {
        id: "mouth.lining",
        name: "Lining of the mouth",
        ask: "Lift your tongue, and let me look all around.",
        look: "No sores, no patches. What you can't explain goes to the dentist or the doctor.",
        exceptions: &[
            on("sore", "sore or ulcer"),
            on("white", "white patches"),
            on("red", "red patches"),
            on("lump", "lump"),
        ],
        spot: Some(Spot(82, 96)),
        ..BLANK
    },
    Item {
        id: "mouth.moist",
        name: "Mouth moist",
        ask: "Keep your mouth open for a moment.",
        look: "Moist, saliva swallowed.",
        exceptions: &[
            graded("dry", "dry"),
            graded("thick", "thick, sticky saliva"),
            on("pooled", "saliva pools"),
            on("drools", "drools"),
        ],
        ..BLANK
    },
    Item {
        id: "mouth.clean",
        name: "Mouth clean",
        ask: "Put your tongue out a little.",
        look: "Nothing on tongue and teeth.",
        care: "Mouth care before anything is given.",
        exceptions: &[
            graded("coated", "coated tongue"),
            graded("plaque", "teeth not clean"),
            plain("smell", "bad smell"),
        ],
        ..BLANK
    },
    Item {
        id: "mouth.sulci",
        name: "Pockets of the cheeks",
        ask: "Let me look inside your cheeks.",
        look: "Between gum and cheek, upper and lower, both sides.",
        care: "Take out what is left before anything else.",
        exceptions: &[on("food", "food remains"), on("tablet", "tablet remains")],
        spot: Some(Spot(82, 178)),
        ..BLANK
    },
    Item {
        id: "mouth.hard-palate",
        name: "Hard palate",
        ask: "Tip your head back a little.",
        look: "Whole, not too high, clean.",
        exceptions: &[
            plain("gap", "gap or cleft"),
            plain("high", "high and narrow"),
            plain("plate", "plate or obturator"),
            on("sore", "sore"),
            plain("crust", "crusts or food on it"),
        ],
        ..BLANK
    },
];
