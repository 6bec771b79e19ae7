//! To whom and by when; and free words as the end of a sentence.

use crate::clinical::decision::verdict::Decision;
use crate::handover::action::suggested;
use crate::record::event::{ByWhen, Plan, Whom};

/// To whom the text goes and by when.
pub(super) fn goes_to(decision: &Decision, plan: &Plan) -> (Whom, ByWhen) {
    let (whom, by_when) = suggested(decision);
    (plan.whom.unwrap_or(whom), plan.by_when.unwrap_or(by_when))
}

/// To whom the text goes and by when, in words.
pub(super) fn addressed(decision: &Decision, plan: &Plan) -> (&'static str, &'static str) {
    let (whom, by_when) = goes_to(decision, plan);
    (whom.words(), by_when.words())
}

/// Free words as the end of a sentence: trimmed, in one line, without a full stop of their own.
pub(super) fn sentence(words: &str) -> String {
    let line = words.split_whitespace().collect::<Vec<_>>().join(" ");
    line.trim_end_matches('.').to_owned()
}
