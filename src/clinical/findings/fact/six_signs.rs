//! Facts about the six signs.

use serde::Serialize;

/// What a rule says about the six signs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SixSignsFact {}
