//! What was asked, counted, read or heard, and can be missing or too old when something is given.

use serde::Serialize;

use crate::clinical::knowledge::gate_items::Group;

/// What was asked, counted, read or heard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Answered {
    /// A group of the gate.
    Group(Group),
    /// The breaths.
    Breaths,
    /// Oxygen saturation.
    Saturation,
    /// The voice before a trial.
    Voice,
}

impl Answered {
    /// Whether it is a reading of the breathing.
    pub fn is_of_the_breathing(self) -> bool {
        matches!(self, Answered::Breaths | Answered::Saturation)
    }
}
