//! Units as types, so that seconds can't be handed in where millilitres are due.
//!
//! Every unit is made by a constructor that checks its range, and shows itself in plain words. Shown numbers are rounded half up; a page that
//! sets a value beside a limit asks for more decimals, as in `{:.2}`.
//!
//! Only the arithmetic that makes sense is there: volume over time, time over time, rate by
//! rate.

use std::fmt;
use std::num::NonZeroU32;

use serde::Serialize;

use super::decimals::decimals;
use super::time::Millis;

/// Why a number can't be taken as the unit it was meant for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum UnitError {
    /// Not a number, or without end.
    NotANumber {
        /// The unit in plain words.
        unit: &'static str,
    },
    /// Below the least value the unit allows.
    TooSmall {
        /// The unit in plain words.
        unit: &'static str,
        /// The least value allowed.
        least: f64,
    },
    /// Above the greatest value the unit allows.
    TooLarge {
        /// The unit in plain words.
        unit: &'static str,
        /// The greatest value allowed.
        most: f64,
    },
    /// A division by nothing, such as a volume over no time.
    ByZero {
        /// What is zero, in plain words.
        unit: &'static str,
    },
    /// More was left in the cup than was offered.
    MoreLeftThanOffered,
}

impl fmt::Display for UnitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnitError::NotANumber { unit } => {
                write!(f, "This can't be read as a number ({unit}).")
            }
            UnitError::TooSmall { unit, least } => {
                write!(f, "This must be {} or more ({unit}).", plain(*least))
            }
            UnitError::TooLarge { unit, most } => {
                write!(f, "This must be {} or less ({unit}).", plain(*most))
            }
            UnitError::ByZero { unit } => {
                write!(f, "This can't be worked out: the number of {unit} is zero.")
            }
            UnitError::MoreLeftThanOffered => {
                f.write_str("More is left than was offered: please check both volumes.")
            }
        }
    }
}

impl std::error::Error for UnitError {}

/// A limit without noughts behind the point.
fn plain(limit: f64) -> String {
    let text = decimals(limit, 2);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// `value` if it is a number from `least` to `most`, both included.
fn checked(value: f64, unit: &'static str, least: f64, most: f64) -> Result<f64, UnitError> {
    if !value.is_finite() {
        Err(UnitError::NotANumber { unit })
    } else if value < least {
        Err(UnitError::TooSmall { unit, least })
    } else if value > most {
        Err(UnitError::TooLarge { unit, most })
    } else {
        // Turns -0.0 into 0.0, which would be shown with its sign.
        Ok(value + 0.0)
    }
}

/// `value` rounded half up (half away from zero) to `places` decimals.
///
/// The formatter rounds 24.5 to 24; the trade, and the bands of a chart, take it for 25.
fn rounded(value: f64, places: usize) -> f64 {
    let scale = 10_f64.powi(i32::try_from(places).unwrap_or(9).min(9));
    let scaled = (value * scale).round();
    if scaled.is_finite() {
        scaled / scale + 0.0
    } else {
        value
    }
}

/// A unit held as an `f64` within a range.
macro_rules! unit {
    ($(#[$meta:meta])* $name:ident: $words:literal, $least:expr, $most:expr, $places:literal) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize)]
        #[serde(transparent)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("This many ", $words, ".")]
            ///
            /// # Errors
            ///
            /// When `value` is not a finite number or lies outside the type's range.
            pub fn new(value: f64) -> Result<$name, UnitError> {
                checked(value, $words, $least, $most).map($name)
            }

            #[doc = concat!("The bare number of ", $words, ".")]
            pub const fn get(self) -> f64 {
                self.0
            }
        }

        impl From<$name> for f64 {
            fn from(unit: $name) -> f64 {
                unit.0
            }
        }

        #[doc = concat!("In plain words, to ", $places, " decimals unless a precision is asked for.")]
        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                let places = f.precision().unwrap_or($places);
                let shown = decimals(self.0, u32::try_from(places).unwrap_or(6));
                write!(f, "{shown} {}", $words)
            }
        }
    };
}

