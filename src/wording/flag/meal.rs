//! Sentences about a meal or drink that is watched.

use crate::clinical::findings::fact::MealFact;
use crate::clinical::findings::flag::Flag;

pub(super) fn reason(fact: &MealFact, _flag: &Flag) -> String {
    match *fact {}
}
