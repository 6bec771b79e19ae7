//! Why a number was not taken, beside its field.

use std::fmt;

use crate::clinical::tasks::spec::NumberError;

impl fmt::Display for NumberError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NumberError::NotANumber => f.write_str("This is a number, like 15."),
            NumberError::OutOfRange(least, most, unit) => {
                let gap = if unit.is_empty() { "" } else { " " };
                write!(f, "Between {least} and {most}{gap}{unit}.")
            }
            NumberError::TooFine => f.write_str("One decimal at most, like 15.5."),
        }
    }
}
