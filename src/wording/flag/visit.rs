//! Sentences about the visit as a whole: person, record, what was gone past.

use crate::clinical::findings::fact::VisitFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &VisitFact, _flag: &Flag) -> String {
    match *fact {}
}
