//! How thick a drink is, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, free, number};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Drink thickness",
    steps: &[
        "A 10 mL slip-tip syringe whose 10 mL scale is 61.5 mm long; without its plunger.",
        "The drink as it is served, at that temperature. Cover the tip, fill to 10 mL.",
        "Press start: 3, 2, 1. At \"go\" uncover the tip.",
        "At the tone, after 10 seconds, cover the tip and read what is left.",
    ],
    caveat: "The level is that of this drink, as it was when it was measured. It is no advice what \
             anybody is to be given: that is the clinician's to say.",
    for_whom: "Drinks that run through a syringe, not people: it says nothing about who may have them.",
    start: "Start: 3, 2, 1",
    asks: &[
        number("left-of-ten", "Left in the syringe", "mL"),
        free("drink", "Which drink? For the record."),
    ],
    ..PLAIN
};
