//! Facts about repeated syllables.

use serde::Serialize;

/// What a rule says about repeated syllables.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SyllablesFact {}
