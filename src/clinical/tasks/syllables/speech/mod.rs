//! Repeated syllables: pa, ta, ka (alternating motion) and pa-ta-ka (sequential motion).
//!
//! [`repeated`] puts one trial beside the published values; [`trials`] says which trial is scored
//! and what is offered at all.

use std::num::NonZeroU32;

use crate::clinical::knowledge::norms::{Method, Task};
use crate::clinical::tasks::compared::seconds;
use crate::measure::by_count::{RateError, count_by_time, time_by_count};
use crate::measure::decimals::decimals;
use crate::measure::time::Millis;
use crate::measure::units::{Seconds, SyllablesPerSecond};

mod rate;
pub mod trials;

pub use rate::{
    ADULT_LINE, CHILD_SLOW, CHILD_WATCH, PA_LINE, TA_LINE_MEN, TA_LINE_WOMEN, TAP_LIMIT, repeated,
};

/// What is repeated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Syllables {
    /// pa.
    Pa,
    /// ta.
    Ta,
    /// ka.
    Ka,
    /// pa-ta-ka.
    PaTaKa,
}

impl Syllables {
    /// All, in order.
    pub const ALL: [Syllables; 4] = [
        Syllables::Pa,
        Syllables::Ta,
        Syllables::Ka,
        Syllables::PaTaKa,
    ];

    /// Its task in the tables.
    pub const fn task(self) -> Task {
        match self {
            Syllables::Pa => Task::Pa,
            Syllables::Ta => Task::Ta,
            Syllables::Ka => Task::Ka,
            Syllables::PaTaKa => Task::PaTaKa,
        }
    }

    /// In words.
    pub const fn words(self) -> &'static str {
        self.task().words()
    }

    /// Syllables in one repetition: one or three.
    pub const fn each(self) -> NonZeroU32 {
        match self {
            Syllables::PaTaKa => NonZeroU32::MIN.saturating_add(2),
            _ => NonZeroU32::MIN,
        }
    }

    /// The number of repetitions its table of times goes by (FLE72), and the name of that method.
    pub(super) const fn by_count(self) -> (u32, Method) {
        match self {
            Syllables::PaTaKa => (10, Method::Time10),
            _ => (20, Method::Time20),
        }
    }
}

/// How it was timed. The two ways are not interchangeable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Timing {
    /// So many repetitions took this long, from the first to the end of the last. One pa-ta-ka is
    /// one repetition.
    ByCount {
        /// How many.
        repetitions: NonZeroU32,
        /// How long.
        time: Seconds,
    },
    /// So many syllables, each one counted, fell within a window.
    Syllables {
        /// How many syllables.
        count: u32,
        /// How long the window was.
        window: Seconds,
    },
    /// So many whole repetitions fell within a window. Of a single syllable that is the same as
    /// [`Timing::Syllables`].
    Sequences {
        /// How many repetitions.
        count: u32,
        /// How long the window was.
        window: Seconds,
    },
}

/// One trial of repeated syllables.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Repeated {
    /// What was repeated.
    pub what: Syllables,
    /// How it was timed.
    pub timing: Timing,
}

fn millis(time: Seconds) -> Millis {
    // Saturates, and no stopwatch runs that long.
    Millis((time.get() * 1000.0).round() as i64)
}

impl Repeated {
    /// The rate.
    ///
    /// # Errors
    /// [`RateError::NoTime`] for no time at all; [`RateError::Unit`] above 100 syllables per
    /// second.
    pub fn rate(&self) -> Result<SyllablesPerSecond, RateError> {
        let each = self.what.each();
        match self.timing {
            Timing::ByCount { repetitions, time } => time_by_count(repetitions, each, millis(time)),
            Timing::Syllables { count, window } => count_by_time(count, millis(window)),
            Timing::Sequences { count, window } => {
                count_by_time(count.saturating_mul(each.get()), millis(window))
            }
        }
    }

    /// Whether more than one syllable falls to each count of a window.
    pub(super) fn is_coarse(&self) -> bool {
        self.what == Syllables::PaTaKa && matches!(self.timing, Timing::Sequences { .. })
    }

    /// What was done and how fast, with every unit written out: "31 syllables of pa in 5.0
    /// seconds: 6.2 syllables per second".
    ///
    /// # Errors
    /// As [`Repeated::rate`].
    pub fn words(&self) -> Result<String, RateError> {
        let what = self.what.words();
        let (count, time) = match self.timing {
            Timing::ByCount { repetitions, time } => {
                (format!("{repetitions} repetitions of {what}"), time)
            }
            Timing::Syllables { count, window } => (format!("{count} syllables of {what}"), window),
            Timing::Sequences { count, window } => {
                (format!("{count} repetitions of {what}"), window)
            }
        };
        let rate = rate_words(self.what, self.rate()?);
        Ok(format!("{count} in {}: {rate}", seconds(time)))
    }
}

/// A rate with its unit written out, for pa-ta-ka in both: "6.1 syllables per second = 2.0
/// sequences per second". Some papers print the one for the other.
pub fn rate_words(what: Syllables, rate: SyllablesPerSecond) -> String {
    let syllables = format!("{} syllables per second", decimals(rate.get(), 1));
    if what != Syllables::PaTaKa {
        return syllables;
    }
    let sequences = rate.sequences(what.each());
    format!(
        "{syllables} = {} sequences per second",
        decimals(sequences.get(), 1)
    )
}
