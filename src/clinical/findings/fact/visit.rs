//! Facts about the visit as a whole: person, record, what was gone past.

use serde::Serialize;

use crate::clinical::findings::go_on::GonePast;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::knowledge::task::TaskId;

/// What a rule says about the visit as a whole: person, record, what was gone past. `F` is a flag, as
/// in [`Obstacle`].
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum VisitFact<F> {
    /// Choked, and no trial has the sign.
    Choked,
    /// New weakness was first answered as an emergency, and later otherwise.
    EmergencyChanged,
    /// Entries of the record are missing or can't be read: so many.
    Unread(u32),
    /// The age was not given.
    AgeNotGiven,
    /// Something was given after going on past what was in the way.
    GonePast {
        /// What was given.
        given: TaskId,
        /// What was in the way.
        past: Past<F>,
        /// Who decided it, and why.
        gone: GonePast,
    },
}

/// What was gone past.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum Past<F> {
    /// As it stood.
    Thing(Box<Obstacle<F>>),
    /// In the words of an earlier version, which kept nothing else.
    Words(String),
    /// Nobody knows what.
    NotKnown,
}
