//! Readings of the breathing, and what they are set beside.

use serde::Serialize;

use crate::clinical::knowledge::norms::NoNorm;
use crate::measure::time::Doubt;

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

/// Awake or asleep: the percentiles differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum State {
    /// Awake and calm.
    Awake,
    /// Asleep.
    Asleep,
}

/// An oxygen saturation as it was read.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Spo2 {
    /// In percent.
    pub percent: f64,
    /// Whether oxygen is given; none where not answered.
    pub oxygen: Option<bool>,
    /// Lowest value of a prescribed target in percent.
    pub target: Option<f64>,
}

/// A reading that can be in the way of a trial by mouth, or the want of one.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub enum Reading {
    /// No count, and what speaks against the one that was made.
    NoCount(Option<Doubt>),
    /// Breaths a minute.
    Rate(u16, Method),
    /// Oxygen saturation.
    Spo2(Spo2),
}

/// Why there is nothing to set a child's rate beside.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub enum NoRange {
    /// Younger than one whole month: the equation starts at 15 days, which whole months can't say.
    TooYoung,
    /// One or two years: the equation goes by months.
    GiveMonths,
    /// Awake or asleep was not said.
    StateNotGiven,
    /// 16 or over: the bands for adults are used.
    Adult,
    /// The table of ranges has nothing.
    NoTable(NoNorm),
    /// The equation gave no rate.
    NoRate,
}
