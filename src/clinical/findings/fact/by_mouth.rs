//! Facts about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.

use serde::Serialize;

/// What was heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Voice {
    /// Clear.
    Clear,
    /// Wet.
    Wet,
    /// Hoarse.
    Hoarse,
    /// Something else, or none.
    Other,
}

impl Voice {
    /// By the id of its answer.
    pub fn of(id: &str) -> Voice {
        match id {
            "clear" => Voice::Clear,
            "wet" => Voice::Wet,
            "hoarse" => Voice::Hoarse,
            _ => Voice::Other,
        }
    }

    /// Wet or hoarse: the two the rule names.
    pub fn is_sign(self) -> bool {
        matches!(self, Voice::Wet | Voice::Hoarse)
    }
}

/// Why something was not given: the id of the answer, as it was recorded.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WhyNot(pub String);

/// How the watch was ended early.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub enum WatchCut {
    /// Somebody said so: the id of the reason, where one was given.
    Said(Option<String>),
    /// It has an end, but how long it was can't be known.
    LengthNotKnown,
}

/// What is missing of a watch that ran out while the app was off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Unwatched {
    /// Somebody said that it was not watched.
    Not,
    /// Nobody said whether it was.
    NotSaid,
}

/// What is still missing of a trial that was given.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub enum Missing {
    /// Its end was not marked.
    End,
    /// The watch is not over.
    WatchRuns,
    /// The watch was ended early.
    WatchCut(WatchCut),
    /// The watch ran out while the app was off.
    Unwatched(Unwatched),
    /// What is asked after it is open.
    Answers,
    /// The voice before it: one that nobody heard can't be heard to have changed.
    VoiceBefore,
}

/// What a rule says about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum ByMouthFact {}
