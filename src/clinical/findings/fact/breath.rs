//! Facts about counting on one breath, breath hold, 5 cm of water for 5 seconds.

use serde::Serialize;

/// What a rule says about counting on one breath, breath hold, 5 cm of water for 5 seconds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum BreathFact {}
