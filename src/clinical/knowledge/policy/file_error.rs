//! What is wrong with a policy file, and where.

use crate::clinical::knowledge::policy::{Order, Setting};

/// The version of the format.
pub const VERSION: i64 = 1;

/// Most bytes a policy file has. All settings take about 1 KB.
pub const MOST_BYTES: usize = 64 * 1024;

/// Why a policy file was not taken. The policy in force stays.
#[derive(Clone, Debug)]
pub enum PolicyFileError {
    /// Larger than [`MOST_BYTES`].
    TooLarge,
    /// It ends in the middle: line and column, from 1.
    Cut(usize, usize),
    /// It can't be read as JSON: line and column, from 1.
    Broken(usize, usize),
    /// Readable, but not written as a policy file.
    NotAPolicy,
    /// Written for a newer version of the format.
    Newer(i64),
    /// A key that a policy file does not have, outside the settings.
    UnknownKey(String),
    /// A setting that there is not.
    UnknownSetting(String),
    /// A key that stands there twice.
    Twice(String),
    /// No name, an over-long one, or one with signs that can't be printed.
    Name,
    /// A name like that of Penlight's own policy.
    OurName,
    /// The settings are missing, or are no group of names and values.
    Settings,
    /// A value that a setting does not take.
    Value(&'static Setting),
    /// Two settings that contradict each other.
    Order(&'static Order),
}
