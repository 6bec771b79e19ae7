//! Words about dry swallows outside the sentence of a flag.

use std::fmt::Display;

use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::dry_swallow::WINDOW;
use crate::clinical::tasks::spec::NOT_VALID;
use crate::wording::tasks;
use crate::wording::words::whole_seconds;

/// "30 seconds".
pub(super) fn window() -> String {
    whole_seconds(WINDOW)
}

/// So many in the window: "3 in 30 seconds".
pub fn in_window(what: impl Display) -> String {
    format!("{what} in {}", window())
}

/// The reason for which a count is not valid, by its id.
pub(super) fn not_valid(id: &str) -> &'static str {
    tasks::choice(TaskId::DrySwallow, NOT_VALID, id).unwrap_or("reason not known to this version")
}
