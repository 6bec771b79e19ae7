//! How a source was seen, in words.

use crate::clinical::knowledge::source::Mark;

impl Mark {
    /// The mark in the words the app shows.
    pub const fn words(self) -> &'static str {
        match self {
            Mark::Published => "published",
            Mark::Secondary => "published, secondary copy",
            Mark::Derived => "derived from published figures",
            Mark::LocalPolicy => "local policy",
            Mark::CommonPractice => "common practice",
            Mark::FromMemory => "from memory, background only",
        }
    }
}
