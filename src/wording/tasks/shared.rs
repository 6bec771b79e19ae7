//! Questions that several tasks ask in the same words.

use crate::wording::tasks::task_words::{Ask, choice, free, number};

/// What a voice may sound like around a trial by mouth.
pub(super) const VOICES: &[(&str, &str)] = &[
    ("clear", "Clear"),
    ("wet", "Wet"),
    ("hoarse", "Hoarse"),
    ("breathy", "Breathy"),
    ("weak", "Weak"),
    ("none", "None"),
    RETIRED_VOICE,
];

/// As earlier versions asked it: records have it, and it is offered no more.
pub const RETIRED_VOICE: (&str, &str) = ("other", "Other, or no voice");

/// The words of a choice that stands here; none for one that this version does not know.
pub fn choice_of(question: &str, choice: &str) -> Option<&'static str> {
    SHARED
        .iter()
        .find(|ask| ask.id == question)?
        .words_of(choice)
}

/// All of them. A task that asks one of them in other words has those among its own.
pub static SHARED: &[Ask] = &[
    choice("voice-before", "Voice before", VOICES),
    choice("voice-after", "Voice after: say \"ah\" again", VOICES),
    choice(
        "watched-through",
        "The app was not on the screen for all of the 60 seconds. Did you watch?",
        &[("yes", "I watched; only the phone was dark"), ("no", "No")],
    ),
    number(
        "lowest-spo2",
        "Lowest SpO2 since it was given, if the oximeter stayed on",
        "%",
    ),
    choice(
        "not-valid",
        "Not given?",
        &[
            ("refused", "Did not want to"),
            ("not-now", "Not suitable now"),
        ],
    ),
    choice(
        "watch-cut",
        "Why? The screen stays incomplete where no sign decided it.",
        &[
            ("sign", "A sign decided already"),
            ("called-away", "Called away"),
            ("wish", "Person's wish"),
        ],
    ),
    free("remark", "Remark on this trial. No names."),
    choice(
        "awake-asleep",
        "Awake or asleep? (under 3 years)",
        &[("awake", "Awake, calm"), ("asleep", "Asleep")],
    ),
    // Offered in the pad's stead, without a question.
    choice(
        "could-not",
        "",
        &[("no-voice", "No voice came"), ("could-not", "Could not")],
    ),
];
