//! Sentences about the six signs.

use crate::clinical::findings::fact::SixSignsFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &SixSignsFact, _flag: &Flag) -> String {
    match *fact {}
}
