//! A meal at the table, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "At the table",
    steps: &[
        "Watch what is ordered for this person; nothing is offered for the sake of the tally.",
        "A touch for each swallow and, if you like, each breath; a sign when you see or hear it.",
        "Lock the phone or leave the page: the time runs on, what you press is kept.",
        "End it a minute after the last mouthful.",
    ],
    caveat: "Counted as pressed, compared with nothing. A tally without a sign clears nobody.",
    for_whom: "Anybody at any age who eats or drinks what is ordered: it is watched, not given.",
    counts: ("swallow", "swallows"),
    start: "Start the tally",
    end: Some("End the tally"),
    ..PLAIN
};
