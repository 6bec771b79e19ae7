//! What a setting takes, and how a field of a policy holds it.

use crate::clinical::knowledge::policy::Wording;

/// What a setting takes. Every value is a whole number inside; the kind says how it is written.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A whole number.
    Whole {
        /// Its unit.
        unit: Unit,
        /// Least, in the unit.
        least: i32,
        /// Most, in the unit.
        most: i32,
    },
    /// Off (0) or on (1).
    OnOff,
    /// One of these, by position: the id in the file.
    OneOf(&'static [&'static str]),
}

/// The unit of a whole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Minutes.
    Minutes,
    /// Hours.
    Hours,
    /// Breaths a minute.
    BreathsAMinute,
    /// Per cent.
    Percent,
    /// Points of a percentage.
    Points,
    /// Intervals.
    Intervals,
    /// Years.
    Years,
    /// Millilitres.
    Millilitres,
    /// So many times: it is shown without a unit.
    Times,
}

/// A field of a policy as the table sees it.
pub(super) trait Value {
    /// The field's value for a number that the setting takes.
    fn of(value: i32) -> Self;
}

impl Value for i32 {
    fn of(value: i32) -> i32 {
        value
    }
}

impl Value for bool {
    fn of(value: i32) -> bool {
        value != 0
    }
}

impl Value for Wording {
    fn of(value: i32) -> Wording {
        if value == 0 { Wording::A } else { Wording::B }
    }
}
