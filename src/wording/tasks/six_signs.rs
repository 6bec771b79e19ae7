//! The signs after a stroke, in words. It has a page of its own and no pad.

use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Signs after a stroke",
    caveat: "Two or more are a reason to refer. Fewer clear nobody: this is never \"no sign seen\".",
    for_whom: "Adults after a stroke; others only where the clinician counts them in.",
    asks: &[
        choice(
            "voice",
            "Voice changed in quality, pitch or loudness?",
            &[("not-found", "No"), ("found", "Yes")],
        ),
        choice(
            "speech",
            "Speech slurred?",
            &[("not-found", "No"), ("found", "Yes")],
        ),
        choice(
            "gag",
            "Gag, both sides",
            &[("not-found", "Present"), ("found", "Weak or absent")],
        ),
        choice(
            "cough",
            "Cough on request",
            &[("not-found", "Strong"), ("found", "Weak, spoken or none")],
        ),
    ],
    ..PLAIN
};
