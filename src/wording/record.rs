//! Records in words: why one was not kept or can't be read, and what a visit is called.

use std::fmt;

use crate::record::called::Called;
use crate::record::envelope::{SCHEMA, Unreadable};
use crate::record::store::StoreError;
use crate::record::visit::{Aside, Visit};
use crate::wording::tasks::of;

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            StoreError::Missing => f.write_str("This browser offers no safe storage here."),
            StoreError::Full => f.write_str("The phone has no space left for Penlight."),
            StoreError::Locked => {
                f.write_str("Penlight is open in another window that must be closed first.")
            }
            StoreError::Conflict => f.write_str("This visit was changed in another window."),
            StoreError::Broken(words) => write!(f, "The phone's storage failed: {words}"),
        }
    }
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unreadable::Newer(schema) => write!(
                f,
                "written by a newer Penlight (record version {schema}, this one reads {SCHEMA})"
            ),
            Unreadable::Sealed => f.write_str("locked with a key that is not here"),
            Unreadable::Damaged => f.write_str("damaged"),
        }
    }
}

/// What was set aside, one record a line, each after the reason it could not be read.
pub fn aside_lines(aside: &[Aside]) -> String {
    aside
        .iter()
        .map(|a| format!("# {}\n{}\n", a.why, a.raw))
        .collect()
}

impl fmt::Display for Called {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Called::Label(label) => label,
            Called::Task(task) => of(*task).title,
            Called::Count => "Count",
        })
    }
}

impl Visit {
    /// What it is called, in words.
    pub fn label(&self) -> String {
        self.called().to_string()
    }
}
