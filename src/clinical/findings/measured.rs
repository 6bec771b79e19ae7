//! A value that is put beside a published one.

use serde::Serialize;

use crate::clinical::findings::breathing::Method;
use crate::clinical::findings::speech::{Held, Repeated, Sound};

/// What was measured, as it is told beside the published value.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum Measured {
    /// Repeated syllables.
    Repeated(Repeated),
    /// A sound that was held.
    Held(Sound, Held),
    /// So many dry swallows in 30 seconds.
    DrySwallows(u32),
    /// So many breaths a minute.
    Breaths(u16, Method),
}
