//! Facts about how long a sound is held, and s to z.

use serde::Serialize;

use crate::clinical::findings::speech::{Held, SToZ};
use crate::clinical::knowledge::norms::Compared;

/// What a rule says about how long a sound is held, and s to z.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum VoiceFact {
    /// An adult's "ah" is short.
    ShortAh {
        /// The trials.
        held: Held,
        /// Whether an age was given; else it is read by the rule for adults.
        age_given: bool,
    },
    /// A child's "ah" beside the published group.
    AhOfChild {
        /// The trials.
        held: Held,
        /// The group, and where the best stands in it.
        compared: Compared,
        /// Whether it is short beside the group.
        short: bool,
    },
    /// The ratio of s to z of a child.
    RatioOfChild(SToZ),
    /// The ratio of s to z of an adult, above the line or near it.
    Ratio {
        /// The ratio and both times.
        ratio: SToZ,
        /// Whether it is above the line; else borderline.
        above: bool,
        /// Whether an age was given; else it is read by the rule for adults.
        age_given: bool,
    },
    /// There is no ratio of s to z.
    NoRatio(NoRatio),
}

/// Why there is no ratio of s to z.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum NoRatio {
    /// s has no trial with a time.
    NoS,
    /// z has no trial with a time.
    NoZ,
    /// s was tried and not held at all.
    SNotHeld,
    /// z was tried and not held at all.
    ZNotHeld,
    /// The ratio is beyond every number.
    OutOfRange,
}
