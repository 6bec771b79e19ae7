//! Facts about how long a sound is held, s to z, the range of pitch.

use serde::Serialize;

/// What a rule says about how long a sound is held, s to z, the range of pitch.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum VoiceFact {}
