//! What is wrong with a policy file, in one sentence that names the place.

use std::fmt;

use crate::clinical::knowledge::policy::settings::Policy;
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

/// A key of a stranger's file, short enough for a line and without anything that can't be shown.
fn shown(key: &str) -> String {
    key.chars().filter(|c| !c.is_control()).take(40).collect()
}

impl fmt::Display for PolicyFileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use PolicyFileError::*;
        match self {
            TooLarge => write!(
                f,
                "The file is too large: a policy file has at most {} KB.",
                MOST_BYTES / 1024
            ),
            Cut(line, column) => write!(
                f,
                "The file ends too soon, in line {line} at column {column}: it is not complete."
            ),
            Broken(line, column) => write!(
                f,
                "Line {line}, column {column} can't be read: it is not JSON as a policy file is."
            ),
            NotAPolicy => write!(
                f,
                "This is not a policy file: it has no \"penlight_policy\": {VERSION} in it."
            ),
            Newer(version) => write!(
                f,
                "\"penlight_policy\" is {version}: the file is for a newer Penlight. This one reads \
                 version {VERSION}."
            ),
            UnknownKey(key) => write!(
                f,
                "\"{}\" is not part of a policy file. It has \"penlight_policy\", \"name\" and \
                 \"settings\".",
                shown(key)
            ),
            UnknownSetting(key) => write!(
                f,
                "\"{}\" in \"settings\" is not a setting. All settings stand on this page and \
                 in a file saved from it.",
                shown(key)
            ),
            Twice(key) => write!(f, "\"{}\" stands there twice. Keep one.", shown(key)),
            Name => write!(
                f,
                "\"name\" is a text of 1 to {} characters in one line.",
                Policy::MOST_NAME
            ),
            OurName => write!(
                f,
                "\"name\" may not begin like that of Penlight's own policy. Give this one a name of \
                 its own."
            ),
            Settings => write!(
                f,
                "\"settings\" must be there: names and values between {{ and }}."
            ),
            Value(setting) => write!(
                f,
                "\"{}\" in \"settings\": allowed is {}.",
                setting.key,
                setting.allowed()
            ),
            Order(order) => write!(
                f,
                "\"{}\" in \"settings\" must {} than \"{}\".",
                order.lower,
                if order.or_same {
                    "not be higher"
                } else {
                    "be lower"
                },
                order.higher
            ),
        }
    }
}
