//! Counts that were made elsewhere, in words.

use crate::clinical::knowledge::signed::Signed;
use crate::clinical::knowledge::task::TaskId;
use crate::wording::person::signed;
use crate::wording::tasks::of;
use crate::wording::words::small;

/// "attached to this visit at 14:05 by the ...: watched meal, counted at 13:20". `detached`: when and by
/// whom it was taken out again.
pub fn told(
    task: TaskId,
    counted: Option<String>,
    (at, by): (String, &Signed),
    detached: Option<(String, &Signed)>,
) -> String {
    let who = |by: &Signed| signed(by.role, by.initials.as_ref());
    let counted = counted.map_or_else(String::new, |at| format!(", counted at {at}"));
    let what = format!("{}{counted}", small(of(task).title));
    let attached = format!("attached to this visit at {at} by the {}: {what}", who(by));
    match detached {
        None => attached,
        Some((at, by)) => {
            let out = format!("detached at {at} by the {}; it does not count", who(by));
            format!("{attached}; {out}")
        }
    }
}
