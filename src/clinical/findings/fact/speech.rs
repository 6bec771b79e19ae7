//! Facts that all trials of speech and breath share.

use serde::Serialize;

use crate::clinical::findings::measured::Measured;
use crate::clinical::findings::speech::Unscored;
use crate::clinical::knowledge::norms::NotCompared;
use crate::clinical::knowledge::task::TaskId;

/// What a rule says about any trial of speech or breath.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SpeechFact {
    /// A trial is kept and not scored.
    NotScored {
        /// Of which task.
        task: TaskId,
        /// Its number among those that were tried, from 1.
        trial: usize,
        /// Why.
        why: Unscored,
    },
    /// A value is shown and not judged: it is put beside nothing.
    NotCompared {
        /// The value.
        value: Measured,
        /// Why.
        why: NotCompared,
    },
}
