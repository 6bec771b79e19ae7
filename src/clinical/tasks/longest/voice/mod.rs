//! Voice: how long a sound is held, the ratio of s to z, and the range of pitch.

use std::fmt;

use crate::clinical::tasks::compared::seconds;
use crate::measure::units::Seconds;

mod longest;
mod pitch;
mod s_z;

pub use longest::{ADULT_SHORT, Sound, longest};
pub use pitch::pitch_range;
pub use s_z::{CannotCompute, S_Z_BORDER, S_Z_LIMIT, SToZ, s_to_z};

/// One to three trials of one sound, held as long as possible.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    first: Seconds,
    others: Vec<Seconds>,
}

/// Why trials were not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldError {
    /// There is none.
    NoTrial,
    /// There are more than three: the best of many is longer, and no longer comparable. How many.
    TooMany(usize),
}

impl fmt::Display for HeldError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            HeldError::NoTrial => f.write_str("There is no trial yet."),
            HeldError::TooMany(n) => write!(
                f,
                "The best of {} trials is taken; there are {n}. Choose which.",
                Held::MOST
            ),
        }
    }
}

impl std::error::Error for HeldError {}

impl Held {
    /// Most trials taken.
    pub const MOST: usize = 3;

    /// These trials, in the order they were done.
    ///
    /// # Errors
    /// [`HeldError`] for none, or more than three.
    pub fn new(trials: &[Seconds]) -> Result<Held, HeldError> {
        match trials {
            [] => Err(HeldError::NoTrial),
            _ if trials.len() > Held::MOST => Err(HeldError::TooMany(trials.len())),
            [first, others @ ..] => Ok(Held {
                first: *first,
                others: others.to_vec(),
            }),
        }
    }

    /// How many trials there are.
    pub fn count(&self) -> usize {
        1 + self.others.len()
    }

    /// The longest: the one that is judged.
    pub fn best(&self) -> Seconds {
        self.pick(|a, b| a > b)
    }

    /// The shortest.
    pub fn shortest(&self) -> Seconds {
        self.pick(|a, b| a < b)
    }

    fn pick(&self, better: impl Fn(Seconds, Seconds) -> bool) -> Seconds {
        self.others.iter().fold(
            self.first,
            |best, one| if better(*one, best) { *one } else { best },
        )
    }

    /// The mean of all trials: some groups are published so (MAS11).
    pub fn mean(&self) -> Seconds {
        let n = self.count() as f64;
        let sum: f64 = self.others.iter().map(|s| s.get() / n).sum();
        Seconds::new(self.first.get() / n + sum).unwrap_or(self.first)
    }

    /// In words: "21.3 seconds", or "21.3 seconds, the best of 3 (mean 19.8 seconds, shortest 18.0
    /// seconds)".
    pub fn words(&self) -> String {
        let best = seconds(self.best());
        match self.count() {
            1 => format!("{best} (one trial)"),
            n => format!(
                "{best}, the best of {n} (mean {}, shortest {})",
                seconds(self.mean()),
                seconds(self.shortest())
            ),
        }
    }
}
