//! Sentences about a meal or drink that is watched.

use crate::clinical::findings::fact::MealFact;
use crate::clinical::findings::flag::Flag;
use crate::wording::meal;

pub(super) fn reason(fact: &MealFact, _flag: &Flag) -> String {
    let MealFact::Tally { lasted, pressed } = fact;
    format!(
        "watched at the table, {}: {}",
        meal::length(*lasted),
        meal::pressed(pressed.iter().copied())
    )
}
