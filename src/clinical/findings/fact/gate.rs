//! Facts about what is asked before anything is given.

use serde::Serialize;

/// What a rule says about what is asked before anything is given.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum GateFact {}
