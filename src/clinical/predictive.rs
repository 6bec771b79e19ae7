//! What a pass or a refer is worth among people of whom a known part has the condition.
//!
//! Sensitivity and specificity belong to a test and to the study that found them; what a result
//! means for the person it was found in depends on how common the condition is where the test is
//! used. No figure from here makes a flag.
//!
//! Source of the formulas: the usual definitions (Bayes).

use std::fmt;

use crate::measure::decimals::decimals;
use crate::measure::units::UnitError;

/// A part of a whole: 0 to 1, both included.
///
/// ```
/// use penlight::clinical::predictive::Proportion;
/// assert_eq!(Proportion::new(0.965)?.to_string(), "96.5 per cent");
/// // 96.5 per cent is not 96.5.
/// assert!(Proportion::new(96.5).is_err());
/// # Ok::<(), penlight::measure::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Proportion(f64);

impl Proportion {
    /// This part, as a number from 0 to 1.
    ///
    /// # Errors
    ///
    /// When `value` is not a finite number or lies outside 0 to 1.
    pub fn new(value: f64) -> Result<Proportion, UnitError> {
        let unit = "part of a whole";
        if !value.is_finite() {
            Err(UnitError::NotANumber { unit })
        } else if value < 0.0 {
            Err(UnitError::TooSmall { unit, least: 0.0 })
        } else if value > 1.0 {
            Err(UnitError::TooLarge { unit, most: 1.0 })
        } else {
            Ok(Proportion(value + 0.0))
        }
    }

    /// The bare number, 0 to 1.
    pub const fn get(self) -> f64 {
        self.0
    }

    /// The part that is left, 1 - this.
    pub fn rest(self) -> Proportion {
        Proportion(1.0 - self.0)
    }

    /// `part` out of `part + rest`, neither below zero; none where both are zero.
    fn out_of(part: f64, rest: f64) -> Option<Proportion> {
        let whole = part + rest;
        // A whole is never less than its part, rounding included, so this stays in range.
        (whole > 0.0).then(|| Proportion(part / whole))
    }
}

/// In hundredths, to one decimal.
impl fmt::Display for Proportion {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} per cent", decimals(100.0 * self.0, 1))
    }
}

/// How often a test is right, as a study found it.
///
/// ```
/// use penlight::clinical::predictive::{Accuracy, Proportion};
/// // Suiter & Leder 2008, 90 mL of water, where 10 in 100 aspirate.
/// let water = Accuracy {
///     sensitivity: Proportion::new(0.965)?,
///     specificity: Proportion::new(0.487)?,
/// };
/// let tenth = Proportion::new(0.1)?;
/// let shown = |p: Option<Proportion>| p.map(|p| p.to_string());
/// assert_eq!(shown(water.positive_predictive(tenth)).as_deref(), Some("17.3 per cent"));
/// assert_eq!(shown(water.negative_predictive(tenth)).as_deref(), Some("99.2 per cent"));
/// # Ok::<(), penlight::measure::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Accuracy {
    /// The part of those with the condition whom the test finds.
    pub sensitivity: Proportion,
    /// The part of those without the condition whom the test passes.
    pub specificity: Proportion,
}

impl Accuracy {
    /// The part of those found who have the condition:
    /// `Se p / (Se p + (1 - Sp) (1 - p))`, p being `prevalence`.
    ///
    /// None where the test would find nobody.
    pub fn positive_predictive(self, prevalence: Proportion) -> Option<Proportion> {
        let well = prevalence.rest().0;
        Proportion::out_of(
            self.sensitivity.0 * prevalence.0,
            self.specificity.rest().0 * well,
        )
    }

    /// The part of those passed who do not have the condition:
    /// `Sp (1 - p) / (Sp (1 - p) + (1 - Se) p)`, p being `prevalence`.
    ///
    /// None where the test would pass nobody.
    pub fn negative_predictive(self, prevalence: Proportion) -> Option<Proportion> {
        let well = prevalence.rest().0;
        Proportion::out_of(
            self.specificity.0 * well,
            self.sensitivity.rest().0 * prevalence.0,
        )
    }
}

/// How many people a study counted, by condition and result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TwoByTwo {
    /// With the condition, found.
    pub true_positive: u32,
    /// With the condition, passed.
    pub false_negative: u32,
    /// Without the condition, found.
    pub false_positive: u32,
    /// Without the condition, passed.
    pub true_negative: u32,
}

impl TwoByTwo {
    /// Sensitivity and specificity; none where nobody has the condition, or everybody.
    pub fn accuracy(self) -> Option<Accuracy> {
        Some(Accuracy {
            sensitivity: counted(self.true_positive, self.false_negative)?,
            specificity: counted(self.true_negative, self.false_positive)?,
        })
    }

    /// The part of those found who have the condition; none where nobody was found.
    pub fn positive_predictive(self) -> Option<Proportion> {
        counted(self.true_positive, self.false_positive)
    }

    /// The part of those passed who do not have the condition; none where nobody was passed.
    pub fn negative_predictive(self) -> Option<Proportion> {
        counted(self.true_negative, self.false_negative)
    }

    /// The part that has the condition; none where nobody was counted.
    pub fn prevalence(self) -> Option<Proportion> {
        Proportion::out_of(
            f64::from(self.true_positive) + f64::from(self.false_negative),
            f64::from(self.false_positive) + f64::from(self.true_negative),
        )
    }
}

fn counted(part: u32, rest: u32) -> Option<Proportion> {
    Proportion::out_of(f64::from(part), f64::from(rest))
}
