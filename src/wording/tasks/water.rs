//! 90 mL of water, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice, number};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "90 mL of water without a pause",
    steps: &[
        "Upright, 90 mL of plain water in a cup; straw allowed; you may hold the cup.",
        "Voice first: a few seconds of \"ah\" and a short sentence.",
        "Press at first lip contact, then at the last swallow. Swallow taps are welcome, not needed.",
        "At a cough, choke, drool, wet voice or distress: stop, take the cup away, press the sign.",
        "Watch for 60 seconds, then hear the voice again.",
    ],
    say: "Drink all of this water, steadily, without stopping.",
    caveat: "How well it finds aspiration depends on who is tested: sensitivity 96.5 % in 3,000 \
             mixed referrals (published: SL08), 55.2 % in ALS (published: ALS23). Silent \
             aspiration is not seen.",
    for_whom: "People from 2 years on, or from the age of the local policy, who are awake, upright and may have thin drinks.",
    counts: ("swallow", "swallows"),
    start: "First lip contact",
    end: Some("Last swallow"),
    asks: &[
        choice(
            "cup",
            "The cup",
            &[
                ("one-go", "Empty, in one go"),
                ("paused", "Empty, with a pause"),
                ("some-left", "Some left"),
            ],
        ),
        number("left", "Left in the cup", "mL"),
    ],
    ..PLAIN
};
