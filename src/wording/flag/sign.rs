//! Sentences about a sign seen in a trial by mouth.

use crate::clinical::findings::fact::SignFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &SignFact, _flag: &Flag) -> String {
    match *fact {}
}
