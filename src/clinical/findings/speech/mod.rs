//! Trials of speech and breath: what was measured, and why one that was done is not scored.

mod held;
mod syllables;
mod unscored;

pub use held::{Held, HeldError, SToZ, Sound};
pub use syllables::{Repeated, Syllables, Timing};
pub use unscored::{Unbegun, Unscored};

/// What the clinician saw of the bubbles with the straw 5 cm under water.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
pub enum Bubbles {
    /// Without a break, at 5 cm.
    Continuous,
    /// With a break, or not at 5 cm.
    Broken,
    /// Nobody watched.
    NotSeen,
}
