//! What it costs to leave a task out, in words.

use crate::record::skip::Cost;
use crate::wording::tasks;

/// One line; empty where it costs no verdict.
pub fn costs(cost: Cost) -> String {
    let waits = cost.waits.map(|task| tasks::of(task).title);
    match (waits, cost.incomplete) {
        (Some(waits), true) => {
            format!("Needed before: {waits}. Without it the screen stays incomplete.")
        }
        (Some(waits), false) => format!("Needed before: {waits}."),
        (None, true) => "Without it the screen stays incomplete.".to_owned(),
        (None, false) => String::new(),
    }
}
