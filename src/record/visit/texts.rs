//! The texts that left, and who was told of them.

use super::Visit;
use crate::clinical::findings::flag::Flag;
use crate::measure::time::Millis;
use crate::record::event::{Correction, Details, Plan, Route, Text};

/// What a text tells, as far as a later one says what is otherwise.
#[derive(Clone, Debug, PartialEq)]
pub struct Stood {
    /// What decided, what was missing, and signs that were noted.
    pub flags: Vec<Flag>,
    /// The plan.
    pub plan: Plan,
    /// Person and place.
    pub details: Option<Details>,
}

/// What a text that is written now tells.
pub fn stands(visit: &Visit) -> Stood {
    let flags = visit.decision().map_or_else(Vec::new, |decision| {
        let noted = |flag: &Flag| flag.domain().decides() && flag.fact().names_sign().is_some();
        let noted = decision.also.into_iter().filter(noted);
        let decides = decision.reasons.into_iter().chain(decision.missing);
        decides.chain(noted).collect()
    });
    Stood {
        flags,
        plan: visit.plan.clone(),
        details: visit.details.clone(),
    }
}

/// A text that left the app.
#[derive(Clone, Debug, PartialEq)]
pub struct Issue {
    /// How.
    pub route: Route,
    /// The exact text.
    pub text: String,
    /// The time it carries.
    pub clock: String,
    /// Which.
    pub which: Text,
    /// What it replaces; none where it is the first, or says the same.
    pub corrects: Option<Correction>,
    /// When it left, by the wall clock.
    pub at: Millis,
    /// What it tells.
    pub stood: Stood,
}

/// What a text replaces, in a record of a version that kept this in the text alone: it was its first
/// line, in these words. They are part of that form and change no more; a text that was written since
/// has it beside it in the record.
pub(super) fn kept_in_text(text: &str) -> Option<Correction> {
    let first = text.lines().next()?;
    let times = first.strip_prefix("CORRECTED ")?.strip_suffix('.')?;
    let (at, replaces) = times.split_once(", replaces ")?;
    Some(Correction {
        at: at.to_owned(),
        replaces: replaces.to_owned(),
    })
}

/// Somebody who was told of the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// Who.
    pub whom: String,
    /// Whether it was read back.
    pub read_back: bool,
    /// When.
    pub at: Millis,
    /// The time that the text carries which was the newest then.
    pub of: String,
    /// When that one left: the same minute of another day is another text.
    pub of_at: Millis,
}

impl Visit {
    /// Takes a text that left. Two texts of one minute carry the same time: who was told of the
    /// first does not know of the second.
    pub(super) fn issue(&mut self, issue: Issue) {
        let before = self.last_text().cloned();
        self.issued.push(issue);
        let newest = self.last_text().cloned();
        if let (Some(before), Some(newest)) = (before, newest)
            && before.clock == newest.clock
            && before.text != newest.text
            && newest.at - before.at < Millis::from_secs(60)
        {
            for told in self.told.iter_mut().filter(|t| t.of == newest.clock) {
                told.of.push_str(", since replaced");
            }
        }
    }

    /// The newest text for nursing, as it left first: sent once more with the same words, it is the
    /// same text.
    pub fn last_text(&self) -> Option<&Issue> {
        let mut texts = self
            .issued
            .iter()
            .rev()
            .filter(|issue| issue.which == Text::Nursing);
        let newest = texts.next()?;
        texts
            .take_while(|issue| {
                let same_minute = issue.clock == newest.clock;
                issue.corrects == newest.corrects && !(same_minute && issue.text != newest.text)
            })
            .last()
            .or(Some(newest))
    }

    /// The newest text of a kind, and the one that it replaced: sent once more with the same words, it
    /// still replaces what it did first.
    pub fn last_of(&self, which: Text) -> Option<(&Issue, Option<&Issue>)> {
        let mut texts = self.issued.iter().rev().filter(|i| i.which == which);
        let last = texts.next()?;
        let replaced = texts.find(|earlier| earlier.corrects != last.corrects);
        Some((last, replaced.filter(|_| last.corrects.is_some())))
    }

    /// Whether somebody was told of the newest text for nursing.
    pub fn knows_last(&self, told: &Told) -> bool {
        let last = self.last_text();
        last.is_some_and(|last| told.of == last.clock && told.of_at == last.at)
    }

    /// Whether the text for the nurse has left the app. A full note alone tells the ward nothing.
    pub fn handed_over(&self) -> bool {
        self.issued.iter().any(|issue| issue.which == Text::Nursing)
    }
}
