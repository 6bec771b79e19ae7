//! What somebody is still to look at: reasons of a refer or stop that nobody closed.

use super::Visit;
use crate::clinical::decision::verdict::Decision;
use crate::clinical::findings::flag::{Domain, Flag};

/// One thing that somebody is to look at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Open {
    /// What a rule says.
    Reason {
        /// The rule's id.
        rule: &'static str,
        /// What about: the key of the fact.
        fact: String,
    },
    /// A choking.
    Choking,
}

impl Open {
    fn of(flag: &Flag) -> Open {
        Open::Reason {
            rule: flag.rule().id,
            fact: flag.fact().key(),
        }
    }
}

impl Visit {
    /// What somebody is to look at: the reasons of a refer or stop, an emergency, and each choking.
    pub(super) fn open_reasons(&self, decision: Option<&Decision>) -> Vec<Open> {
        let Some(decision) = decision else {
            return Vec::new();
        };
        // An emergency stands among what kept the screen from being done.
        let urgent = |f: &&Flag| f.domain() == Domain::Urgent;
        let emergency = decision.missing.iter().filter(urgent);
        let reasons = decision.reasons.iter().chain(emergency);
        let mut open: Vec<Open> = reasons.map(Open::of).collect();
        if !open.is_empty() {
            open.extend(self.chokings.iter().map(|_| Open::Choking));
        }
        open
    }

    /// Whether there is a reason for a refer or stop that nobody closed. What was closed speaks for
    /// itself alone: a choke that took the place of a cough is open.
    pub(in crate::record) fn unclosed(&self, decision: Option<&Decision>) -> bool {
        let mut closed = match &self.closed {
            Some((_, reasons)) => reasons.clone(),
            None => Vec::new(),
        };
        self.open_reasons(decision).iter().any(|reason| {
            let known = closed.iter().position(|c| c == reason);
            known.map(|at| closed.swap_remove(at)).is_none()
        })
    }
}
