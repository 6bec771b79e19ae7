//! Facts about the clinician's own trials.

use serde::Serialize;

use super::by_mouth::WhyNot;
use crate::clinical::knowledge::sign::Sign;
use crate::clinical::knowledge::task::TaskId;

/// What is given in an own trial, and how: ids of the choices; what somebody typed is a field of
/// its own.
///
/// Two that say the same are equal: what was said in two ways is kept in one.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct OwnGiven {
    /// A level of the framework.
    pub level: Option<String>,
    /// Typed: what it is.
    pub what: Option<String>,
    /// How much.
    pub amount: Option<Amount>,
    /// Spoon, cup, straw; none where the amount says it.
    pub by: Option<String>,
    /// Posture.
    pub posture: Option<String>,
    /// Strategy; none where there is none.
    pub strategy: Option<String>,
    /// Typed: another strategy.
    pub strategy_words: Option<String>,
}

/// How much is given.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub enum Amount {
    /// In tenths of a millilitre.
    Tenths(i32),
    /// A choice without a measure.
    Choice(String),
}

impl OwnGiven {
    /// Whether it was said what is given.
    pub fn is_said(&self) -> bool {
        self.level.is_some() || self.what.is_some()
    }

    /// The same for a sentence that must fit a line: what was typed only where no choice stands
    /// for it.
    pub fn brief(mut self) -> OwnGiven {
        if self.level.is_some() {
            self.what = None;
        }
        if self.strategy.is_some() {
            self.strategy_words = None;
        }
        self
    }
}

/// What was given in one of two trials.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub enum Given {
    /// Another task's.
    Task(TaskId),
    /// An own trial's.
    Own(OwnGiven),
}

/// What a rule says about the clinician's own trials.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum OwnFact {
    /// None was given.
    NoneGiven {
        /// Why, where somebody said.
        why: Option<WhyNot>,
    },
    /// One was not given.
    NotGiven {
        /// What it was to be, where it was one of its own.
        given: Option<OwnGiven>,
        /// Why.
        why: WhyNot,
    },
    /// Some were not watched to the end, or what is asked after them is open.
    NotWatched {
        /// So many.
        open: usize,
        /// Of so many given.
        of: usize,
    },
    /// Of one it was not said what was given.
    NotSaidWhat,
    /// All were given and watched, and nothing seen in them decides.
    Clear {
        /// So many.
        given: usize,
        /// Whether something was seen that decides nothing.
        seen: bool,
    },
    /// A sign that may be of either of two trials.
    Either {
        /// The sign.
        sign: Sign,
        /// What it stands with.
        with: Given,
        /// What it may be with.
        other: Given,
    },
}
