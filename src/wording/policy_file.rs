//! What is wrong with a policy file, in one sentence that names the place.

use std::fmt;

use crate::clinical::knowledge::policy::file::{MOST_BYTES, VERSION};
use crate::clinical::knowledge::policy::{Policy, PolicyFileError};

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
