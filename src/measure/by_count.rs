//! The two ways of timing repeated syllables, and counts over a fixed time.
//!
//! Time-by-count fixes the number of repetitions and takes the time; count-by-time fixes the
//! time and takes the number. Their norms are not interchangeable, so they are two functions.
//!
//! Time-by-count after Fletcher 1972 (FLE72).

use std::fmt;
use std::num::NonZeroU32;

use super::time::Millis;
use super::units::{SyllablesPerSecond, UnitError};

/// Why a count and a time don't make a rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RateError {
    /// The time is zero or less.
    NoTime(Millis),
    /// The result is out of the range of its unit.
    Unit(UnitError),
}

impl fmt::Display for RateError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            RateError::NoTime(time) => {
                write!(f, "A rate needs a time of more than zero, not {time}.")
            }
            RateError::Unit(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for RateError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            RateError::Unit(error) => Some(error),
            RateError::NoTime(_) => None,
        }
    }
}

impl From<UnitError> for RateError {
    fn from(error: UnitError) -> RateError {
        RateError::Unit(error)
    }
}

/// `time` in seconds, when there is any.
fn some_time(time: Millis) -> Result<f64, RateError> {
    if time > Millis::ZERO {
        Ok(time.seconds())
    } else {
        Err(RateError::NoTime(time))
    }
}

/// Time-by-count: so many repetitions of so many syllables took this long.
///
/// `time` runs from the first tap to the Stop press after the last syllable has ended. Stopping
/// at the last tap would leave out the last syllable and flatter by one interval; for taps alone
/// use [`Series::rate_from_onsets`](super::series::Series::rate_from_onsets).
///
/// # Errors
///
/// [`RateError::NoTime`] for a time of zero or less; [`RateError::Unit`] above 100 syllables per
/// second.
///
/// ```
/// use std::num::NonZeroU32;
/// use penlight::measure::by_count::time_by_count;
/// use penlight::measure::time::Millis;
/// let twenty = NonZeroU32::MIN.saturating_add(19);
/// let rate = time_by_count(twenty, NonZeroU32::MIN, Millis(3_700))?;
/// assert_eq!(format!("{rate:.2}"), "5.41 syllables per second");
/// # Ok::<(), penlight::measure::by_count::RateError>(())
/// ```
pub fn time_by_count(
    repetitions: NonZeroU32,
    syllables_each: NonZeroU32,
    time: Millis,
) -> Result<SyllablesPerSecond, RateError> {
    let seconds = some_time(time)?;
    let syllables = f64::from(repetitions.get()) * f64::from(syllables_each.get());
    Ok(SyllablesPerSecond::new(syllables / seconds)?)
}

/// Count-by-time: this many syllables fell within a window of this length.
///
/// The window opens on the first syllable, and that one counts. No syllables at all is a rate of
/// zero.
///
/// # Errors
///
/// [`RateError::NoTime`] for a window of zero or less; [`RateError::Unit`] above 100 syllables
/// per second.
///
/// ```
/// use penlight::measure::by_count::count_by_time;
/// use penlight::measure::time::Millis;
/// let rate = count_by_time(31, Millis::from_secs(5))?;
/// assert_eq!(rate.to_string(), "6.2 syllables per second");
/// # Ok::<(), penlight::measure::by_count::RateError>(())
/// ```
pub fn count_by_time(syllables: u32, window: Millis) -> Result<SyllablesPerSecond, RateError> {
    let seconds = some_time(window)?;
    Ok(SyllablesPerSecond::new(f64::from(syllables) / seconds)?)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn no_time_no_rate() {
        for time in [Millis::ZERO, Millis(-1)] {
            let no_time = RateError::NoTime(time);
            assert_eq!(
                time_by_count(NonZeroU32::MIN, NonZeroU32::MIN, time),
                Err(no_time)
            );
            assert_eq!(count_by_time(5, time), Err(no_time));
        }
        assert_eq!(
            RateError::NoTime(Millis::ZERO).to_string(),
            "A rate needs a time of more than zero, not 0.0 s."
        );
    }

    #[test]
    fn silence_is_a_rate_of_zero() {
        assert_eq!(
            count_by_time(0, Millis(5_000)).map(SyllablesPerSecond::get),
            Ok(0.0)
        );
    }

    #[test]
    fn an_impossible_rate_is_an_error_not_a_number() {
        let most = NonZeroU32::MAX;
        assert!(matches!(
            time_by_count(most, most, Millis(1)),
            Err(RateError::Unit(UnitError::TooLarge { .. }))
        ));
        assert!(matches!(
            count_by_time(20, Millis(1)),
            Err(RateError::Unit(UnitError::TooLarge { .. }))
        ));
    }
}
