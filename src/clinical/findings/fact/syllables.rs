//! Facts about repeated syllables.

use serde::Serialize;

use crate::clinical::findings::speech::{Repeated, Syllables};
use crate::clinical::knowledge::norms::Compared;
use crate::clinical::knowledge::person::Age;
use crate::measure::units::{Percent, Seconds, SyllablesPerSecond};

/// What a rule says about repeated syllables.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum SyllablesFact {
    /// A trial beside the published group.
    Placed {
        /// The trial.
        trial: Repeated,
        /// The group, and where the trial stands in it.
        compared: Compared,
        /// What that means.
        is: Pace,
    },
    /// pa-ta-ka below the line of the authors of the English norm.
    BelowAdultLine(SyllablesPerSecond),
    /// Below a line told for older people.
    BelowOlderLine(OlderLine, SyllablesPerSecond),
    /// So many taps a second: too quick for a finger.
    TooQuickForAFinger(SyllablesPerSecond),
    /// No trial, so no rate.
    NoTrial(Syllables),
    /// No correct trial with a time among so many.
    NoneCorrect {
        /// Of which syllables.
        what: Syllables,
        /// Among so many.
        among: usize,
    },
    /// How it sounded was not said of any trial.
    SoundNotSaid(Syllables),
    /// Sequences are left out for a child.
    SequencesLeftOut {
        /// So many single syllables succeeded.
        succeeded: usize,
        /// So many it takes.
        needed: usize,
    },
    /// Younger than everybody who is asked.
    TooYoung(Age),
    /// How even the taps are.
    Evenness {
        /// Mean interval.
        apart: Seconds,
        /// Coefficient of variation of the intervals.
        variation: Percent,
    },
}

/// What the place of a trial among its group means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Pace {
    /// A child that is slow for the age.
    SlowForAge,
    /// A child that is worth watching.
    WorthWatching,
    /// Below the usual range.
    BelowUsual,
    /// In the usual range.
    Usual,
}

/// A line told for older people.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum OlderLine {
    /// pa.
    Pa,
    /// ta, of a man.
    TaOfMan,
    /// ta, of a woman.
    TaOfWoman,
    /// ta, below the higher of the two lines, and the sex was not given.
    TaSexNotGiven,
}
