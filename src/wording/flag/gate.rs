//! Sentences about what is asked before anything is given.

use crate::clinical::findings::fact::GateFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &GateFact, _flag: &Flag) -> String {
    match *fact {}
}
