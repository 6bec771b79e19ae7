//! The two ways of timing repeated syllables, and counts over a fixed time.
//!
//! Time-by-count fixes the number of repetitions and takes the time; count-by-time fixes the
//! time and takes the number. Their norms are not interchangeable, so they are two functions.
//!
//! Time-by-count after Fletcher 1972 (FLE72).

use std::fmt;
use std::num::NonZeroU32;

use super::time::Millis;
use super::units::{PerMinute, PerSecond, Seconds, SyllablesPerSecond, UnitError};

/// Why a count and a time don't make a rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RateError {
    /// The time is zero or less.
    NoTime(Millis),
    /// The pace is zero: nothing would ever be counted.
    NoPace,
    /// The result is out of the range of its unit.
    Unit(UnitError),
}

impl fmt::Display for RateError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            RateError::NoTime(time) => {
                write!(f, "A rate needs a time of more than zero, not {time}.")
            }
            RateError::NoPace => f.write_str("A count needs a pace of more than zero."),
            RateError::Unit(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for RateError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            RateError::Unit(error) => Some(error),
            RateError::NoTime(_) | RateError::NoPace => None,
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

/// Events counted over a fixed time as a rate per minute, such as breaths.
///
/// # Errors
///
/// [`RateError::NoTime`] for a window of zero or less; [`RateError::Unit`] above 60 000 per
/// minute.
///
/// ```
/// use penlight::measure::by_count::per_minute;
/// use penlight::measure::time::Millis;
/// assert_eq!(per_minute(9, Millis::from_secs(30))?.to_string(), "18 per minute");
/// # Ok::<(), penlight::measure::by_count::RateError>(())
/// ```
pub fn per_minute(count: u32, window: Millis) -> Result<PerMinute, RateError> {
    let seconds = some_time(window)?;
    Ok(PerMinute::new(f64::from(count) * 60.0 / seconds)?)
}

/// How far the rate per minute moves when one event more is counted in `window`: the coarseness
/// of the count, 4 per minute for fifteen seconds.
///
/// # Errors
///
/// As for [`per_minute`].
pub fn step_per_minute(window: Millis) -> Result<PerMinute, RateError> {
    per_minute(1, window)
}

/// How long a count aloud at a steady pace lasts: 25 at two a second take 12.5 seconds.
///
/// # Errors
///
/// [`RateError::NoPace`] for a pace of zero.
pub fn time_at_pace(count: u32, pace: PerSecond) -> Result<Seconds, RateError> {
    if pace.get() == 0.0 {
        return Err(RateError::NoPace);
    }
    Ok(Seconds::new(f64::from(count) / pace.get())?)
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
            assert_eq!(per_minute(5, time), Err(no_time));
            assert_eq!(step_per_minute(time), Err(no_time));
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

    #[test]
    fn no_pace_no_time() {
        let none = PerSecond::new(0.0).unwrap();
        assert_eq!(time_at_pace(25, none), Err(RateError::NoPace));
    }
}
