//! Sentences about repeated syllables.

use crate::clinical::findings::fact::SyllablesFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &SyllablesFact, _flag: &Flag) -> String {
    match *fact {}
}
