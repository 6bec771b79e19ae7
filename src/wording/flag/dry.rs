//! Sentences about dry swallows.

use crate::clinical::findings::fact::DryFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &DryFact, _flag: &Flag) -> String {
    match *fact {}
}
