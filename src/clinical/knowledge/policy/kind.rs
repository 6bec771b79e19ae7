//! What a setting takes, and how a field of a policy holds it.

use crate::clinical::knowledge::policy::Wording;

/// What a setting takes. Every value is a whole number inside; the kind says how it is written.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A whole number.
    Whole {
        /// Its unit, in words; may be empty.
        unit: &'static str,
        /// Least, in the unit.
        least: i32,
        /// Most, in the unit.
        most: i32,
    },
    /// Off (0) or on (1).
    OnOff,
    /// One of these, by position: the id in the file, and the words shown.
    OneOf(&'static [(&'static str, &'static str)]),
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
