//! What a row of marks says: rate and evenness.
//!
//! `N` marks have `N - 1` intervals. Marks are sorted first, because two thumbs on two buttons
//! can deliver them out of order. No mark is ever dropped: an implausibly quick one, or an
//! interval off the others, is pointed out and stays in.
//!
//! Taps carry the tapping finger's own unevenness as well as the patient's, so the figures of
//! evenness describe the taps.
//!
//! Source of the formulas: the usual definitions; breathing rate: KAR14.

use std::fmt;
use std::num::NonZeroUsize;

use super::time::Millis;
use super::units::{PerMinute, PerSecond, Percent, Seconds, UnitError};

/// Why a figure can't be taken from a series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeriesError {
    /// There are fewer marks than the figure needs.
    TooFewMarks {
        /// How many there are.
        have: usize,
        /// How many it takes.
        need: usize,
    },
    /// The marks it would be divided by lie at the same moment.
    NoTime,
    /// The result is out of the range of its unit.
    Unit(UnitError),
}

impl fmt::Display for SeriesError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SeriesError::TooFewMarks { have, need } => {
                write!(f, "This needs {need} marks or more; there are {have}.")
            }
            SeriesError::NoTime => {
                f.write_str("This can't be worked out: there is no time between the marks.")
            }
            SeriesError::Unit(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for SeriesError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            SeriesError::Unit(error) => Some(error),
            SeriesError::TooFewMarks { .. } | SeriesError::NoTime => None,
        }
    }
}

impl From<UnitError> for SeriesError {
    fn from(error: UnitError) -> SeriesError {
        SeriesError::Unit(error)
    }
}

/// Marks in order of time.
///
/// ```
/// use penlight::measure::series::Series;
/// use penlight::measure::time::Millis;
/// let taps = Series::new([0, 160, 330, 490, 660, 820, 990, 1_150, 1_320].map(Millis));
/// assert_eq!(format!("{:.2}", taps.rate_from_onsets()?), "6.06 per second");
/// assert_eq!(format!("{:.3}", taps.mean_interval()?), "0.165 seconds");
/// assert_eq!(format!("{:.2}", taps.cv()?), "3.24 per cent");
/// # Ok::<(), penlight::measure::series::SeriesError>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Series {
    marks: Vec<Millis>,
}

impl Series {
    /// These marks, each a time after a common start, in any order.
    pub fn new(marks: impl IntoIterator<Item = Millis>) -> Series {
        let mut marks: Vec<Millis> = marks.into_iter().collect();
        marks.sort();
        Series { marks }
    }

    /// How many marks there are.
    pub fn count(&self) -> usize {
        self.marks.len()
    }

    /// The times from each mark to the next, one fewer than there are marks.
    pub fn intervals(&self) -> Vec<Millis> {
        self.marks
            .windows(2)
            .map(|pair| match pair {
                [one, next] => *next - *one,
                _ => Millis::ZERO,
            })
            .collect()
    }

    /// The rate from onsets: (N - 1) / (last - first).
    ///
    /// # Errors
    ///
    /// [`SeriesError::TooFewMarks`] under two marks; [`SeriesError::NoTime`] when all lie at the
    /// same moment; [`SeriesError::Unit`] above 1000 per second.
    pub fn rate_from_onsets(&self) -> Result<PerSecond, SeriesError> {
        let intervals = self.intervals_of_at_least(2)?;
        let span = total(&intervals);
        if span == 0.0 {
            return Err(SeriesError::NoTime);
        }
        Ok(PerSecond::new(
            intervals.len() as f64 * MILLIS_PER_SECOND / span,
        )?)
    }

    /// The mean interval.
    ///
    /// # Errors
    ///
    /// [`SeriesError::TooFewMarks`] under two marks.
    pub fn mean_interval(&self) -> Result<Seconds, SeriesError> {
        seconds(mean(&self.intervals_of_at_least(2)?))
    }

