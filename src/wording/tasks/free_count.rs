//! A count of anything, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Just count something",
    caveat: "A count and a time, compared with nothing.",
    for_whom: "Whatever is to be counted: no rule reads it.",
    counts: ("tap", "taps"),
    start: "Start",
    end: Some("Stop"),
    ..PLAIN
};