unit! {
    /// A length of time in seconds: zero or more.
    ///
    /// Times in records stay whole [`Millis`]; this is for means, deviations and pages.
    ///
    /// ```
    /// use penlight::measure::units::Seconds;
    /// let s = Seconds::new(3.7)?;
    /// assert_eq!(s.to_string(), "3.7 seconds");
    /// assert_eq!(format!("{s:.3}"), "3.700 seconds");
    /// assert!(Seconds::new(-0.1).is_err());
    /// # Ok::<(), penlight::measure::units::UnitError>(())
    /// ```
    Seconds: "seconds", 0.0, f64::MAX, 1
}

impl Seconds {
    /// This time over another, as in s/z.
    ///
    /// # Errors
    ///
    /// [`UnitError::ByZero`] when `other` is no time at all.
    ///
    /// ```
    /// use penlight::measure::units::Seconds;
    /// let s_z = Seconds::new(18.0)?.over(Seconds::new(13.0)?)?;
    /// assert_eq!(s_z.to_string(), "1.38 to 1");
    /// assert!(Seconds::new(18.0)?.over(Seconds::new(0.0)?).is_err());
    /// # Ok::<(), penlight::measure::units::UnitError>(())
    /// ```
    pub fn over(self, other: Seconds) -> Result<Ratio, UnitError> {
        if other.0 == 0.0 {
            return Err(UnitError::ByZero { unit: "seconds" });
        }
        Ratio::new(self.0 / other.0)
    }

    /// The nearest whole number of milliseconds, as it was timed: what is set against a line that
    /// must be met exactly.
    pub fn millis(self) -> Millis {
        // Saturates, and no stopwatch runs that long.
        Millis((self.0 * 1000.0).round() as i64)
    }

    /// The time that falls to each of `n`, such as seconds for each swallow.
    pub fn each(self, n: NonZeroU32) -> Seconds {
        Seconds(self.0 / f64::from(n.get()))
    }
}

/// # Errors
///
/// [`UnitError::TooSmall`] for a negative length.
impl TryFrom<Millis> for Seconds {
    type Error = UnitError;
    fn try_from(length: Millis) -> Result<Seconds, UnitError> {
        Seconds::new(length.seconds())
    }
}

unit! {
    /// One quantity over another of the same kind: zero or more, without a unit.
    Ratio: "to 1", 0.0, f64::MAX, 2
}

impl Ratio {
    /// The ratio to two decimals, half up: the form in which the trade compares an s/z ratio
    /// with its limit.
    ///
    /// ```
    /// use penlight::measure::units::{Ratio, Seconds};
    /// // 15.4 / 11.0 is a hair over 1.4 in binary, and is not over 1.40 on paper.
    /// let s_z = Seconds::new(15.4)?.over(Seconds::new(11.0)?)?;
    /// assert!(s_z.get() > 1.4);
    /// assert_eq!(s_z.to_hundredths().get(), 1.4);
    /// # Ok::<(), penlight::measure::units::UnitError>(())
    /// ```
    pub fn to_hundredths(self) -> Ratio {
        Ratio(rounded(self.0, 2))
    }
}

unit! {
    /// Events per second, whatever they are: 0 to 1000, since marks are whole milliseconds.
    PerSecond: "per second", 0.0, 1000.0, 1
}

impl PerSecond {
    /// The same rate per minute.
    pub fn per_minute(self) -> PerMinute {
        PerMinute(self.0 * 60.0)
    }
}

unit! {
    /// Events per minute, such as breaths: 0 to 60 000.
    ///
    /// Shown as a whole number unless decimals are asked for, so that the page and the band it
    /// falls in agree: see [`PerMinute::whole`].
    ///
    /// ```
    /// use penlight::measure::units::PerMinute;
    /// let rate = PerMinute::new(24.5)?;
    /// assert_eq!(rate.to_string(), "25 per minute");
    /// assert_eq!(format!("{rate:.1}"), "24.5 per minute");
    /// # Ok::<(), penlight::measure::units::UnitError>(())
    /// ```
    PerMinute: "per minute", 0.0, 60_000.0, 0
}

impl PerMinute {
    /// The nearest whole number, half up: the form in which a rate is put in a band.
    pub fn whole(self) -> u32 {
        // In range by construction, so the conversion can't cut anything off.
        self.0.round() as u32
    }
}

unit! {
    /// Rate of syllables: 0 to 100 per second.
    ///
    /// ```
    /// use penlight::measure::units::SyllablesPerSecond;
    /// assert_eq!(SyllablesPerSecond::new(6.2)?.to_string(), "6.2 syllables per second");
    /// # Ok::<(), penlight::measure::units::UnitError>(())
    /// ```
    SyllablesPerSecond: "syllables per second", 0.0, 100.0, 1
}

