//! What a visit goes by.

use crate::record::called::Called;
use crate::wording::tasks;

/// Its label, or what was counted without a visit.
pub fn called(called: Called<'_>) -> &str {
    match called {
        Called::Label(label) => label,
        Called::Count(Some(task)) => tasks::of(task).title,
        Called::Count(None) => "Count",
    }
}
