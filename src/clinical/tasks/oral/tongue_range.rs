//! How far the tongue moves: the one finding of the mouth that goes with aspiration in a large
//! study (LED13). Odds, not a rule.

use crate::clinical::findings::fact::OralFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::rules;

/// What the rule says. `incomplete` tells whether the tongue fell short in some direction.
pub fn judge(incomplete: Looked) -> Vec<Flag> {
    if !incomplete.is_present() {
        return Vec::new();
    }
    vec![rules::TONGUE_RANGE.flag(Level::Note, Domain::Mouth, OralFact::TongueRange)]
}
