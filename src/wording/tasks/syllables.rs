//! Repeated syllables, in words.

use crate::wording::tasks::task_words::{Ask, PLAIN, TaskWords, choice};

const SOUND: Ask = choice(
    "sound",
    "How did it sound?",
    &[
        ("correct", "Correct"),
        ("distorted", "Distorted"),
        ("could-not", "Could not"),
    ],
);

const ALL: TaskWords = TaskWords {
    steps: &[
        "Show it once, then let the person try once.",
        "Tap with the first syllable: it starts the time and counts.",
        "By time the count ends by itself. By count press Stop when the last one has ended.",
        "Up to three trials. The fastest correct one is scored.",
    ],
    caveat: "Counting with a finger: one syllable more or less in 5 seconds moves the rate \
             by 0.2 a second.",
    for_whom: "From 3 years. Values of children are for 6 to 13 years, those of adults by age \
               and language: who has none is timed and not judged.",
    counts: ("syllable", "syllables"),
    start: "Tap with the first one",
    end: Some("Stop"),
    asks: &[
        choice(
            "how",
            "How long?",
            &[
                ("5s", "5 seconds"),
                ("8s", "8"),
                ("10s", "10"),
                ("15s", "15"),
                ("by-count", "20 times, then Stop"),
            ],
        ),
        SOUND,
    ],
    ..PLAIN
};

pub(super) static PA: TaskWords = TaskWords {
    title: "pa-pa-pa",
    say: "Say \"pa-pa-pa\" as fast and as evenly as you can, until I say stop.",
    ..ALL
};

pub(super) static TA: TaskWords = TaskWords {
    title: "ta-ta-ta",
    say: "Say \"ta-ta-ta\" as fast and as evenly as you can, until I say stop.",
    ..ALL
};

pub(super) static KA: TaskWords = TaskWords {
    title: "ka-ka-ka",
    say: "Say \"ka-ka-ka\" as fast and as evenly as you can, until I say stop.",
    ..ALL
};

pub(super) static PA_TA_KA: TaskWords = TaskWords {
    title: "pa-ta-ka",
    say: "Say \"pa-ta-ka, pa-ta-ka\" as fast and as evenly as you can, until I say stop.",
    counts: ("tap", "taps"),
    asks: &[
        choice(
            "each-tap",
            "One tap for each",
            &[("syllable", "syllable"), ("sequence", "pa-ta-ka")],
        ),
        choice(
            "how",
            "How long?",
            &[
                ("5s", "5 seconds"),
                ("8s", "8"),
                ("10s", "10"),
                ("15s", "15"),
                ("by-count", "10 times, then Stop"),
            ],
        ),
        SOUND,
    ],
    ..ALL
};
