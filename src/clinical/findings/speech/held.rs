//! Sounds that are held as long as possible.

use serde::Serialize;

use crate::clinical::knowledge::norms::Task;
use crate::measure::units::{Ratio, Seconds};

/// What is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Sound {
    /// "ah".
    Ah,
    /// s.
    S,
    /// z.
    Z,
}

impl Sound {
    /// All, in order.
    pub const ALL: [Sound; 3] = [Sound::Ah, Sound::S, Sound::Z];

    /// Its task in the tables.
    pub const fn task(self) -> Task {
        match self {
            Sound::Ah => Task::Ah,
            Sound::S => Task::S,
            Sound::Z => Task::Z,
        }
    }
}

/// One to three trials of one sound, held as long as possible.
#[derive(Clone, Debug, PartialEq, Serialize)]
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
}

/// The best s beside the best z.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SToZ {
    /// The longest s.
    pub s: Seconds,
    /// The longest z.
    pub z: Seconds,
    /// Their ratio, rounded to hundredths, the form in which it is compared.
    pub ratio: Ratio,
}
