//! Dry swallows, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Dry swallows in 30 seconds",
    steps: &[
        "Sitting, neck a little bent, relaxed. Moisten a dry mouth first.",
        "Two finger pads on the throat: hyoid, and thyroid prominence.",
        "Tap each time the prominence passes the finger and comes back down. No half lifts.",
        "No prompting. The count ends by itself.",
    ],
    say: "Swallow your saliva as many times as you can. I will tell you when to stop.",
    caveat: "Studies of its sensitivity disagree widely; a dry mouth lowers the count. Silent \
             aspiration is not seen.",
    for_whom: "Adults who can follow the request and whose larynx can be felt: its studies are in adults. The youngest age is local policy.",
    counts: ("swallow", "swallows"),
    start: "Start",
    asks: &[choice(
        "not-valid",
        "Not valid?",
        &[
            ("not-felt", "Could not feel the larynx"),
            ("not-followed", "Could not follow"),
            ("too-dry", "Mouth too dry"),
            ("neck", "Neck surgery or collar"),
            ("refused", "Did not want to"),
        ],
    )],
    ..PLAIN
};
