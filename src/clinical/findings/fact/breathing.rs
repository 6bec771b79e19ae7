//! Facts about breaths and oxygen saturation before a trial.

use serde::Serialize;

/// What a rule says about breaths and oxygen saturation before a trial.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum BreathingFact {}
