//! Answers that were changed: which of them are told.
//!
//! One that a text may have told is, whatever it was. Before any text left, one that made the verdict
//! graver is, unless it stood for no longer than a slip of the finger.

use super::Visit;
use super::given::Given;
use crate::clinical::findings::changed::{Asked, Changed, Said};
use crate::clinical::findings::flag::Level;
use crate::clinical::findings::oral::Seen;
use crate::measure::time::{Millis, Stamp, elapsed};

/// So long an answer may stand and still be a slip.
const SLIP: Millis = Millis::from_secs(10);

/// A level, and the rule that gives it.
type Weight = (Level, &'static str);

impl Visit {
    /// The answers that were changed and are to be told, in the order in which they were first
    /// changed. One that was changed back to what a text had told last is none.
    pub fn changed(&self) -> impl Iterator<Item = &Changed> {
        let changed = self.changes.changed.iter();
        let changed = changed.filter(|c| c.asked.said(&self.exam).as_ref() != Some(&c.was));
        // Of what was detached nothing is told here.
        changed.filter(|c| match &c.asked {
            Asked::Trial { number, .. } => self.trial(*number).is_some(),
            Asked::Gate(_) | Asked::Oral(_) => true,
        })
    }

    /// Makes a change in the answers to these questions.
    pub(super) fn changing(
        &mut self,
        asked: Vec<Asked>,
        at: Stamp,
        change: impl FnOnce(&mut Visit),
    ) {
        let before: Vec<Option<Said>> = asked.iter().map(|a| a.said(&self.exam)).collect();
        let changes_any = before.iter().flatten().any(|said| !is_touch(said));
        let weighed = changes_any.then(|| self.weight());
        change(self);
        for (asked, was) in asked.into_iter().zip(before) {
            let now = asked.said(&self.exam);
            if now == was {
                continue;
            }
            if let (Some(was), Some(weighed)) = (was, &weighed) {
                self.note_change(&asked, was, weighed, at);
            }
            let texts = self.issued.len();
            self.changes.given.insert(asked, Given { at, texts });
        }
    }

    fn note_change(&mut self, asked: &Asked, was: Said, weighed: &[Weight], at: Stamp) {
        let by = self.signed();
        let given = self.changes.given.get(asked);
        let told = given.map_or(0, |given| given.texts) < self.issued.len();
        let stood = given.and_then(|given| elapsed(given.at, at, true).length);
        let slip = stood.is_some_and(|stood| stood < SLIP);
        let lifted = lifted(&self.weight(), weighed);
        let told = told || !slip && !lifted.is_empty();
        let now = asked.said(&self.exam);
        let all = &mut self.changes.changed;
        match all.iter_mut().find(|c| c.asked == *asked) {
            Some(known) => {
                // Changed back to what was first said, it is what was said between that is told.
                if now.as_ref() == Some(&known.was) && told {
                    known.was = was;
                }
                known.lifted.extend(lifted);
                known.at = at.wall;
                known.by = by;
            }
            None if told => all.push(Changed {
                asked: asked.clone(),
                was,
                at: at.wall,
                by,
                lifted,
            }),
            None => {}
        }
    }

    /// What speaks against "no sign seen" now: levels and rules.
    fn weight(&self) -> Vec<Weight> {
        let Some(decision) = self.decision() else {
            return Vec::new();
        };
        let flags = decision.reasons.iter().chain(&decision.missing);
        flags.map(|flag| (flag.level(), flag.rule().id)).collect()
    }
}

/// The rules that spoke against it before and do no longer.
fn lifted(now: &[Weight], before: &[Weight]) -> Vec<&'static str> {
    let mut now = now.to_vec();
    let gone = before.iter().filter(|one| {
        let still = now.iter().position(|other| other == *one);
        still.map(|at| now.swap_remove(at)).is_none()
    });
    gone.map(|(_, rule)| *rule).collect()
}

/// Touches are counted up one by one: no answer is changed by the next.
fn is_touch(said: &Said) -> bool {
    matches!(said, Said::Seen(Seen::Touched { .. }))
}
