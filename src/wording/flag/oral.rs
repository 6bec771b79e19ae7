//! Sentences about face, mouth and throat.

use crate::clinical::findings::fact::OralFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &OralFact, _flag: &Flag) -> String {
    match *fact {}
}
