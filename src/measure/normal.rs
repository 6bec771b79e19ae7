//! How far a value is off a published mean, and which part of the group that leaves behind.
//!
//! A percentile from a mean and a standard deviation takes the group for normally distributed.
//! Few groups are, least of all in their tails; so it is an orientation, not a rank that was
//! counted.
//!
//! The formulas are the usual ones. Source of the normal distribution:
//! Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 26.2.11 and 26.2.14.

use std::fmt;

use serde::Serialize;

/// Why a value can't be set beside a mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScoreError {
    /// Value, mean, spread or what comes of them is no finite number.
    NotANumber,
    /// The standard deviation is zero or less.
    NoSpread,
}

impl fmt::Display for ScoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ScoreError::NotANumber => "This can't be set beside the mean: it is not a number.",
            ScoreError::NoSpread => {
                "This can't be set beside the mean: the standard deviation must be more than zero."
            }
        })
    }
}

impl std::error::Error for ScoreError {}

/// Which way is better.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Better {
    /// Less of it, as with the seconds that twenty syllables take.
    Less,
    /// More of it, as with syllables per second.
    More,
}

/// Distance from a mean in standard deviations, z: any finite number, above zero when the value
/// is above the mean. It does not say which way is better.
///
/// ```
/// use penlight::measure::normal::{Better, StandardScore};
/// // 6.8 seconds where 4.8 are usual: slow.
/// let z = StandardScore::new(6.8, 4.8, 1.0)?;
/// assert_eq!(format!("{:.2}", z.get()), "2.00");
/// assert_eq!(format!("{:.1}", z.percentile_of_performance(Better::Less).get()), "2.3");
/// # Ok::<(), penlight::measure::normal::ScoreError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize)]
pub struct StandardScore(f64);

impl StandardScore {
    /// (value - mean) / SD, all three in the same unit.
    ///
    /// # Errors
    ///
    /// [`ScoreError::NotANumber`] when one of them, or the result, is no finite number;
    /// [`ScoreError::NoSpread`] when `sd` is zero or less.
    pub fn new(value: f64, mean: f64, sd: f64) -> Result<StandardScore, ScoreError> {
        if sd <= 0.0 {
            return Err(ScoreError::NoSpread);
        }
        let z = (value - mean) / sd;
        // An endless `sd` would make a z of zero, and so the middle of the group.
        if z.is_finite() && sd.is_finite() {
            Ok(StandardScore(z + 0.0))
        } else {
            Err(ScoreError::NotANumber)
        }
    }

    /// The bare number of standard deviations.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// The part of the group that did worse: 100 Phi(-z) where less is better, 100 Phi(z) where
    /// more is. Low is poor either way.
    pub fn percentile_of_performance(self, better: Better) -> Percentile {
        let z = match better {
            Better::Less => -self.0,
            Better::More => self.0,
        };
        Percentile(100.0 * part_below(z))
    }
}

/// A place in a group of a hundred: 0 to 100, the ends included, since what is left of the group
/// far out is too small for a number.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Percentile(f64);

impl Percentile {
    /// The bare number, 0 to 100.
    pub const fn get(self) -> f64 {
        self.0
    }
}

/// Up to here the series is used, from here on the fraction.
const SERIES_UP_TO: f64 = 2.0;

/// Steps of the fraction; at [`SERIES_UP_TO`], where it is slowest, 60 would be off by 1e-12.
const FRACTION_STEPS: u32 = 80;

/// 1 / sqrt(2 pi).
const DENSITY_AT_MEAN: f64 = 0.398_942_280_401_432_7;

