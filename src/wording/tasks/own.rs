//! The clinician's own trials, in words.

use crate::clinical::knowledge::levels::{drink, food};
use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice, free, number};

/// A level of the framework by its own name.
const fn level(name: Option<&'static str>) -> &'static str {
    match name {
        Some(name) => name,
        None => "",
    }
}

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Own trials",
    steps: &[
        "Say once what is given and how. It is taken over for the trials that follow.",
        "Touch the pad when it is given, touch it again at the last swallow: two presses a trial.",
        "A sign is pressed at any time; it is that of the newest trial, until you say that it was the one before.",
        "Each trial is watched for 60 seconds. The next may begin before.",
    ],
    caveat: "Levels by the framework's own names, as you picked them. What was swallowed without a \
             sign says nothing about another consistency. Silent aspiration is not seen.",
    for_whom: "Anybody to whom the clinician decides to give it: no published rule covers what is chosen.",
    start: "Given",
    end: Some("Last swallow"),
    asks: &[
        choice(
            "own-level",
            "What is given? Drinks 0 to 4, food 3 to 7",
            &[
                ("d0", level(drink(0))),
                ("d1", level(drink(1))),
                ("d2", level(drink(2))),
                ("d3", level(drink(3))),
                ("d4", level(drink(4))),
                ("f3", level(food(3))),
                ("f4", level(food(4))),
                ("f5", level(food(5))),
                ("f6", level(food(6))),
                ("f7", level(food(7))),
            ],
        ),
        free("own-what", "In your own words, or what exactly"),
        choice(
            "own-amount",
            "How much?",
            &[
                ("teaspoon", "Teaspoon"),
                ("mouthful", "Sip or bite"),
                ("5", "5 mL"),
                ("10", "10 mL"),
                ("20", "20 mL"),
                ("free", "As wanted"),
            ],
        ),
        number("own-ml", "or so many millilitres", "mL"),
        choice(
            "own-by",
            "By",
            &[
                ("spoon", "Spoon"),
                ("cup", "Cup"),
                ("straw", "Straw"),
                ("self", "Self-fed"),
                ("syringe", "Syringe"),
            ],
        ),
        choice(
            "own-posture",
            "Posture",
            &[
                ("upright", "Upright"),
                ("reclined", "Reclined"),
                ("chin-down", "Chin down"),
                ("turned-left", "Head turned left"),
                ("turned-right", "Head turned right"),
                ("side", "Lying on the side"),
            ],
        ),
        choice(
            "own-strategy",
            "Strategy",
            &[
                ("none", "No strategy"),
                ("slow", "Small, one at a time"),
                ("twice", "Two swallows each"),
                ("effort", "Effortful swallow"),
                ("breath", "Breath held first"),
                ("wash", "Drink after food"),
            ],
        ),
        free("own-strategy-words", "or another strategy"),
    ],
    ..PLAIN
};
