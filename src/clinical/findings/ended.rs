//! Why a visit ended before its screen was through.

use serde::{Deserialize, Serialize};

use crate::clinical::knowledge::policy::Policy;

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
    /// The words shown and handed over under a policy.
    pub fn told(self, policy: &Policy) -> String {
        match self {
            EndedEarly::NotForAge => {
                format!(
                    "not meant for children under {} years",
                    policy.water_from_years
                )
            }
            _ => self.words().to_owned(),
        }
    }

    /// The words without a figure.
    pub const fn words(self) -> &'static str {
        match self {
            EndedEarly::Refused => "the person declined",
            EndedEarly::Withdrew => "the person wanted to stop",
            EndedEarly::GateClosed => "not ready for it",
            EndedEarly::Emergency => "emergency",
            EndedEarly::NotForAge => "not meant for somebody so young",
            EndedEarly::BrokenOff => "broken off by the clinician",
        }
    }
}
