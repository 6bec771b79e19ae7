//! The longest "ah", s and z, in words.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice};

const ALL: TaskWords = TaskWords {
    steps: &[
        "Say it the same way each time, and give no other help: wording and coaching move the time.",
        "Touch the pad when the sound starts, touch it again when it ends.",
        "Up to three trials, with a rest between.",
    ],
    for_whom: "Anybody who can hold a sound on request. Lines are drawn for adults; children are \
               put beside children, and no s/z line is drawn for them.",
    start: "Touch when it starts",
    end: Some("Touch when it ends"),
    ..PLAIN
};

const RATIO_CAVEAT: &str = "Read as the ratio of s to z. A usual ratio rules nothing out.";

pub(super) static AH: TaskWords = TaskWords {
    title: "Longest \"ah\"",
    say: "Take a deep breath and say \"ah\" for as long as you can, in your usual voice.",
    caveat: "The spread among healthy people is wide; height, frailty and the wording of the \
             request move it.",
    asks: &[choice(
        "voice",
        "Voice",
        &[
            ("clear", "Clear"),
            ("wet", "Wet"),
            ("breathy", "Breathy"),
            ("hoarse", "Hoarse"),
            ("strained", "Strained"),
        ],
    )],
    ..ALL
};

pub(super) static S: TaskWords = TaskWords {
    title: "Longest s",
    say: "Take a deep breath and say \"sss\" for as long as you can.",
    caveat: RATIO_CAVEAT,
    ..ALL
};

pub(super) static Z: TaskWords = TaskWords {
    title: "Longest z",
    say: "Take a deep breath and say \"zzz\" for as long as you can, with your voice on.",
    caveat: RATIO_CAVEAT,
    ..ALL
};
