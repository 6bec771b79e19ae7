//! Sentences about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.

use crate::clinical::findings::fact::ByMouthFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &ByMouthFact, _flag: &Flag) -> String {
    match *fact {}
}
