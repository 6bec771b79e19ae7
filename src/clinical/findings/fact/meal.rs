//! Facts about a meal or drink that is watched.

use serde::Serialize;

/// What a rule says about a meal or drink that is watched.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum MealFact {}
