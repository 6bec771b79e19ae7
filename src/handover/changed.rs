//! What a text tells of changes: answers that were changed, and what is otherwise than in the text
//! that it replaces.

use super::issue::Clock;
use super::parts::{Need, Part};
use crate::clinical::findings::flag::Flag;
use crate::record::visit::{Stood, Visit, stands};
use crate::wording;

/// Answers that were changed, those that made the verdict graver first; then, in a correction, what
/// else is new or gone since the text before it.
pub(super) fn changed(visit: &Visit, before: Option<&Stood>, now: &Clock) -> Vec<Part> {
    let (graver, others): (Vec<_>, Vec<_>) = visit.changed().partition(|c| !c.lifted.is_empty());
    let answers = graver.into_iter().chain(others);
    let mut told: Vec<String> = answers
        .map(|c| wording::changed::answer(c, &visit.exam, &now.say(c.at)))
        .collect();
    if let Some(before) = before {
        let stands = stands(visit);
        let missing = |flag: &&Flag, of: &Stood| of.flags.iter().all(|f| f.fact() != flag.fact());
        let new = stands.flags.iter().filter(|f| missing(f, before));
        told.extend(new.map(wording::changed::new));
        // Where an answer was changed, that says it.
        let told_of = |flag: &Flag| visit.changed().any(|c| c.lifted.contains(&flag.rule().id));
        let gone = before
            .flags
            .iter()
            .filter(|f| missing(f, &stands) && !told_of(f));
        told.extend(gone.map(wording::changed::gone));
        if before.plan != stands.plan {
            told.push(wording::changed::PLAN.to_owned());
        }
        if before.details != stands.details {
            told.push(wording::changed::PERSON.to_owned());
        }
        if told.is_empty() {
            told.push(wording::changed::OTHER.to_owned());
        }
    }
    let part = |words| Part::new(Need::First, words);
    told.into_iter().map(part).collect()
}
