//! Facts about a sign seen in a trial by mouth.

use serde::Serialize;

use super::OwnGiven;
use crate::clinical::knowledge::sign::{Sign, SignTask};
use crate::measure::time::Millis;
use crate::measure::units::Millilitres;

/// When a sign was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Seen {
    /// While swallowing, or before it.
    While,
    /// So long after the last swallow, within the watch.
    After(Millis),
    /// So long after the last swallow, later than the watch.
    Later(Millis),
    /// After the last swallow, but the clocks can't say when.
    Sometime,
}

impl Seen {
    /// Whether it came later than the rules count. What the clocks can't place counts.
    pub const fn is_late(self) -> bool {
        matches!(self, Seen::Later(_))
    }

    /// So long after the last swallow; none while swallowing, or where the time is not known.
    pub const fn after(self) -> Option<Millis> {
        match self {
            Seen::After(after) | Seen::Later(after) => Some(after),
            Seen::While | Seen::Sometime => None,
        }
    }
}

/// A sign with its time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct SeenSign {
    /// What was seen.
    pub sign: Sign,
    /// When.
    pub seen: Seen,
}

impl SeenSign {
    /// A sign while swallowing: it counts.
    pub const fn at_once(sign: Sign) -> SeenSign {
        SeenSign {
            sign,
            seen: Seen::While,
        }
    }

    /// Whether it came later than the rules count.
    pub const fn is_late(self) -> bool {
        self.seen.is_late()
    }
}

/// What a sign was seen with.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum With {
    /// The cup of 90 mL; stopped: it was ended with the screen, and nobody marked its last swallow.
    Cup {
        /// Ended with the screen.
        stopped: bool,
    },
    /// Sips of this size.
    Sip(Millilitres),
    /// A timed cup of water.
    TimedCup,
    /// A cracker.
    Cracker,
    /// What is eaten and drunk at the table.
    Meal,
    /// Own trials of one kind.
    Own {
        /// What was given, and how.
        given: OwnGiven,
        /// How often.
        times: usize,
    },
}

impl With {
    /// The column of the table of signs.
    pub const fn task(&self) -> SignTask {
        match self {
            With::Cup { .. } => SignTask::Water90,
            With::Sip(_) => SignTask::Sips,
            With::TimedCup => SignTask::TimedWater,
            With::Cracker => SignTask::Cracker,
            With::Meal => SignTask::Meal,
            With::Own { .. } => SignTask::Own,
        }
    }
}

/// What a rule says about a sign seen in a trial by mouth.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SignFact {
    /// Which.
    pub sign: Sign,
    /// When; where it was seen several times, the first of them.
    pub seen: Seen,
    /// How often.
    pub times: usize,
    /// It came too late to count: told, and decides nothing. What stops every trial counts
    /// whenever it comes.
    pub too_late: bool,
    /// What with.
    pub with: With,
}
