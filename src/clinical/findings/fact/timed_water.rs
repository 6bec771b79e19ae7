//! Facts about the timed cup of water.

use serde::Serialize;

/// What a rule says about the timed cup of water.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum TimedWaterFact {}
