//! Repeated syllables: pa, ta, ka (alternating motion) and pa-ta-ka (sequential motion).
//!
//! [`repeated`] puts one trial beside the published values; [`trials`] says which trial is scored
//! and what is offered at all.

mod rate;
pub mod trials;

pub use crate::clinical::findings::speech::{Repeated, Syllables, Timing};
pub use rate::{
    ADULT_LINE, CHILD_SLOW, CHILD_WATCH, PA_LINE, TA_LINE_MEN, TA_LINE_WOMEN, TAP_LIMIT, repeated,
};
