//! The gag: looked at by some, and never a reason for anything by itself.

use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::rules;

/// What was seen on touch.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Gag {
    /// On both sides.
    Present,
    /// Weak, or on one side only.
    Weak,
    /// Not there.
    Absent,
    /// Not tested.
    #[default]
    NotTested,
}

impl Gag {
    /// In words for a sentence.
    pub const fn words(self) -> &'static str {
        match self {
            Gag::Present => "gag present",
            Gag::Weak => "gag weak or on one side only",
            Gag::Absent => "no gag",
            Gag::NotTested => "gag not tested",
        }
    }
}

/// What the rule says, whatever the gag: always one note, with the figures.
pub fn judge(gag: Gag) -> Flag {
    rules::GAG_NEVER_DECIDES.flag(
        Level::Note,
        Domain::Mouth,
        format!(
            "{}: decides nothing; it is missing in 37 % of healthy people in one study and in 13 % \
             of adults who swallow well in another",
            gag.words()
        ),
    )
}
