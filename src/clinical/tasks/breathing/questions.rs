//! What is asked about the breathing, by the ids that stand in records.

use crate::clinical::tasks::spec::Takes;
use crate::measure::time::Millis;

/// The counted minute.
pub const WINDOW: Millis = Millis::from_secs(60);

/// Question: a rate counted elsewhere.
pub const TYPED: &str = "rate";
/// Question: SpO2.
pub const SATURATION: &str = "spo2";
/// Question: air or oxygen.
pub const OXYGEN: &str = "oxygen";
/// Question: lowest value of a prescribed target.
pub const TARGET: &str = "target";

/// Question: whether a target of 88 to 92 % is prescribed in confirmed respiratory failure.
pub const CONFIRMED: &str = "confirmed-target";

/// What a reading of SpO2 may be.
pub const PERCENT: Takes = Takes::Number {
    least: 50,
    most: 100,
    step: 0,
};
