//! Facts about counting on one breath, breath hold, 5 cm of water for 5 seconds.

use serde::Serialize;

use crate::clinical::findings::speech::Bubbles;
use crate::measure::units::Seconds;

/// What a rule says about counting on one breath, breath hold, 5 cm of water for 5 seconds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum BreathFact {
    /// The number a child reached: not judged.
    CountOfChild {
        /// The highest number.
        reached: u32,
    },
    /// The number an adult reached.
    Count {
        /// The highest number.
        reached: u32,
        /// Whether it fits normal breathing muscles.
        enough: bool,
        /// Whether an age was given; else it is read by the rule for adults.
        age_given: bool,
    },
    /// The number is one after which spirometry is considered.
    ConsiderSpirometry {
        /// The highest number.
        reached: u32,
        /// Whether it also went with weak breathing in.
        weak: bool,
    },
    /// A breath was held this long.
    Hold(Seconds),
    /// Bubbles were blown with the straw 5 cm under water.
    Five {
        /// For so long.
        time: Seconds,
        /// Whether that is long enough.
        long_enough: bool,
        /// What was seen of them.
        bubbles: Bubbles,
    },
}