impl SyllablesPerSecond {
    /// The rate of whole sequences, such as pa-ta-ka of three syllables.
    ///
    /// ```
    /// use std::num::NonZeroU32;
    /// use penlight::measure::units::SyllablesPerSecond;
    /// let three = NonZeroU32::MIN.saturating_add(2);
    /// let rate = SyllablesPerSecond::new(5.25)?.sequences(three);
    /// assert_eq!(rate.to_string(), "1.75 sequences per second");
    /// # Ok::<(), penlight::measure::units::UnitError>(())
    /// ```
    pub fn sequences(self, syllables_per_sequence: NonZeroU32) -> SequencesPerSecond {
        SequencesPerSecond(self.0 / f64::from(syllables_per_sequence.get()))
    }
}

unit! {
    /// Rate of sequences of syllables, such as pa-ta-ka: 0 to 100 per second.
    SequencesPerSecond: "sequences per second", 0.0, 100.0, 2
}

unit! {
    /// Hundredths of something: zero or more. May be above 100, as a coefficient of variation
    /// can be.
    Percent: "per cent", 0.0, f64::MAX, 1
}

unit! {
    /// Drinking rate: 0 to 2000 millilitres per second.
    MillilitresPerSecond: "millilitres per second", 0.0, 2000.0, 1
}

unit! {
    /// Volume of one swallow: 0 to 2000 millilitres.
    MillilitresPerSwallow: "millilitres per swallow", 0.0, 2000.0, 1
}

unit! {
    /// How many of something fall to one bite: 0 to 10 000.
    PerBite: "per bite", 0.0, 10_000.0, 2
}

unit! {
    /// A width read off a ruler, such as that of the open mouth: 0 to 150 millimetres.
    Millimetres: "millimetres", 0.0, 150.0, 0
}

unit! {
    /// Flow of air: 0 to 1800 litres per minute.
    LitresPerMinute: "litres per minute", 0.0, 1800.0, 0
}

/// A volume in millilitres: 0 to 2000, kept to one decimal.
///
/// Held as whole tenths, so that what is left and what was drunk add up to what was offered.
///
/// ```
/// use penlight::measure::units::Millilitres;
/// let offered = Millilitres::new(150.0)?;
/// let drunk = offered.less(Millilitres::new(39.5)?)?;
/// assert_eq!(drunk.to_string(), "110.5 millilitres");
/// assert_eq!(offered.to_string(), "150 millilitres");
/// # Ok::<(), penlight::measure::units::UnitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(into = "f64")]
pub struct Millilitres {
    tenths: u16,
}

impl Millilitres {
    /// Nothing.
    pub const ZERO: Millilitres = Millilitres { tenths: 0 };

    /// The greatest volume, in tenths.
    const MOST: u16 = 20_000;

    /// This many millilitres, rounded half up to one decimal.
    ///
    /// # Errors
    ///
    /// When `value` is not a finite number or lies outside 0 to 2000.
    pub fn new(value: f64) -> Result<Millilitres, UnitError> {
        let most = f64::from(Millilitres::MOST) / 10.0;
        let value = checked(value, "millilitres", 0.0, most)?;
        // In range by the check above, so the conversion can't cut anything off.
        let tenths = (value * 10.0).round() as u16;
        Ok(Millilitres { tenths })
    }

    /// A whole number of millilitres.
    pub const fn whole(ml: u8) -> Millilitres {
        Millilitres {
            tenths: ml as u16 * 10,
        }
    }

    /// The bare number of millilitres.
    pub fn get(self) -> f64 {
        f64::from(self.tenths) / 10.0
    }

    /// The bare number of tenths of a millilitre: exact, for a line that must be met exactly.
    pub const fn tenths(self) -> u16 {
        self.tenths
    }

    /// What was drunk of this volume when `left` remains.
    ///
    /// # Errors
    ///
    /// [`UnitError::MoreLeftThanOffered`] when `left` is the greater.
    pub fn less(self, left: Millilitres) -> Result<Millilitres, UnitError> {
        match self.tenths.checked_sub(left.tenths) {
            Some(tenths) => Ok(Millilitres { tenths }),
            None => Err(UnitError::MoreLeftThanOffered),
        }
    }

