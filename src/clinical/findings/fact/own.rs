//! Facts about the clinician's own trials.

use serde::Serialize;

/// What a rule says about the clinician's own trials.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum OwnFact {}