    /// The standard deviation of the intervals, over n - 1.
    ///
    /// # Errors
    ///
    /// [`SeriesError::TooFewMarks`] under three marks.
    pub fn sd(&self) -> Result<Seconds, SeriesError> {
        let intervals = self.intervals_of_at_least(3)?;
        let mean = mean(&intervals);
        let squares: f64 = intervals.iter().map(|d| (d - mean).powi(2)).sum();
        seconds((squares / (intervals.len() - 1) as f64).sqrt())
    }

    /// The coefficient of variation of the intervals: 100 SD / mean.
    ///
    /// # Errors
    ///
    /// [`SeriesError::TooFewMarks`] under three marks; [`SeriesError::NoTime`] when all lie at
    /// the same moment.
    pub fn cv(&self) -> Result<Percent, SeriesError> {
        let (sd, mean) = (self.sd()?, self.mean_interval()?);
        if mean.get() == 0.0 {
            return Err(SeriesError::NoTime);
        }
        Ok(Percent::new(100.0 * sd.get() / mean.get())?)
    }

    /// How many marks follow the one before by less than `threshold`: too quick for the thing
    /// counted, and perhaps a finger that bounced. They are pointed out, not taken out.
    ///
    /// ```
    /// use penlight::measure::series::Series;
    /// use penlight::measure::time::Millis;
    /// let taps = Series::new([0, 160, 190, 330].map(Millis));
    /// assert_eq!(taps.quicker_than(Millis(60)), 1);
    /// assert_eq!(taps.count(), 4);
    /// ```
    pub fn quicker_than(&self, threshold: Millis) -> usize {
        let quick = |interval: &Millis| *interval < threshold;
        self.intervals().into_iter().filter(quick).count()
    }

    /// A breathing rate from a tap at every breath: 60 over the median interval, with how many
    /// intervals lie near the median.
    ///
    /// How many intervals must agree, and how closely, is for the place that uses it to settle:
    /// `min_intervals` must lie within `tolerance` of the median, the bound itself included, for
    /// the rate to be steady. The median is that of all intervals, those outside included.
    ///
    /// # Errors
    ///
    /// [`SeriesError::TooFewMarks`] under two marks; [`SeriesError::NoTime`] when the median
    /// interval is no time at all; [`SeriesError::Unit`] above 60 000 per minute.
    ///
    /// ```
    /// use std::num::NonZeroUsize;
    /// use penlight::measure::series::{Series, Steadiness};
    /// use penlight::measure::time::Millis;
    /// use penlight::measure::units::Percent;
    /// let four = NonZeroUsize::MIN.saturating_add(3);
    /// let breaths = Series::new([0, 3_100, 6_000, 9_200, 12_100].map(Millis));
    /// let breathing = breaths.breathing(four, Percent::new(15.0)?)?;
    /// assert_eq!(breathing.rate.to_string(), "20 per minute");
    /// assert_eq!(breathing.steadiness, Steadiness::Steady);
    /// # Ok::<(), penlight::measure::series::SeriesError>(())
    /// ```
    pub fn breathing(
        &self,
        min_intervals: NonZeroUsize,
        tolerance: Percent,
    ) -> Result<Breathing, SeriesError> {
        let median = median(&self.intervals_of_at_least(2)?);
        if median == 0.0 {
            return Err(SeriesError::NoTime);
        }
        let intervals = self.intervals();
        // Multiplied out in milliseconds, so that the bound is exact.
        let near = |interval: &&Millis| {
            100.0 * (interval.0 as f64 - median).abs() <= tolerance.get() * median
        };
        let within = intervals.iter().filter(near).count();
        let outside = intervals.len() - within;
        let steadiness = match (min_intervals.get().saturating_sub(within), outside) {
            (0, 0) => Steadiness::Steady,
            (0, outside) => Steadiness::SteadyApartFrom { outside },
            (more, outside) => Steadiness::KeepCounting { more, outside },
        };
        Ok(Breathing {
            rate: PerMinute::new(60.0 * MILLIS_PER_SECOND / median)?,
            median: seconds(median)?,
            within,
            intervals: intervals.len(),
            steadiness,
        })
    }

