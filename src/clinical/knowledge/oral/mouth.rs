//! Teeth, gums, lining, hard palate.

use crate::clinical::knowledge::oral::item::{BLANK, Exception, Item, Spot, graded, on, plain};

const TEETH: &[Exception] = &[
    on("missing"),
    plain("none"),
    on("loose"),
    on("broken"),
    plain("denture-out"),
    plain("denture-loose"),
];

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "teeth.upper",
        exceptions: TEETH,
        ..BLANK
    },
    Item {
        id: "teeth.lower",
        exceptions: TEETH,
        ..BLANK
    },
    Item {
        id: "mouth.gums",
        exceptions: &[on("bleeding"), on("swollen")],
        ..BLANK
    },
    Item {
        id: "mouth.lining",
        exceptions: &[on("sore"), on("white"), on("red"), on("lump")],
        spot: Some(Spot(82, 96)),
        ..BLANK
    },
    Item {
        id: "mouth.moist",
        exceptions: &[graded("dry"), graded("thick"), on("pooled"), on("drools")],
        ..BLANK
    },
    Item {
        id: "mouth.clean",
        exceptions: &[graded("coated"), graded("plaque"), plain("smell")],
        ..BLANK
    },
    Item {
        id: "mouth.sulci",
        exceptions: &[on("food"), on("tablet")],
        spot: Some(Spot(82, 178)),
        ..BLANK
    },
    Item {
        id: "mouth.hard-palate",
        exceptions: &[
            plain("gap"),
            plain("high"),
            plain("plate"),
            on("sore"),
            plain("crust"),
        ],
        ..BLANK
    },
];
