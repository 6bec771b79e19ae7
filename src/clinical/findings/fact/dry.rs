//! Facts about dry swallows.

use serde::Serialize;

use crate::measure::time::Doubt;

/// What a rule says about dry swallows.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum DryFact {
    /// What came of one count.
    Count(DryCount, DryResult),
    /// Nothing was counted.
    NotCounted,
    /// The count is for people from this age.
    NotFor {
        /// In years, by the policy.
        from_years: i32,
    },
}

/// Which count, where there are several.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum DryCount {
    /// One that was counted again since.
    Earlier,
    /// The newest.
    Newest,
}

/// What came of a count.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum DryResult {
    /// As many as are expected.
    Enough {
        /// Swallows in the window.
        swallows: usize,
    },
    /// Fewer than are expected.
    TooFew {
        /// Swallows in the window.
        swallows: usize,
        /// Swallows after it that were kept.
        later: usize,
    },
    /// Called not valid.
    NotValid {
        /// The id of the reason given.
        why: String,
        /// Swallows in the window, where it ran to its end.
        swallows: Option<usize>,
    },
    /// As many as are expected only with touches too quick for a swallow between them.
    TooQuick {
        /// So many of them.
        touches: usize,
    },
    /// The window did not run to its end.
    NotFinished,
    /// The time is in doubt.
    Doubtful(Doubt),
}
