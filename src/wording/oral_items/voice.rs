//! Voice, speech, breath, cough, larynx, neck, in words.

use super::item_words::{BLANK, ItemWords, is};

pub(super) static WORDS: &[ItemWords] = &[
    ItemWords {
        id: "voice.ah",
        name: "Voice on \"ah\"",
        ask: "Take a breath and say \"ah\", as long as it is easy.",
        look: "Clear and steady.",
        exceptions: &[
            is("wet", "wet voice"),
            is("breathy", "breathy voice"),
            is("hoarse", "hoarse voice"),
            is("weak", "weak voice"),
            is("strained", "strained voice"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "voice.pitch",
        name: "Pitch up and down",
        ask: "Let your voice glide from low to high, and down again.",
        look: "Goes up and comes down.",
        exceptions: &[is("narrow", "hardly changes")],
        ..BLANK
    },
    ItemWords {
        id: "speech",
        name: "Speech",
        ask: "Count aloud from one to ten.",
        look: "Clear, even, not through the nose.",
        exceptions: &[
            is("slurred", "slurred"),
            is("nasal", "through the nose"),
            is("blocked", "as with a blocked nose"),
            is("slow", "slow or halting"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "nose",
        name: "Breathing through the nose",
        ask: "Close your mouth and breathe through your nose.",
        look: "Easy, through both sides.",
        exceptions: &[is("blocked", "blocked")],
        ..BLANK
    },
    ItemWords {
        id: "cough",
        name: "Cough on request",
        ask: "Cough, as hard as you can.",
        look: "Sharp and strong. Weak, only voiced, or none is not as expected.",
        exceptions: &[
            is("weak", "weak"),
            is("voiced", "only voiced"),
            is("none", "none"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "throat.clear",
        name: "Throat clear on request",
        ask: "Clear your throat.",
        look: "Short and sharp.",
        exceptions: &[is("weak", "weak"), is("none", "none")],
        ..BLANK
    },
    ItemWords {
        id: "larynx",
        name: "Four fingers on a dry swallow",
        ask: "Swallow your saliva once.",
        look: "Light touch: pointing finger behind the chin, the next on the bone above the larynx, the last two at its upper and lower edge. Tells that, when and how often a swallow comes, not how far the larynx moves.",
        care: "No pressure on the neck.",
        exceptions: &[
            is("not-felt", "no swallow felt"),
            is("late", "swallow comes late"),
            is("several", "more than one swallow"),
        ],
        ..BLANK
    },
    ItemWords {
        id: "cough.flow",
        name: "Peak cough flow",
        ask: "Breathe in deep and cough into this, as hard as you can.",
        look: "Only with a meter and a single-use mouthpiece; the best of the tries. A peak-flow meter may read low.",
        care: "Cover mouth and eyes.",
        ..BLANK
    },
    ItemWords {
        id: "neck.strength",
        name: "Head turn and shoulder shrug (optional)",
        within: "Head turn and shoulder shrug",
        ask: "Turn your head against my hand. Now lift your shoulders.",
        look: "Equally strong on both sides.",
        care: "Not with a neck limit.",
        exceptions: &[
            is("turn", "head turn weak"),
            is("shrug", "shoulder lift weak"),
        ],
    },
];
