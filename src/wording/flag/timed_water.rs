//! Sentences about the timed cup of water.

use crate::clinical::findings::fact::TimedWaterFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &TimedWaterFact, _flag: &Flag) -> String {
    match *fact {}
}
