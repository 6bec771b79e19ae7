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
//!              (words: crate::wording::policy, crate::wording::policy_file)
//! json.rs      the little of JSON that both need
//! ```

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
pub use kind::{Kind, Unit};
pub use setting::{Order, out_of_order};
pub use settings::{Policy, SETTINGS, Setting, differing, find};
pub use wording::Wording;
