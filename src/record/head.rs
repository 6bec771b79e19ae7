//! A visit in one line, kept beside its events so that lists open without replaying them.

use serde::{Deserialize, Serialize};

use super::called::{Called, What};
use super::id::VisitId;
use super::visit::Visit;
use crate::clinical::decision::verdict::{Decision, Verdict};
use crate::clinical::findings::exam::EndedEarly;
use crate::measure::time::Millis;

/// A visit in one line. Derived from its events; written in the same transaction as each of them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Head {
    /// Which visit.
    pub visit: VisitId,
    /// When it was begun, by the wall clock.
    pub opened: Millis,
    /// When something last happened, by the wall clock.
    pub touched: Millis,
    /// What it is called.
    pub label: Called,
    /// What it is.
    pub what: What,
    /// The verdict in the words of an earlier version, where one wrote this head; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub verdict: String,
    /// How its decision stands, once there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub state: Option<State>,
    /// Refer or stop that nobody closed.
    pub unclosed: bool,
    /// Whether the text for the nurse has left the app.
    pub issued: bool,
    /// Whether something still runs in it.
    pub running: bool,
    /// A loose count that belongs to no visit yet.
    pub loose: bool,
    /// Only a tombstone is left.
    pub deleted: bool,
    /// How many events there are.
    pub events: u32,
    /// Since when it is broken off.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub broken: Option<Millis>,
}

/// How a decision stands. Verdicts are told by their ids, see [`Verdict::id`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum State {
    /// As it was recorded.
    Decided(String),
    /// No sign seen, and one noted all the same.
    SignNoted,
    /// Otherwise than it was recorded, by what was pressed since: what stands now.
    Now(String),
    /// An emergency.
    Emergency,
}

impl State {
    /// As it was recorded: a later version of the rules does not rewrite it. What was pressed after
    /// it may: then it is the verdict that stands now.
    fn of(visit: &Visit, decision: Option<&Decision>) -> Option<State> {
        let decided = visit.decided.as_ref()?;
        let now = decision.map(|d| d.verdict);
        if now == Some(Verdict::NotDone(EndedEarly::Emergency)) {
            return Some(State::Emergency);
        }
        let other = now.map(Verdict::id).filter(|now| *now != decided.verdict);
        Some(match other.filter(|_| visit.pressed_since_decided) {
            Some(now) => State::Now(now.to_owned()),
            None if decision.is_some_and(|d| d.noted().is_some()) => State::SignNoted,
            None => State::Decided(decided.verdict.clone()),
        })
    }
}

impl Head {
    /// The head of a visit, where `before` was one of its heads.
    ///
    /// **Invariant:** the same as [`Head::of`]. What is only counted in a trial that runs changes
    /// nothing of it but the time and the number of events, so that a tap in a long count costs what
    /// the first did.
    pub fn after(before: Option<&Head>, visit: &Visit) -> Head {
        match before {
            Some(head) if head.visit == visit.id && head.events >= visit.weighed => Head {
                touched: visit.touched,
                events: visit.next,
                ..head.clone()
            },
            _ => Head::of(visit),
        }
    }

    /// The head of a visit as it stands.
    pub fn of(visit: &Visit) -> Head {
        let decision = visit.decision();
        Head {
            visit: visit.id.clone(),
            opened: visit.opened,
            touched: visit.touched,
            label: visit.called(),
            what: match (visit.screen, visit.is_loose()) {
                (Some(screen), _) => What::Screen(screen),
                (None, true) => What::Count,
                (None, false) => What::Visit,
            },
            verdict: String::new(),
            state: State::of(visit, decision.as_ref()),
            unclosed: visit.unclosed(decision.as_ref()),
            issued: visit.handed_over(),
            running: visit.running(),
            loose: visit.is_loose(),
            deleted: visit.deleted,
            events: visit.next,
            broken: match (visit.exam.ended, visit.breaks.last()) {
                (Some(EndedEarly::BrokenOff), Some(ended)) => Some(ended.at),
                _ => None,
            },
        }
    }
}
