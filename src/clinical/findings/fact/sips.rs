//! Facts about small sips of water, the 3 mL under the tongue among them.

use serde::Serialize;

/// What a rule says about small sips of water, the 3 mL under the tongue among them.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SipsFact {}
