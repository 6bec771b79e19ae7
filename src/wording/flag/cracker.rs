//! Sentences about the cracker.

use crate::clinical::findings::fact::CrackerFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &CrackerFact, _flag: &Flag) -> String {
    match *fact {}
}
