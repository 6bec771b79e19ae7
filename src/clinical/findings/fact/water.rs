//! Facts about the 90 mL of water.

use serde::Serialize;

/// What a rule says about the 90 mL of water.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum WaterFact {}
