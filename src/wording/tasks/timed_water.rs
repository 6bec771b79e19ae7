//! The timed cup of water, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice, number};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Timed cup of water",
    steps: &[
        "Only after small sips were clear. Upright, water in a cup, fingers on the larynx.",
        "Touch the pad at lip contact, then at each swallow.",
        "\"Larynx at rest\" after the last swallow: a breath, a word or the mouth opening tells.",
        "At a cough, choke, drool, wet voice or distress: stop, take the cup away, press the sign.",
    ],
    say: "Drink this water as quickly as is comfortable.",
    caveat: "Speed is efficiency: in stroke no link between speed and aspiration was seen \
             (published: OSA13). It is lower in women and falls with age; different volumes are not \
             compared (published: NAT92, DOD20). No value predicted from age, sex and height is \
             shown: the equation was not seen.",
    for_whom: "Adults in whom small sips were clear: the line of 10 mL a second is from adults.",
    counts: ("swallow", "swallows"),
    start: "Lip contact",
    end: Some("Larynx at rest"),
    asks: &[
        choice(
            "cup-size",
            "How much is in the cup?",
            &[
                ("100", "100 mL"),
                ("150", "150 mL"),
                ("other", "Another amount"),
            ],
        ),
        number("cup-other", "Amount", "mL"),
        choice(
            "cup-left",
            "The cup",
            &[("empty", "Empty"), ("some-left", "Some left")],
        ),
        number("cup-left-ml", "Left in it", "mL"),
        number("cup-swallows", "How many swallows were there?", "swallows"),
    ],
    ..PLAIN
};
