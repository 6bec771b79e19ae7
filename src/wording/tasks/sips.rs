//! Small sips of water, in words.

use crate::wording::tasks::shared::VOICES;
use crate::wording::tasks::task_words::{PLAIN, TaskWords, choice};

pub(super) static WORDS: TaskWords = TaskWords {
    title: "Small sips of water",
    steps: &[
        "Upright, mouth cleared of saliva, fingers on the larynx.",
        "3 mL: from a syringe, under the tongue. Then ask for two more dry swallows within 30 seconds.",
        "Touch the pad at lip contact, touch it again when the swallow is felt. No swallow: press the sign.",
        "At the first sign stop: no further sip. It is pressed at any time of the minute after.",
        "Hear the voice, then make the next sip ready while the watch runs. It is given when the minute is over.",
    ],
    say: "Hold the water in your mouth, then swallow it in one go.",
    caveat: "Sizes and repeats are local policy. A cough at once or within one minute counts, a \
             changed voice too (published: DAN06T, adults after stroke). Silent aspiration is not \
             seen.",
    for_whom: "Adults: the studies of small sips and of the minute after them are in adults after stroke. For a child the clinician decides, and says why.",
    start: "Lip contact",
    end: Some("Swallow felt"),
    asks: &[
        choice("voice-after", "Voice after: say \"ah\"", VOICES),
        choice(
            "extra-swallows",
            "Two more dry swallows within 30 seconds?",
            &[("2", "Both"), ("1", "One"), ("0", "None")],
        ),
        choice(
            "residue",
            "Residue in the mouth?",
            &[("no", "None"), ("yes", "Residue")],
        ),
    ],
    ..PLAIN
};
