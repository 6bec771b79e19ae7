//! Facts about the six signs.

use serde::Serialize;

/// What a rule says about the six signs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SixSignsFact {
    /// So many were found that somebody must look further.
    Enough {
        /// Which.
        found: Vec<OfSix>,
        /// Of how many.
        tested: Tested,
    },
    /// What was not tested could make it so many.
    Open {
        /// Which were not tested.
        open: Vec<OfSix>,
        /// How many were.
        tested: Tested,
    },
    /// The gag was tested and is left out by the policy.
    GagNotCounted,
    /// They are not offered for a child.
    NotForChildren,
    /// They were recorded of a child, and the rule is not used.
    NotReadInChildren,
}

/// One of the six.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum OfSix {
    /// Voice changed in quality, pitch or loudness.
    Voice,
    /// Speech slurred.
    Speech,
    /// Gag absent or weak.
    Gag,
    /// Cough on request weak, spoken or absent.
    CoughOnRequest,
    /// Cough after water.
    CoughAfter,
    /// Voice changed after water.
    VoiceAfter,
}

/// How many were tested and found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Tested {
    /// Found.
    pub present: usize,
    /// Tested.
    pub tested: usize,
    /// Signs that count: six, or five without the gag.
    pub of: usize,
}
