//! Sentences about counting on one breath, breath hold, 5 cm of water for 5 seconds.

use crate::clinical::findings::fact::BreathFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &BreathFact, _flag: &Flag) -> String {
    match *fact {}
}
