//! What a visit goes by.

use crate::clinical::knowledge::task::TaskId;

/// What a visit goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Called<'a> {
    /// By the label it was given.
    Label(&'a str),
    /// By what was counted or timed without a visit; none where it was just a count.
    Count(Option<TaskId>),
}
