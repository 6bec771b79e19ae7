//! Teeth, gums, lining, hard palate, in words.

use super::item_words::{BLANK, ExceptionWords, ItemWords, is};

const TEETH: &[ExceptionWords] = &[
    is("missing", "some missing"),
    is("none", "none, and no denture"),
    is("loose", "loose tooth"),
    is("broken", "broken or decayed"),
    is("denture-out", "denture not in"),
    is("denture-loose", "denture does not hold"),
];

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "teeth.upper",
        name: "Upper teeth or denture",
        ask: "Open your mouth. I look at your teeth.",
        look: "Teeth or a denture that holds.",
        care: "A loose tooth can be breathed in: no pressure on it, tell the doctor.",
        exceptions: TEETH,
        ..BLANK
    },
    ItemWords {
        id: "teeth.lower",
        name: "Lower teeth or denture",
        ask: "And the lower ones.",
        look: "Teeth or a denture that holds.",
        care: "A loose tooth can be breathed in: no pressure on it, tell the doctor.",
        exceptions: TEETH,
        ..BLANK
    },
    ItemWords {
        id: "mouth.gums",
        name: "Gums",
        ask: "I lift your lip and look at your gums.",
        look: "Firm, no bleeding.",
        exceptions: &[is("bleeding", "bleed"), is("swollen", "swollen or sore")],
        ..BLANK
    },
    ItemWords {
        id: "mouth.lining",
        name: "Lining of the mouth",
        ask: "Lift your tongue, and let me look all around.",
        look: "No sores, no patches. What you can't explain goes to the dentist or the doctor.",
        exceptions: &[
            is("sore", "sore or ulcer"),
            is("white", "white patches"),
            is("red", "red patches"),
            is("lump", "lump"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "mouth.moist",
        name: "Mouth moist",
        ask: "Keep your mouth open for a moment.",
        look: "Moist, saliva swallowed.",
        exceptions: &[
            is("dry", "dry"),
            is("thick", "thick, sticky saliva"),
            is("pooled", "saliva pools"),
            is("drools", "drools"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "mouth.clean",
        name: "Mouth clean",
        ask: "Put your tongue out a little.",
        look: "Nothing on tongue and teeth.",
        care: "Mouth care before anything is given.",
        exceptions: &[
            is("coated", "coated tongue"),
            is("plaque", "teeth not clean"),
            is("smell", "bad smell"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "mouth.sulci",
        name: "Pockets of the cheeks",
        ask: "Let me look inside your cheeks.",
        look: "Between gum and cheek, upper and lower, both sides.",
        care: "Take out what is left before anything else.",
        exceptions: &[is("food", "food remains"), is("tablet", "tablet remains")],
        ..BLANK
    },
    ItemWords {
        id: "mouth.hard-palate",
        name: "Hard palate",
        ask: "Tip your head back a little.",
        look: "Whole, not too high, clean.",
        exceptions: &[
            is("gap", "gap or cleft"),
            is("high", "high and narrow"),
            is("plate", "plate or obturator"),
            is("sore", "sore"),
            is("crust", "crusts or food on it"),
        ],
        ..BLANK
    },
];
