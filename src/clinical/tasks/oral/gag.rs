//! The gag: looked at by some, and never a reason for anything by itself.

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::oral::Gag;
use crate::clinical::knowledge::rules;

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
