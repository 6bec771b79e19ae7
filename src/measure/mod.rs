//! Marks to numbers.
//!
//! Pure: no clock, no browser, no clinic. Every function is fed with times and gives the same
//! answer tomorrow.
//!
//! **Invariant:** nothing in here reads a clock or knows what is being counted.

pub mod beat;
pub mod by_count;
pub mod decimals;
pub mod normal;
pub mod series;
pub mod time;
pub mod units;
pub mod window;
