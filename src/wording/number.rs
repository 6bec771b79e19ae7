//! What is wrong with a number that was typed.

use crate::clinical::tasks::spec::NumberError;

/// Why it was not taken, for the field whose unit this is.
pub fn problem(error: &NumberError, unit: &str) -> String {
    match error {
        NumberError::NotANumber => "This is a number, like 15.".to_owned(),
        NumberError::OutOfRange { least, most } => {
            let gap = if unit.is_empty() { "" } else { " " };
            format!("Between {least} and {most}{gap}{unit}.")
        }
        NumberError::TooFine => "One decimal at most, like 15.5.".to_owned(),
    }
}
