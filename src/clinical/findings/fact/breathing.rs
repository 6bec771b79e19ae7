//! Facts about breaths and oxygen saturation before a trial.

use serde::Serialize;

use crate::clinical::findings::breathing::{Method, NoRange, Reading, Spo2, State};
use crate::clinical::findings::go_on::GonePast;
use crate::clinical::knowledge::person::Age;
use crate::measure::units::PerMinute;

/// What a rule says about breaths and oxygen saturation before a trial.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum BreathingFact {
    /// What is in the way of a trial by mouth.
    InTheWay {
        /// Which reading, or that there is none.
        reading: Reading,
        /// Whether it is asked to be held against the local chart of the age.
        chart: bool,
        /// Who went on past it.
        gone_past: Option<GonePast>,
    },
    /// An adult's rate is off the usual band.
    RateOff {
        /// Breaths a minute.
        rate: u16,
        /// How it was come by.
        method: Method,
        /// Least and most that is usual.
        usual: (i32, i32),
    },
    /// An adult's saturation is off what is usual.
    SaturationOff {
        /// As it was read.
        spo2: Spo2,
        /// What it should be.
        usual: UsualSpo2,
    },
    /// A child's rate beside the percentiles measured at the age.
    Measured {
        /// Breaths a minute.
        rate: u32,
        /// The age.
        age: Age,
        /// Awake or asleep.
        state: State,
        /// On which side of them; none where it is among them.
        off: Option<Off>,
        /// 5th percentile.
        low: PerMinute,
        /// 95th percentile.
        high: PerMinute,
    },
    /// A child's rate outside a range that is taught.
    Taught {
        /// Breaths a minute.
        rate: u32,
        /// The age.
        age: Age,
        /// On which side.
        off: Off,
        /// Least of the range.
        low: f64,
        /// Most of it.
        high: f64,
    },
    /// A child's rate with nothing to set it beside.
    NoRange {
        /// Breaths a minute.
        rate: u32,
        /// Why.
        why: NoRange,
    },
    /// Taps that are too few, or too uneven.
    TapsUneven,
    /// A rate by taps.
    Taps {
        /// Breaths a minute.
        rate: u32,
        /// Uneven intervals left out.
        left_out: usize,
        /// Whether it stands alone in an adult, whom it does not clear.
        alone: bool,
    },
    /// A count of 30 seconds.
    Thirty {
        /// Breaths a minute; none where it must be counted again.
        rate: Option<u32>,
        /// Whether it stands alone in an adult, whom it does not clear.
        alone: bool,
    },
}

/// What a saturation should be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum UsualSpo2 {
    /// So many per cent or more.
    From(i32),
    /// Within the target prescribed in confirmed respiratory failure.
    Prescribed,
}

/// On which side of a range a value lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Off {
    /// Below it.
    Below,
    /// Above it.
    Above,
}
