//! Breathing before water, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice, number};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Breaths in 60 seconds",
    steps: &[
        "Watch the chest or the blanket. Do not say that you count.",
        "Tap each breath in. The count ends by itself after 60 seconds.",
    ],
    say: "Rest quietly for a minute.",
    more: "A rate counted elsewhere, SpO2, oxygen",
    caveat: "SpO2 is recorded for respiratory safety. A fall does not show, and a steady value \
             does not rule out, aspiration (published: BRI18).",
    for_whom: "Everybody who is to be given something by mouth. The bands are for adults; under 16 years the local chart for the age is used.",
    counts: ("breath", "breaths"),
    start: "Start",
    asks: &[
        number(
            "rate",
            "Or enter a rate counted for 60 seconds elsewhere",
            "breaths per minute",
        ),
        number("spo2", "SpO2, if an oximeter is on", "%"),
        choice(
            "oxygen",
            "On air or oxygen?",
            &[("air", "Air"), ("oxygen", "Oxygen")],
        ),
        number(
            "target",
            "Lowest SpO2 of a prescribed target, if there is one",
            "%",
        ),
        choice(
            "confirmed-target",
            "Respiratory failure with raised carbon dioxide confirmed, and 88 to 92 % prescribed?",
            &[("yes", "Both, yes"), ("no", "No")],
        ),
    ],
    ..PLAIN
};
