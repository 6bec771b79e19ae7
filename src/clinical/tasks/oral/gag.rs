//! The gag: looked at by some, and never a reason for anything by itself.

use crate::clinical::findings::fact::OralFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::oral::Gag;
use crate::clinical::knowledge::rules;

/// What the rule says, whatever the gag: always one note.
pub fn judge(gag: Gag) -> Flag {
    rules::GAG_NEVER_DECIDES.flag(Level::Note, Domain::Mouth, OralFact::Gag(gag))
}
