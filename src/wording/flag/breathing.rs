//! Sentences about breaths and oxygen saturation before a trial.

use crate::clinical::findings::fact::BreathingFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &BreathingFact, _flag: &Flag) -> String {
    match *fact {}
}
