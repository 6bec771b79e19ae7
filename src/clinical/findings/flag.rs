//! What a rule says about findings: a flag, with its level and its domain.

pub use crate::clinical::findings::fact::Flag;
pub use crate::clinical::knowledge::level::{Domain, Level};
