//! Readings of the breathing.

use serde::Serialize;

/// Where a rate came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Method {
    /// Counted here, 60 s.
    Counted,
    /// Entered.
    Entered,
    /// From even taps or from 30 seconds: for children, where nothing was counted for 60 seconds.
    Shorter,
}
