//! Local policy: every design choice that an organisation may set otherwise.
//!
//! Published figures are not in here and can't be set. The policy used is stored with every visit
//! and named in its handover.
//!
//! ```text
//! settings.rs  every setting with its default, its range and why: the one table
//! kind.rs      what a setting takes; setting.rs: its range, and what belongs together
//! fixed.rs     the design choices that no file changes, each with why
//! stored.rs    a policy within a visit's record
//! file.rs      a policy file, read and written; file_error.rs: what is wrong with one
//! json.rs      the little of JSON that both need
//! ```

use std::fmt;

use crate::measure::time::Millis;

pub mod file;
mod file_error;
mod fixed;
mod json;
mod kind;
mod setting;
mod settings;
mod stored;
mod wording;

pub use file_error::PolicyFileError;
pub use fixed::fixed;
pub use kind::Kind;
pub use setting::{Order, out_of_order};
pub use settings::{Policy, SETTINGS, Setting};
pub use wording::Wording;

impl Policy {
    /// The name of the policy that Penlight ships. No other policy may have it.
    pub const OURS: &'static str = "Penlight default 1";

    /// Most characters the name of a policy has: it stands in every handover.
    pub const MOST_NAME: usize = 60;

    /// How long an answer about a state of the moment stands.
    pub fn moment_stands(&self) -> Millis {
        Millis::from_secs(i64::from(self.ready_minutes) * 60)
    }
}

/// A policy reads as its file.
impl fmt::Debug for Policy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&file::write(self))
    }
}

/// The setting with a key.
pub fn find(key: &str) -> Option<&'static Setting> {
    SETTINGS.iter().find(|setting| setting.key == key)
}

/// The settings in which two policies differ, in the order of the table.
pub fn differing<'a>(
    one: &'a Policy,
    other: &'a Policy,
) -> impl Iterator<Item = &'static Setting> + 'a {
    SETTINGS
        .iter()
        .filter(|setting| (setting.get)(one) != (setting.get)(other))
}
