//! A number that was typed.

/// Why a number was not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberError {
    /// Not a number.
    NotANumber,
    /// Outside the range.
    OutOfRange {
        /// Least, in the unit.
        least: i32,
        /// Most, in the unit.
        most: i32,
    },
    /// More than one decimal.
    TooFine,
}

/// Reads a number that was typed, into tenths of the unit. Takes a decimal comma too.
///
/// # Errors
/// [`NumberError`] tells what is wrong with it.
pub fn parse_tenths(typed: &str, least: i32, most: i32) -> Result<i32, NumberError> {
    let typed = typed.trim();
    let (minus, digits) = match typed.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, typed),
    };
    let (whole, part) = digits.split_once(['.', ',']).unwrap_or((digits, ""));
    let is_number = |s: &str| s.bytes().all(|b| b.is_ascii_digit());
    if whole.is_empty() || !is_number(whole) || !is_number(part) {
        return Err(NumberError::NotANumber);
    }
    let part = part.trim_end_matches('0');
    if part.len() > 1 {
        return Err(NumberError::TooFine);
    }
    let outside = NumberError::OutOfRange { least, most };
    let Ok(size) = format!("{whole}{part:0<1}").parse::<i32>() else {
        // Only a number of more digits than any range has gets here.
        return Err(outside);
    };
    let tenths = if minus { -size } else { size };
    let inside = i64::from(least) * 10..=i64::from(most) * 10;
    if inside.contains(&i64::from(tenths)) {
        Ok(tenths)
    } else {
        Err(outside)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers() {
        assert_eq!(parse_tenths("15", 0, 90), Ok(150));
        assert_eq!(parse_tenths("15,5", 0, 90), Ok(155));
        assert_eq!(
            parse_tenths("-3", 0, 90),
            Err(NumberError::OutOfRange { least: 0, most: 90 })
        );
        assert_eq!(
            parse_tenths("120", 0, 90),
            Err(NumberError::OutOfRange { least: 0, most: 90 })
        );
        assert_eq!(parse_tenths("abc", 0, 90), Err(NumberError::NotANumber));
        assert_eq!(parse_tenths("inf", 0, 90), Err(NumberError::NotANumber));
        assert_eq!(parse_tenths("1.25", 0, 90), Err(NumberError::TooFine));
    }
}
