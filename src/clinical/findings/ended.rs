//! Why a visit ended before its screen was through.

use serde::{Deserialize, Serialize};

/// Why a visit ended before its screen was through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum EndedEarly {
    /// The person did not want to begin.
    Refused,
    /// The person wanted to stop.
    Withdrew,
    /// The gate was closed.
    GateClosed,
    /// An emergency came first.
    Emergency,
    /// The screen is not meant for somebody of this age.
    NotForAge,
    /// The clinician had to break off.
    BrokenOff,
}

impl EndedEarly {
    /// Its id, as it stands in records.
    pub const fn id(self) -> &'static str {
        match self {
            EndedEarly::Refused => "Refused",
            EndedEarly::Withdrew => "Withdrew",
            EndedEarly::GateClosed => "GateClosed",
            EndedEarly::Emergency => "Emergency",
            EndedEarly::NotForAge => "NotForAge",
            EndedEarly::BrokenOff => "BrokenOff",
        }
    }
}
