//! Facts about a sign seen in a trial by mouth.

use serde::Serialize;

/// What a rule says about a sign seen in a trial by mouth.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SignFact {}