    /// The intervals in milliseconds, when there are `need` marks or more.
    ///
    /// Sums and medians of whole milliseconds are exact, those of seconds are not; so figures
    /// are worked out in milliseconds and become seconds at the end.
    fn intervals_of_at_least(&self, need: usize) -> Result<Vec<f64>, SeriesError> {
        let have = self.marks.len();
        if have < need {
            return Err(SeriesError::TooFewMarks { have, need });
        }
        Ok(self.intervals().into_iter().map(|d| d.0 as f64).collect())
    }
}

/// A breathing rate with what is known about it: see [`Series::breathing`].
#[derive(Clone, Debug, PartialEq)]
pub struct Breathing {
    /// 60 over the median interval.
    pub rate: PerMinute,
    /// The median of all intervals.
    pub median: Seconds,
    /// How many intervals are within the tolerance.
    pub within: usize,
    /// How many intervals there are.
    pub intervals: usize,
    /// Whether the intervals agree well enough.
    pub steadiness: Steadiness,
}

/// Whether the intervals between breaths agree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Steadiness {
    /// Enough intervals, and all of them within the tolerance.
    Steady,
    /// Enough intervals are within the tolerance, but some are not: a tap may have been missed
    /// or doubled.
    SteadyApartFrom {
        /// How many are outside.
        outside: usize,
    },
    /// Not enough intervals are within the tolerance.
    KeepCounting {
        /// How many more must come to lie within it.
        more: usize,
        /// How many are outside now.
        outside: usize,
    },
}

impl fmt::Display for Steadiness {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Steadiness::Steady => f.write_str("The intervals agree."),
            Steadiness::SteadyApartFrom { outside: 1 } => {
                f.write_str("The intervals agree apart from 1: a tap may be missing or doubled.")
            }
            Steadiness::SteadyApartFrom { outside } => write!(
                f,
                "The intervals agree apart from {outside}: taps may be missing or doubled."
            ),
            Steadiness::KeepCounting { outside: 0, .. } => {
                f.write_str("Too few intervals yet: keep tapping.")
            }
            Steadiness::KeepCounting { .. } => {
                f.write_str("Too few intervals agree yet: keep tapping.")
            }
        }
    }
}

const MILLIS_PER_SECOND: f64 = 1000.0;

/// `millis` milliseconds in seconds.
fn seconds(millis: f64) -> Result<Seconds, SeriesError> {
    Ok(Seconds::new(millis / MILLIS_PER_SECOND)?)
}

/// The sum of `values`, which is the span of the marks they are the intervals of.
fn total(values: &[f64]) -> f64 {
    values.iter().sum()
}

/// The mean of `values`; zero of none.
fn mean(values: &[f64]) -> f64 {
    if values.is_empty() {
        return 0.0;
    }
    total(values) / values.len() as f64
}

