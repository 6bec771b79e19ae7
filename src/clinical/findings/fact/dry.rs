//! Facts about dry swallows.

use serde::Serialize;

/// What a rule says about dry swallows.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum DryFact {}
