//! Facts about how thick a drink is.

use serde::Serialize;

/// What a rule says about how thick a drink is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum FlowFact {}
