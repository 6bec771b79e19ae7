//! Facts about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.

use serde::Serialize;

use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;
use crate::measure::time::{Doubt, Millis};

/// What was heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Voice {
    /// Clear.
    Clear,
    /// Wet.
    Wet,
    /// Hoarse.
    Hoarse,
    /// Breathy.
    Breathy,
    /// Weak.
    Weak,
    /// No voice came.
    Absent,
    /// Something else, or none: as earlier versions asked it.
    Other,
}

impl Voice {
    /// By the id of its answer.
    pub fn of(id: &str) -> Voice {
        match id {
            "clear" => Voice::Clear,
            "wet" => Voice::Wet,
            "hoarse" => Voice::Hoarse,
            "breathy" => Voice::Breathy,
            "weak" => Voice::Weak,
            "none" => Voice::Absent,
            _ => Voice::Other,
        }
    }

    /// Whether it is anything but clear.
    pub fn is_changed(self) -> bool {
        self != Voice::Clear
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
    /// There was no voice before it: one that is not there can't be heard to change.
    NoVoiceBefore,
}

/// What an oxygen saturation in a trial means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Came {
    /// So low that nothing would be given.
    Low,
    /// It fell, and a sign was seen in the trial.
    WithSign,
    /// It fell, and breathing is faster since.
    BreathesFaster,
    /// It fell.
    Fell,
    /// Neither.
    Steady,
}

/// When the lowest oxygen saturation of a trial was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum WhenRead {
    /// During the trial.
    During,
    /// After it, before the next.
    After,
    /// After a meal that was watched.
    AfterMeal,
}

/// What a rule says about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum ByMouthFact {
    /// A sign that was pressed just after the watch, and seen within it as the clinician says.
    SeenWithin {
        /// The sign.
        sign: Sign,
        /// Pressed so long after the last swallow.
        after: Millis,
    },
    /// A sign that was pressed and taken back long after.
    TakenBack {
        /// The sign.
        sign: Sign,
        /// So long after its press; none where that can't be known.
        after: Option<Millis>,
    },
    /// A sign so long after the last swallow that the next may have been in the mouth already, and
    /// nobody said.
    NextInMouth {
        /// The sign.
        sign: Sign,
        /// So long after the last swallow.
        after: Millis,
    },
    /// The voice was wet before something that was then not given.
    WetBefore,
    /// What speaks against the time of a watch.
    WatchDoubt(Doubt),
    /// The oxygen saturation of a trial, in percent.
    Saturation {
        /// Before it; none where it was not read.
        before: Option<f64>,
        /// The lowest.
        lowest: f64,
        /// When that was read.
        read: WhenRead,
        /// What that means.
        came: Came,
    },
    /// The task was studied in adults, and this is a child.
    StudiedInAdults(TaskId),
}
