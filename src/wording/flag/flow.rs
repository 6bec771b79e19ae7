//! Sentences about how thick a drink is.

use crate::clinical::findings::fact::FlowFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &FlowFact, _flag: &Flag) -> String {
    match *fact {}
}
