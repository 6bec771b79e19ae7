//! Words about the six signs outside the sentence of a flag.

use crate::clinical::findings::fact::{OfSix, Tested};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::six_signs::recorded::{Heard, Whence};
use crate::clinical::tasks::water;
use crate::wording::words::small;
use crate::wording::{oral_items, tasks};

/// Where an answer of the examination comes from.
const MOUTH: &str = "from the examination of the mouth";

/// The heading of a sign on its page.
pub const fn heading(sign: OfSix) -> &'static str {
    match sign {
        OfSix::Voice => "Changed voice",
        OfSix::Speech => "Slurred speech",
        OfSix::Gag => "Weak or missing gag",
        OfSix::CoughOnRequest => "Weak cough on request",
        OfSix::CoughAfter => "Cough after water",
        OfSix::VoiceAfter => "Changed voice after water",
    }
}

/// A sign within a sentence.
pub(super) const fn name(sign: OfSix) -> &'static str {
    match sign {
        OfSix::Voice => "changed voice",
        OfSix::Speech => "slurred speech",
        OfSix::Gag => "weak or missing gag",
        OfSix::CoughOnRequest => "weak cough on request",
        OfSix::CoughAfter => "cough after the swallow",
        OfSix::VoiceAfter => "changed voice after the swallow",
    }
}

/// "4 of 6 tested".
pub fn tested(tested: Tested) -> String {
    format!("{} of {} tested", tested.tested, tested.of)
}

/// Where something was recorded, and what it was there.
pub fn whence(whence: &Whence) -> String {
    match whence {
        Whence::Here => "asked here".to_owned(),
        Whence::Voice { heard, answer } => voice(*heard, answer),
        Whence::Mouth { item, found } => {
            let name = oral_items::name(item);
            let found = found.map_or_else(
                || "as expected".to_owned(),
                |found| crate::wording::found::words(&found),
            );
            format!("{MOUTH}, {}: {found}", small(name))
        }
        Whence::Measured(flag) => format!("{MOUTH}, {}", flag.reason()),
        Whence::CannotCough => {
            "before you start: cannot cough on request and was not heard to".to_owned()
        }
        Whence::Coughs => "before you start: coughs on request, or was heard to cough".to_owned(),
        Whence::Distorted(task) => {
            format!("{}: sounded distorted", small(tasks::of(*task).title))
        }
        Whence::Water { task, seen } => format!(
            "in \"{}\": {}",
            small(tasks::of(*task).title),
            if *seen { "seen" } else { "not seen" }
        ),
    }
}

/// Several of them in one line.
pub fn whences(all: &[Whence]) -> String {
    all.iter().map(whence).collect::<Vec<_>>().join("; ")
}

fn voice(heard: Heard, answer: &str) -> String {
    let (place, task, question) = match heard {
        Heard::LongestAh => ("in the longest \"ah\"", TaskId::LongestAh, "voice"),
        Heard::BeforeWater => ("before the water", TaskId::Water90, water::VOICE_BEFORE),
    };
    let words = tasks::choice(task, question, answer);
    let words = words.map_or_else(|| answer.to_owned(), small);
    format!("voice {place}: {words}")
}
