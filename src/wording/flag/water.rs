//! Sentences about the 90 mL of water.

use crate::clinical::findings::fact::WaterFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &WaterFact, _flag: &Flag) -> String {
    match *fact {}
}
