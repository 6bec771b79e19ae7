//! Why a trial is kept and not scored: nothing is invented for it.

use serde::Serialize;

use crate::measure::time::{Doubt, Millis};

/// What was answered of a trial that could not even be begun.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Unbegun {
    /// It could not be done.
    CouldNot,
    /// No voice came.
    NoVoice,
}

/// Why a trial is not scored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Unscored {
    /// It could not be begun.
    Unbegun(Unbegun),
    /// The screen was ended while it ran.
    ScreenEnded,
    /// Something speaks against its time.
    Doubted(Doubt),
    /// Start and stop are the same moment.
    NoTime,
    /// It was stopped before the time was up.
    CutShort,
    /// It was heard, and nobody timed it.
    NotTimed,
    /// Nobody said how it sounded.
    SoundNotSaid,
    /// So many others with a time came before it, and no more are scored.
    AfterTheFirst(usize),
    /// It was timed, and the highest number was not said.
    NumberNotSaid(Millis),
    /// It was timed, and what was seen of the bubbles was not said.
    BubblesNotSaid(Millis),
}
