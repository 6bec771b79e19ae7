//! When the answers that stand were given, and those that were changed.

use std::collections::BTreeMap;

use crate::clinical::findings::changed::{Asked, Changed};
use crate::measure::time::Stamp;

/// When an answer was given, and how many texts had left by then.
#[derive(Clone, Copy, Debug)]
pub(super) struct Given {
    pub(super) at: Stamp,
    pub(super) texts: usize,
}

/// The answers that were changed, and when those that stand were given.
#[derive(Clone, Debug, Default)]
pub(super) struct Changes {
    pub(super) given: BTreeMap<Asked, Given>,
    pub(super) changed: Vec<Changed>,
}
