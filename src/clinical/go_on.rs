//! Going on past what is in the way: who may, and how it is told.

use serde::{Deserialize, Serialize};

use super::person::Role;
use super::words::small;

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
}

impl WentOn {
    /// What was gone past, and that it was, for the record and the handover.
    pub fn told(&self, what: &str) -> String {
        format!(
            "{what}; gone on despite this, decided by the {}: {}",
            self.by.words(),
            small(&self.because)
        )
    }
}
