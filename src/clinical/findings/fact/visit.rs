//! Facts about the visit as a whole: person, record, what was gone past.

use serde::Serialize;

/// What a rule says about the visit as a whole: person, record, what was gone past.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum VisitFact {}
