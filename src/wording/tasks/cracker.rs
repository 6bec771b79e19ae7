//! The timed cracker, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice, free};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Timed cracker",
    steps: &[
        "Upright, one plain cracker. You sit where you see jaw and larynx from the side.",
        "The first touch is the first bite, and starts the time. Then a touch for each chew, bite and swallow.",
        "End it when the mouth is empty and the last swallow is over: ask to see the mouth.",
        "At a sign: press it; nothing more is eaten. Watch for 60 seconds.",
    ],
    say: "Eat this cracker as fast as is comfortable for you. Show me your mouth when it is empty.",
    caveat: "Reported, not judged: there is no published line between pass and fail. Compare only \
             with the same cracker.",
    for_whom: "Adults with teeth, or dentures that fit, without an allergy to it, whose diet order allows it and whose drinks went well. No values for children are read here.",
    counts: ("bite", "bites"),
    start: "First bite",
    end: Some("Mouth empty"),
    asks: &[
        choice(
            "allergy",
            "Allergy to anything in it?",
            &[("fine", "No"), ("against", "Yes")],
        ),
        choice(
            "teeth",
            "Teeth, or dentures that are in and fit?",
            &[("fine", "Yes"), ("against", "No")],
        ),
        choice(
            "diet-order",
            "Does the diet order allow it?",
            &[("fine", "Yes, or none in force"), ("against", "No")],
        ),
        free(
            "which",
            "Which cracker? Figures of different ones are not mixed.",
        ),
    ],
    ..PLAIN
};
