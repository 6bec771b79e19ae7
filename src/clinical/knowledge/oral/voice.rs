//! Voice, speech, breath, cough, larynx, neck.

use crate::clinical::knowledge::oral::item::{
    BLANK, By, Cranial, Item, Takes, graded, graded_on, on, plain,
};
use crate::clinical::knowledge::rules;

/// The items.
pub(super) static ITEMS: &[Item] = &[
    Item {
        id: "voice.ah",
        name: "Voice on \"ah\"",
        ask: "Take a breath and say \"ah\", as long as it is easy.",
        look: "Clear and steady.",
        nerve: Cranial::Tenth,
        exceptions: &[
            graded("wet", "wet voice"),
            graded("breathy", "breathy voice"),
            graded("hoarse", "hoarse voice"),
            graded("weak", "weak voice"),
            graded("strained", "strained voice"),
        ],
        rule: Some(&rules::ORAL_WET_VOICE),
        ..BLANK
    },
    Item {
        id: "voice.pitch",
        name: "Pitch up and down",
        ask: "Let your voice glide from low to high, and down again.",
        look: "Goes up and comes down.",
        nerve: Cranial::Tenth,
        exceptions: &[graded("narrow", "hardly changes")],
        ..BLANK
    },
    Item {
        id: "speech",
        name: "Speech",
        ask: "Count aloud from one to ten.",
        look: "Clear, even, not through the nose.",
        nerve: Cranial::Several,
        exceptions: &[
            graded("slurred", "slurred"),
            graded("nasal", "through the nose"),
            graded("blocked", "as with a blocked nose"),
            graded("slow", "slow or halting"),
        ],
        ..BLANK
    },
    Item {
        id: "nose",
        name: "Breathing through the nose",
        ask: "Close your mouth and breathe through your nose.",
        look: "Easy, through both sides.",
        exceptions: &[on("blocked", "blocked")],
        ..BLANK
    },
    Item {
        id: "cough",
        name: "Cough on request",
        ask: "Cough, as hard as you can.",
        look: "Sharp and strong. Weak, only voiced, or none is not as expected.",
        nerve: Cranial::Tenth,
        exceptions: &[
            graded("weak", "weak"),
            plain("voiced", "only voiced"),
            plain("none", "none"),
        ],
        ..BLANK
    },
    Item {
        id: "throat.clear",
        name: "Throat clear on request",
        ask: "Clear your throat.",
        look: "Short and sharp.",
        nerve: Cranial::Tenth,
        exceptions: &[graded("weak", "weak"), plain("none", "none")],
        ..BLANK
    },
    Item {
        id: "larynx",
        name: "Four fingers on a dry swallow",
        ask: "Swallow your saliva once.",
        look: "Light touch: pointing finger behind the chin, the next on the bone above the larynx, the last two at its upper and lower edge. Tells that, when and how often a swallow comes, not how far the larynx moves.",
        care: "No pressure on the neck.",
        nerve: Cranial::Several,
        by: By::Hand,
        exceptions: &[
            plain("not-felt", "no swallow felt"),
            plain("late", "swallow comes late"),
            plain("several", "more than one swallow"),
        ],
        rule: Some(&rules::ORAL_LARYNX),
        ..BLANK
    },
    Item {
        id: "cough.flow",
        name: "Peak cough flow",
        ask: "Breathe in deep and cough into this, as hard as you can.",
        look: "Only with a meter and a single-use mouthpiece; the best of the tries. A peak-flow meter may read low.",
        care: "Cover mouth and eyes.",
        by: By::Alone,
        takes: Takes::Flow,
        rule: Some(&rules::COUGH_FLOW_WEAK),
        ..BLANK
    },
    Item {
        id: "neck.strength",
        name: "Head turn and shoulder shrug (optional)",
        ask: "Turn your head against my hand. Now lift your shoulders.",
        look: "Equally strong on both sides.",
        care: "Not with a neck limit.",
        nerve: Cranial::Eleventh,
        by: By::Alone,
        exceptions: &[
            graded_on("turn", "head turn weak"),
            graded_on("shrug", "shoulder lift weak"),
        ],
        ..BLANK
    },
];
