//! Sentences that all trials of speech and breath share.

use crate::clinical::findings::fact::SpeechFact;
use crate::wording::compared::{measured, not_compared};
use crate::wording::speech::unscored;
use crate::wording::tasks;

pub(super) fn reason(fact: &SpeechFact) -> String {
    match fact {
        SpeechFact::NotScored { task, trial, why } => format!(
            "{}, trial {trial}: kept, not scored: {}.",
            tasks::of(*task).title,
            unscored(*why)
        ),
        SpeechFact::NotCompared { value, why } => {
            format!("{}. {}", measured(value), not_compared(why))
        }
    }
}

/// What to add to a sentence that rests on the rules for adults: a blank and a sentence where no
/// age was given, else nothing.
pub(super) const fn age_remark(age_given: bool) -> &'static str {
    if age_given {
        ""
    } else {
        " Age not given: read by the rule for adults."
    }
}
