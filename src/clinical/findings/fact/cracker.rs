//! Facts about the cracker.

use serde::Serialize;

/// What a rule says about the cracker.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum CrackerFact {}
