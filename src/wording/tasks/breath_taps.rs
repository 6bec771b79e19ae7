//! Breathing by taps, and the count of 30 seconds, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords};

pub(super) static TAPS: TaskWords = TaskWords {
    another_way: "By taps",
    title: "Breathing by taps",
    steps: &[
        "Watch the chest or the blanket. Do not say that you count.",
        "Touch the pad at each breath in, at the same point of the breath. Stop when it says even.",
        "Uneven: count for 60 seconds.",
    ],
    caveat: "60 over the middle interval. Tried with videos of children (published: KAR14); in \
             adults it never replaces the count of 60 seconds.",
    for_whom: "Children, and adults for whom a minute is counted besides: in adults taps alone clear nobody.",
    counts: ("breath", "breaths"),
    start: "Touch at a breath in",
    end: Some("Stop"),
    ..PLAIN
};

pub(super) static COUNT_30: TaskWords = TaskWords {
    another_way: "30 seconds only",
    title: "Breaths in 30 seconds",
    steps: &["Tap each breath in. The count ends by itself; it is doubled."],
    caveat: "Steps of 2 a minute. It missed a quarter of the rates that are \
             highest on an early-warning scale (published: RIM19): count for 60 seconds where it \
             matters.",
    for_whom: "Where a whole minute can't be had: it clears no adult.",
    counts: ("breath", "breaths"),
    start: "Start",
    ..PLAIN
};
