//! A place on the way through a visit.

use crate::clinical::findings::gate::Group;
use crate::clinical::knowledge::oral::Region;
use crate::clinical::knowledge::task::TaskId;

/// A place on the way through a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// All of the visit.
    Overview,
    /// A group of the gate.
    Gate(Group),
    /// What the gate found.
    GateResult,
    /// A region of the examination of face, mouth and throat.
    Oral(Region),
    /// A task.
    Task(TaskId),
    /// Choking.
    Choking,
    /// The decision.
    Decision,
}
