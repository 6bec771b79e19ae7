//! Facts about the timed cup of water.

use serde::Serialize;

use super::{Missing, WhyNot};
use crate::measure::units::{Millilitres, MillilitresPerSecond};

/// Why a cup yields no figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum CupError {
    /// The time is nothing or less.
    NoTime,
    /// More is left than was offered.
    MoreLeftThanOffered,
    /// Nothing was drunk.
    NothingDrunk,
    /// A figure is out of the range of its unit.
    Unit,
}

/// What a rule says about the timed cup of water.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum TimedWaterFact {
    /// None was given; why, where somebody said so.
    NotGiven(Option<WhyNot>),
    /// Another was not given.
    AnotherNotGiven(WhyNot),
    /// Drunk slowly: so much a second.
    Slow(MillilitresPerSecond),
    /// Not finished.
    Left {
        /// Left in it.
        left: Millilitres,
        /// Offered.
        offered: Millilitres,
    },
    /// The volume was another before: the rates are not compared.
    OtherVolume {
        /// Offered now.
        now: Millilitres,
        /// Offered before.
        before: Millilitres,
    },
    /// It yields no figures.
    NoFigures(CupError),
    /// Its amounts are not recorded.
    NoAmounts,
    /// What every trial by mouth needs.
    Missing(Missing),
    /// It waits: the small sips were not clear.
    SipsNotClear,
    /// It waits: no small sips were given before.
    NoSips,
}