    /// This volume in that time: the swallowing capacity of a timed water test.
    ///
    /// # Errors
    ///
    /// [`UnitError::ByZero`] when `time` is no time at all; [`UnitError::TooLarge`] above 2000
    /// millilitres per second.
    ///
    /// ```
    /// use penlight::measure::units::{Millilitres, Seconds};
    /// let capacity = Millilitres::new(100.0)?.over(Seconds::new(12.5)?)?;
    /// assert_eq!(capacity.to_string(), "8.0 millilitres per second");
    /// # Ok::<(), penlight::measure::units::UnitError>(())
    /// ```
    pub fn over(self, time: Seconds) -> Result<MillilitresPerSecond, UnitError> {
        if time.0 == 0.0 {
            return Err(UnitError::ByZero { unit: "seconds" });
        }
        MillilitresPerSecond::new(self.get() / time.0)
    }

    /// The mean volume of each of `swallows`.
    pub fn per_swallow(self, swallows: NonZeroU32) -> MillilitresPerSwallow {
        MillilitresPerSwallow(self.get() / f64::from(swallows.get()))
    }
}

impl From<Millilitres> for f64 {
    fn from(volume: Millilitres) -> f64 {
        volume.get()
    }
}

/// In plain words; the decimal is left out where it is nought.
impl fmt::Display for Millilitres {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = if self.tenths == 10 {
            "millilitre"
        } else {
            "millilitres"
        };
        match (self.tenths / 10, self.tenths % 10) {
            (whole, 0) => write!(f, "{whole} {unit}"),
            (whole, tenth) => write!(f, "{whole}.{tenth} {unit}"),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn not_a_number_is_refused_everywhere() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(Seconds::new(bad).is_err());
            assert!(Percent::new(bad).is_err());
            assert!(Millilitres::new(bad).is_err());
        }
    }

    #[test]
    fn both_ends_of_a_range_belong_to_it() {
        assert!(Millilitres::new(0.0).is_ok());
        assert!(Millilitres::new(2000.0).is_ok());
        assert!(Millilitres::new(2000.01).is_err());
        assert!(Millilitres::new(-0.01).is_err());
        assert!(SyllablesPerSecond::new(100.1).is_err());
    }

    #[test]
    fn errors_read_as_sentences() {
        let text = |r: Result<Millilitres, UnitError>| r.map_err(|e| e.to_string());
        assert_eq!(
            text(Millilitres::new(2500.0)),
            Err("This must be 2000 or less (millilitres).".to_owned())
        );
        assert_eq!(
            text(Millilitres::new(-1.0)),
            Err("This must be 0 or more (millilitres).".to_owned())
        );
        assert_eq!(
            text(Millilitres::new(f64::NAN)),
            Err("This can't be read as a number (millilitres).".to_owned())
        );
    }

    #[test]
    fn shown_numbers_round_half_up_and_have_no_negative_nought() {
        let rate = SyllablesPerSecond::new(6.25).unwrap();
        assert_eq!(rate.to_string(), "6.3 syllables per second");
        assert_eq!(Seconds::new(-0.0).unwrap().to_string(), "0.0 seconds");
        // Six decimals are the most that is shown.
        assert_eq!(
            format!("{:.300}", Percent::new(1.0).unwrap()),
            "1.000000 per cent"
        );
    }

    #[test]
    fn volumes_are_kept_to_a_tenth() {
        assert_eq!(Millilitres::new(12.34).unwrap().get(), 12.3);
        assert_eq!(Millilitres::new(1.0).unwrap().to_string(), "1 millilitre");
        let (a, b) = (
            Millilitres::new(0.1).unwrap(),
            Millilitres::new(0.2).unwrap(),
        );
        let full = Millilitres::new(2000.0).unwrap();
        assert_eq!(full.less(full), Ok(Millilitres::ZERO));
        assert_eq!(a.less(b), Err(UnitError::MoreLeftThanOffered));
    }

    #[test]
    fn a_rate_per_second_becomes_one_per_minute() {
        let twice = PerSecond::new(2.0).unwrap();
        assert_eq!(twice.per_minute(), PerMinute::new(120.0).unwrap());
    }

    #[test]
    fn a_negative_length_is_not_a_number_of_seconds() {
        assert!(Seconds::try_from(Millis(-1)).is_err());
        assert_eq!(Seconds::try_from(Millis(3_700)), Seconds::new(3.7));
    }
}
