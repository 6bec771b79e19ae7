//! Facts about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.

use serde::Serialize;

/// What a rule says about what all trials by mouth share: signs late, moved or taken back, oxygen saturation, the voice before.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum ByMouthFact {}
