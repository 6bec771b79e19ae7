//! Facts about a meal or drink that is watched.

use serde::Serialize;

use crate::clinical::findings::trial::MarkKind;
use crate::measure::time::Millis;

/// What a rule says about a meal or drink that is watched.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum MealFact {
    /// A tally.
    Tally {
        /// How long.
        lasted: Lasted,
        /// What was pressed, and how often.
        pressed: Vec<(MarkKind, usize)>,
    },
}

/// How long something lasted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Lasted {
    /// So long.
    For(Millis),
    /// It has an end, and the clocks can't say how long it was.
    NotKnown,
    /// It was not ended.
    NotEnded,
}
