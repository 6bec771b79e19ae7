//! Breath for speech, and the glide of the voice, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice, number};

pub(super) static COUNT: TaskWords = TaskWords {
    title: "Counting on one breath",
    steps: &[
        "Sitting upright, usual voice. The beat is two a second: it sounds, and the number shows.",
        "A deep breath, then touch the pad: the first beat is \"one\".",
        "Touch it again at the next breath, and take over the highest number said.",
    ],
    say: "Take a deep breath and count aloud with the beat, for as long as you can without breathing in.",
    caveat: "It depends on effort. The lines come from people with weak muscles.",
    for_whom: "Adults: in children the count depends on height and is reported only.",
    start: "Touch: the beat starts",
    end: Some("Touch at the next breath"),
    asks: &[number("reached", "Highest number said", "")],
    ..PLAIN
};

pub(super) static HOLD: TaskWords = TaskWords {
    title: "Breath hold",
    steps: &[
        "5 seconds are asked (common practice); skip it where holding the breath is not wanted.",
        "Touch the pad when the breath is held, touch it again when it is let go.",
    ],
    say: "Breathe in, and hold your breath for five seconds.",
    caveat: "Recorded, not judged.",
    for_whom: "Anybody for whom holding the breath is allowed and wanted; no age has a line.",
    start: "Touch when held",
    end: Some("Touch when let go"),
    ..PLAIN
};

pub(super) static FIVE: TaskWords = TaskWords {
    title: "5 cm of water for 5 seconds",
    steps: &[
        "A cup of water marked in cm, a straw with a pinhole above the water. The tip is 5 cm under.",
        "Touch the pad at the first bubbles, touch it again when they end.",
        "Whether they were continuous at 5 cm is yours to say: the phone can't see the pressure.",
    ],
    say: "Blow bubbles through the straw, gently and without a break, until I say stop.",
    caveat: "The water is blown into, not drunk.",
    for_whom: "Anybody who can close the lips on a straw and blow on request; no age has a line.",
    start: "Touch at the first bubbles",
    end: Some("Touch when they end"),
    asks: &[choice(
        "bubbles",
        "The bubbles",
        &[
            ("continuous", "Continuous, at 5 cm"),
            ("broken", "Broken off, or not at 5 cm"),
            ("not-seen", "Nobody watched"),
        ],
    )],
    ..PLAIN
};

const GLIDES: &[(&str, &str)] = &[
    ("smooth", "Smooth"),
    ("stepped", "Stepped"),
    ("narrow", "Narrow"),
    ("none", "None"),
];

pub(super) static GLIDE: TaskWords = TaskWords {
    title: "Pitch glide",
    steps: &["Up and down on \"ah\". Touch the pad when it starts and when it ends."],
    say: "Say \"ah\" and slide from your lowest to your highest voice, and down again.",
    caveat: "As heard; no line is drawn on it.",
    for_whom: "Anybody who can follow a slide of the voice; as heard, no age has a line.",
    start: "Touch when it starts",
    end: Some("Touch when it ends"),
    asks: &[
        choice("glide-up", "Up", GLIDES),
        choice("glide-down", "Down", GLIDES),
    ],
    ..PLAIN
};
