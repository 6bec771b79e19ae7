//! Every rule, by its id: `dry.few` is [`DRY_FEW`].
//!
//! The list itself is `rules.csv`, a table a clinician can read; the build checks it
//! (`scripts/tables`) and makes these out of it.

use crate::clinical::knowledge::rule::{Basis, Rule};
use crate::clinical::knowledge::source;

include!(concat!(env!("OUT_DIR"), "/rules.rs"));