/// The part of a normal distribution below `z` standard deviations, Phi(z): 0 to 1.
///
/// Error, in parts of the result: under 1e-13 from z = -37 upwards; below that less than 1e-299
/// is left, and it fades into zero.
///
/// With Z the density: near the mean the series 26.2.11 of Abramowitz and Stegun,
/// `1/2 + Z(z) (z + z^3/3 + z^5/(3 5) + ...)`; in the tail, which the series would get as a small
/// difference of two large parts, their continued fraction 26.2.14,
/// `Z(x) / (x + 1/(x + 2/(x + 3/(x + ...))))`. Neither has a table of coefficients, so it stays
/// small in the app.
fn part_below(z: f64) -> f64 {
    let x = z.abs();
    let density = DENSITY_AT_MEAN * (-0.5 * x * x).exp();
    if x < SERIES_UP_TO {
        // Under 1e-17 a term no longer moves the sum.
        let (mut term, mut sum, mut odd) = (x, x, 1.0);
        while term > 1e-17 * sum {
            odd += 2.0;
            term *= x * x / odd;
            sum += term;
        }
        return 0.5 + z.signum() * density * sum;
    }
    let fraction = (1..=FRACTION_STEPS)
        .rev()
        .fold(x, |fraction, step| x + f64::from(step) / fraction);
    let tail = density / fraction;
    if z < 0.0 { tail } else { 1.0 - tail }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn score(value: f64, mean: f64, sd: f64) -> StandardScore {
        StandardScore::new(value, mean, sd).unwrap()
    }

    /// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: area from the mean to z.
    #[test]
    fn areas_of_the_nist_table() {
        for (z, area) in [
            (0.0, "0.00000"),
            (0.1, "0.03983"),
            (0.5, "0.19146"),
            (1.0, "0.34134"),
            (1.5, "0.43319"),
            (1.64, "0.44950"),
            (1.96, "0.47500"),
            (2.0, "0.47725"),
            (2.33, "0.49010"),
            (2.5, "0.49379"),
            (3.0, "0.49865"),
            (3.5, "0.49977"),
            (4.0, "0.49997"),
        ] {
            assert_eq!(format!("{:.5}", part_below(z) - 0.5), area, "z = {z}");
            assert_eq!(format!("{:.5}", 0.5 - part_below(-z)), area, "z = -{z}");
        }
    }

    /// Abramowitz and Stegun, table 26.1: fifteen decimals.
    #[test]
    fn fifteen_decimals_of_a_published_table() {
        for (z, below) in [
            (0.5, "0.691462461274013"),
            (1.0, "0.841344746068543"),
            (1.5, "0.933192798731142"),
            (2.0, "0.977249868051821"),
            (2.5, "0.993790334674224"),
            (3.0, "0.998650101968370"),
        ] {
            assert_eq!(format!("{:.15}", part_below(z)), below, "z = {z}");
        }
    }

    /// Marsaglia 2004, Evaluating the Normal Distribution, J Stat Softw 11(4): true values, here
    /// to fifteen decimals.
    #[test]
    fn true_values_of_a_paper() {
        for (z, below) in [
            (-1.1, "0.135666060946383"),
            (0.1, "0.539827837277029"),
            (1.2, "0.884930329778292"),
        ] {
            assert_eq!(format!("{:.15}", part_below(z)), below, "z = {z}");
        }
    }

    /// Abramowitz and Stegun, table 26.2: -log10 of the upper tail, far out.
    #[test]
    fn tails_of_a_published_table() {
        for (z, minus_log) in [
            (5.0, "6.54265"),
            (10.0, "23.11805"),
            (15.0, "50.43522"),
            (20.0, "88.56010"),
            (30.0, "197.30921"),
        ] {
            let tail = part_below(-z);
            assert_eq!(format!("{:.5}", -tail.log10()), minus_log, "z = {z}");
        }
    }

    /// The values whose percentile is round: 5, 2.5, 1 and 0.1 per cent on one side.
    #[test]
    fn well_known_limits() {
        for (z, part) in [
            (1.644_853_626_951_472_7, 0.05),
            (1.959_963_984_540_054, 0.025),
            (2.326_347_874_040_841, 0.01),
            (3.090_232_306_167_813_7, 0.001),
        ] {
            assert!((part_below(-z) / part - 1.0).abs() < 1e-13, "z = {z}");
            assert!((part_below(z) + part - 1.0).abs() < 1e-15, "z = {z}");
        }
    }

    /// Worked examples from the rows of UW, IBD14, BDI17 and ITO09, with the mean and standard
    /// deviation of its tables: value, mean, SD, what is better, z, percentile of performance.
    #[test]
    fn t6_to_t15_standard_scores() {
        use Better::{Less, More};
        for (value, mean, sd, better, z, percentile) in [
            (6.8, 4.8, 1.0, Less, "2.00", "2.3"),
            // The wrong example of a worksheet: quick is not poor.
            (2.6, 4.8, 1.0, Less, "-2.20", "98.6"),
            (3.7, 3.7, 0.6, Less, "0.00", "50.0"),
            (4.6, 3.7, 0.6, Less, "1.50", "6.7"),
            (4.5, 3.9, 0.6, Less, "1.00", "15.9"),
            (12.3, 8.3, 2.0, Less, "2.00", "2.3"),
            (5.0, 6.2, 0.8, More, "-1.50", "6.7"),
            (5.4, 6.2, 0.8, More, "-1.00", "15.9"),
            (4.0, 5.07, 1.16, More, "-0.92", "17.8"),
            (4.5, 5.7, 0.8, More, "-1.50", "6.7"),
        ] {
            let score = score(value, mean, sd);
            let place = score.percentile_of_performance(better);
            assert_eq!(format!("{:.2}", score.get()), z);
            assert_eq!(format!("{:.1}", place.get()), percentile);
        }
    }

    #[test]
    fn higher_is_never_lower_and_both_sides_mirror() {
        let mut before = 0.0;
        for step in -40_000..=40_000 {
            let z = f64::from(step) / 1000.0;
            let below = part_below(z);
            // The two ways meet at 2 within the last digits.
            assert!(below >= before, "z = {z}");
            assert!((0.0..=1.0).contains(&below));
            assert!((below + part_below(-z) - 1.0).abs() < 1e-15, "z = {z}");
            before = below;
        }
        assert_eq!(part_below(f64::MAX), 1.0);
        assert_eq!(part_below(f64::MIN), 0.0);
    }

    #[test]
    fn what_is_no_score_is_refused() {
        for sd in [0.0, -0.0, -1.0, f64::NEG_INFINITY] {
            assert_eq!(
                StandardScore::new(1.0, 0.0, sd),
                Err(ScoreError::NoSpread),
                "{sd}"
            );
        }
        for (value, mean, sd) in [
            (f64::NAN, 0.0, 1.0),
            (0.0, f64::INFINITY, 1.0),
            (0.0, 0.0, f64::NAN),
            (1.0, 0.0, f64::INFINITY),
            (f64::MAX, 0.0, 0.5),
        ] {
            let none = StandardScore::new(value, mean, sd);
            assert_eq!(none, Err(ScoreError::NotANumber), "{value} {mean} {sd}");
        }
    }
}
