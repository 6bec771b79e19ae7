//! What was asked, counted, read or heard, and can be missing or too old when something is given.

use serde::Serialize;

use crate::clinical::knowledge::gate_items::Group;
use crate::clinical::knowledge::task::TaskId;

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
    /// The task that read it; none where it was asked.
    pub fn task(self) -> Option<TaskId> {
        match self {
            Answered::Breaths | Answered::Saturation => Some(TaskId::Breathing),
            Answered::Group(_) | Answered::Voice => None,
        }
    }
}
