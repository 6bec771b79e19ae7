//! Repeated syllables: pa, ta, ka (alternating motion) and pa-ta-ka (sequential motion).

use std::num::NonZeroU32;

use serde::Serialize;

use crate::clinical::knowledge::norms::{Method, Task};
use crate::measure::by_count::{RateError, count_by_time, time_by_count};
use crate::measure::units::{Seconds, SyllablesPerSecond};

/// What is repeated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
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

    /// Syllables in one repetition: one or three.
    pub const fn each(self) -> NonZeroU32 {
        match self {
            Syllables::PaTaKa => NonZeroU32::MIN.saturating_add(2),
            _ => NonZeroU32::MIN,
        }
    }

    /// The number of repetitions its table of times goes by (FLE72), and the name of that method.
    pub const fn by_count(self) -> (u32, Method) {
        match self {
            Syllables::PaTaKa => (10, Method::Time10),
            _ => (20, Method::Time20),
        }
    }
}

/// How it was timed. The two ways are not interchangeable.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
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
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Repeated {
    /// What was repeated.
    pub what: Syllables,
    /// How it was timed.
    pub timing: Timing,
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
            Timing::ByCount { repetitions, time } => {
                time_by_count(repetitions, each, time.millis())
            }
            Timing::Syllables { count, window } => count_by_time(count, window.millis()),
            Timing::Sequences { count, window } => {
                count_by_time(count.saturating_mul(each.get()), window.millis())
            }
        }
    }

    /// Whether more than one syllable falls to each count of a window.
    pub fn is_coarse(&self) -> bool {
        self.what == Syllables::PaTaKa && matches!(self.timing, Timing::Sequences { .. })
    }
}
