//! Sentences about small sips of water, the 3 mL under the tongue among them.

use crate::clinical::findings::fact::SipsFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &SipsFact, _flag: &Flag) -> String {
    match *fact {}
}
