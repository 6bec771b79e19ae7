//! A visit in one line, kept beside its events so that lists open without replaying them.

use serde::{Deserialize, Serialize};

use super::id::VisitId;
use super::visit::Visit;
use crate::clinical::decision::verdict::{Verdict, short_of};
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
    pub label: String,
    /// The screen's title, or what it is instead.
    pub what: String,
    /// The verdict's words, once decided; empty before.
    pub verdict: String,
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
            label: visit.label(),
            what: match (visit.screen, visit.is_loose()) {
                (Some(screen), _) => screen.screen().title.to_owned(),
                (None, true) => "Count".to_owned(),
                (None, false) => "Visit".to_owned(),
            },
            // As it was recorded: a later version of the rules does not rewrite it.
            // What was pressed after it may: then it is the verdict that stands now.
            verdict: visit.decided.as_ref().map_or(String::new(), |decided| {
                let now = decision.as_ref().map(|d| d.verdict);
                if now == Some(Verdict::NotDone(EndedEarly::Emergency)) {
                    return "Emergency".to_owned();
                }
                let now = now.map(Verdict::id);
                match now.filter(|now| *now != decided.verdict && visit.pressed_since_decided) {
                    Some(now) => format!("Now: {}", short_of(now)),
                    None if decision.as_ref().is_some_and(|d| d.noted().is_some()) => {
                        "Sign noted".to_owned()
                    }
                    None => short_of(&decided.verdict).to_owned(),
                }
            }),
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
