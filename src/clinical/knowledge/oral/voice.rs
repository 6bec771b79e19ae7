//! Voice, speech, breath, cough, larynx, neck.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Takes, graded, graded_on, on, plain,
};
use crate::clinical::knowledge::rules;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "voice.ah",
        nerve: Cranial::Tenth,
        exceptions: &[
            graded("wet"),
            graded("breathy"),
            graded("hoarse"),
            graded("weak"),
            graded("strained"),
        ],
        rule: Some(&rules::ORAL_WET_VOICE),
        ..BLANK
    },
    Item {
        id: "voice.pitch",
        nerve: Cranial::Tenth,
        exceptions: &[graded("narrow")],
        ..BLANK
    },
    Item {
        id: "speech",
        nerve: Cranial::Several,
        exceptions: &[
            graded("slurred"),
            graded("nasal"),
            graded("blocked"),
            graded("slow"),
        ],
        ..BLANK
    },
    Item {
        id: "nose",
        exceptions: &[on("blocked")],
        ..BLANK
    },
    Item {
        id: "cough",
        nerve: Cranial::Tenth,
        exceptions: &[graded("weak"), plain("voiced"), plain("none")],
        ..BLANK
    },
    Item {
        id: "throat.clear",
        nerve: Cranial::Tenth,
        exceptions: &[graded("weak"), plain("none")],
        ..BLANK
    },
    Item {
        id: "larynx",
        nerve: Cranial::Several,
        by: By::Hand,
        exceptions: &[plain("not-felt"), plain("late"), plain("several")],
        rule: Some(&rules::ORAL_LARYNX),
        ..BLANK
    },
    Item {
        id: "cough.flow",
        by: By::Alone,
        takes: Takes::Flow,
        rule: Some(&rules::COUGH_FLOW_WEAK),
        ..BLANK
    },
    Item {
        id: "neck.strength",
        nerve: Cranial::Eleventh,
        by: By::Alone,
        exceptions: &[graded_on("turn"), graded_on("shrug")],
        ..BLANK
    },
];