/// The median of `values`, of an even number the mean of the middle two; zero of none.
fn median(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    // The one or two in the middle.
    let middle = sorted.len().saturating_sub(1) / 2..sorted.len() / 2 + 1;
    mean(sorted.get(middle).unwrap_or_default())
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn series<const N: usize>(marks: [i64; N]) -> Series {
        Series::new(marks.map(Millis))
    }

    fn policy() -> (NonZeroUsize, Percent) {
        (NonZeroUsize::new(4).unwrap(), Percent::new(15.0).unwrap())
    }

    #[test]
    fn each_figure_says_how_many_marks_it_needs() {
        let two = |have| SeriesError::TooFewMarks { have, need: 2 };
        let three = |have| SeriesError::TooFewMarks { have, need: 3 };
        let (n, tolerance) = policy();
        for few in [series([]), series([250])] {
            let have = few.count();
            assert_eq!(few.rate_from_onsets(), Err(two(have)));
            assert_eq!(few.mean_interval(), Err(two(have)));
            assert_eq!(few.breathing(n, tolerance), Err(two(have)));
        }
        let pair = series([0, 500]);
        assert_eq!(pair.sd(), Err(three(2)));
        assert_eq!(pair.cv(), Err(three(2)));
        assert_eq!(
            three(2).to_string(),
            "This needs 3 marks or more; there are 2."
        );
    }

    #[test]
    fn an_empty_series_is_no_trouble() {
        let none = series([]);
        assert_eq!(none.count(), 0);
        assert!(none.intervals().is_empty());
        assert_eq!(none.quicker_than(Millis(60)), 0);
    }

    #[test]
    fn marks_at_one_moment_have_no_rate() {
        let same = series([40, 40, 40]);
        let (n, tolerance) = policy();
        assert_eq!(same.rate_from_onsets(), Err(SeriesError::NoTime));
        assert_eq!(same.cv(), Err(SeriesError::NoTime));
        assert_eq!(same.breathing(n, tolerance), Err(SeriesError::NoTime));
        assert_eq!(same.sd().map(Seconds::get), Ok(0.0));
    }

    #[test]
    fn two_thumbs_may_deliver_marks_out_of_order() {
        assert_eq!(series([330, 0, 160]), series([0, 160, 330]));
        assert_eq!(
            series([330, 0, 160]).intervals(),
            [Millis(160), Millis(170)]
        );
    }

    #[test]
    fn a_quick_mark_is_marked_and_kept() {
        let taps = series([0, 60, 119, 119, 300]);
        // Exactly the threshold is not too quick: those of 59 and 0 are.
        assert_eq!(taps.quicker_than(Millis(60)), 2);
        assert_eq!(taps.count(), 5);
        assert_eq!(taps.intervals().len(), 4);
    }

    #[test]
    fn the_median_of_an_even_number_is_between_the_middle_two() {
        assert_eq!(median(&[100.0, 200.0]), 150.0);
        assert_eq!(median(&[]), 0.0);
        assert_eq!(median(&[4.0, 1.0, 9.0]), 4.0);
    }

    #[test]
    fn an_interval_on_the_bound_is_within_it() {
        let (n, tolerance) = policy();
        // Intervals 3.00, 3.45, 3.00, 2.55, 3.00: the extremes are off by 15 per cent exactly.
        let breathing = series([0, 3_000, 6_450, 9_450, 12_000, 15_000])
            .breathing(n, tolerance)
            .unwrap();
        assert_eq!(breathing.steadiness, Steadiness::Steady);
        // One millisecond more is not.
        let breathing = series([0, 3_000, 6_451, 9_451, 12_001, 15_001])
            .breathing(n, tolerance)
            .unwrap();
        assert_eq!(
            breathing.steadiness,
            Steadiness::SteadyApartFrom { outside: 1 }
        );
    }

    #[test]
    fn too_few_breaths_ask_for_more() {
        let (n, tolerance) = policy();
        let breathing = series([0, 3_000, 6_000]).breathing(n, tolerance).unwrap();
        assert_eq!(
            breathing.steadiness,
            Steadiness::KeepCounting {
                more: 2,
                outside: 0
            }
        );
        assert_eq!(
            breathing.steadiness.to_string(),
            "Too few intervals yet: keep tapping."
        );
    }

    #[test]
    fn the_ends_of_the_clock_are_no_trouble() {
        let (n, tolerance) = policy();
        let wide = series([i64::MIN, 0, i64::MAX]);
        assert!(wide.mean_interval().is_ok());
        assert!(wide.sd().is_ok());
        assert!(wide.breathing(n, tolerance).is_ok());
    }
}
