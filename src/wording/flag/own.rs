//! Sentences about the clinician's own trials.

use crate::clinical::findings::fact::OwnFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &OwnFact, _flag: &Flag) -> String {
    match *fact {}
}
