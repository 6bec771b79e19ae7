//! Going on past what is in the way: who may, and how it is told.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::person::Role;
use crate::wording::words::small;

/// Who may go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GoOn {
    /// Nobody.
    Never,
    /// A speech-language pathologist, with a stated reason.
    SlpWithReason,
    /// Whoever holds the phone, with a stated reason.
    WithReason,
}

impl GoOn {
    /// Whether this person may.
    pub fn open_to(self, role: Role) -> bool {
        match self {
            GoOn::Never => false,
            GoOn::SlpWithReason => role == Role::Slp,
            GoOn::WithReason => true,
        }
    }
}

/// Going on past a hold, with the reason given for it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WentOn {
    /// Which hold: its id.
    pub hold: String,
    /// The stated reason.
    pub because: String,
    /// Who took it on.
    pub by: Role,
    /// What was gone past, in the words that stood there; empty in records of earlier versions.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub says: String,
    /// What was gone past stood otherwise since: come again, it is asked for anew.
    #[serde(skip)]
    pub lapsed: bool,
}

impl WentOn {
    /// Whether it speaks for its hold: with a reason, for what stands since it was given.
    pub fn counts(&self) -> bool {
        !self.lapsed && !self.because.trim().is_empty()
    }

    /// What was gone past, and that it was, for the record and the handover.
    pub fn told(&self, what: &str) -> String {
        let (by, because) = (self.by.words(), small(&self.because));
        // A question was answered, and nothing gone on despite.
        if what.ends_with('?') {
            return format!("{what} Answer of the {by}: {because}");
        }
        format!("{what}; gone on despite this, decided by the {by}: {because}")
    }
}
