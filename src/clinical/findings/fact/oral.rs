//! Facts about face, mouth and throat.

use serde::Serialize;

/// What a rule says about face, mouth and throat.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum OralFact {}
