//! A cup of water against the clock: millilitres a second, millilitres and seconds for each
//! swallow.
//!
//! Its signs go by [`crate::clinical::tasks::by_mouth::signs::judge`] and stand whatever the figures do. No "percent
//! predicted": the published equation was not seen.

use std::num::NonZeroU32;

pub use crate::clinical::findings::fact::CupError;
use crate::clinical::findings::fact::TimedWaterFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::rules;
use crate::measure::time::Millis;
use crate::measure::units::{
    Millilitres, MillilitresPerSecond, MillilitresPerSwallow, Seconds, UnitError,
};

/// Drinking is slow strictly below 10 millilitres a second (published: NAT92).
pub const SLOW_BELOW: u16 = 10;

/// A tenth of a millilitre in a millisecond is so many millilitres a second.
const TENTHS_PER_MILLI: i64 = 100;

/// One cup.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cup {
    /// Volume offered.
    pub offered: Millilitres,
    /// Volume left.
    pub left: Millilitres,
    /// From lip contact until the larynx is at rest after the last swallow.
    pub time: Millis,
    /// Swallows watched or felt; none, or 0, where they were not counted.
    pub swallows: Option<u32>,
}

impl From<UnitError> for CupError {
    fn from(error: UnitError) -> CupError {
        match error {
            UnitError::MoreLeftThanOffered => CupError::MoreLeftThanOffered,
            _ => CupError::Unit,
        }
    }
}

/// The figures of a cup (source of the three indices: HUG96, as named there).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figures {
    /// Volume drunk.
    pub drunk: Millilitres,
    /// Volume over time.
    pub capacity: MillilitresPerSecond,
    /// Volume and time of each swallow; none until the swallows are counted.
    pub each: Option<(MillilitresPerSwallow, Seconds)>,
    /// Below [`SLOW_BELOW`].
    pub slow: bool,
}

/// Works out the figures of a cup.
///
/// # Errors
/// [`CupError`] where the cup yields none.
pub fn figures(cup: &Cup) -> Result<Figures, CupError> {
    let drunk = cup.offered.less(cup.left)?;
    if drunk == Millilitres::ZERO {
        return Err(CupError::NothingDrunk);
    }
    if cup.time <= Millis::ZERO {
        return Err(CupError::NoTime);
    }
    let time = Seconds::try_from(cup.time)?;
    Ok(Figures {
        drunk,
        capacity: drunk.over(time)?,
        each: cup
            .swallows
            .and_then(NonZeroU32::new)
            .map(|n| (drunk.per_swallow(n), time.each(n))),
        // In whole numbers, so that the line is exact.
        slow: i64::from(drunk.tenths()) * TENTHS_PER_MILLI < i64::from(SLOW_BELOW) * cup.time.0,
    })
}

/// What the rules say about a cup.
///
/// # Errors
/// [`CupError`] where the cup yields none.
pub fn judge(cup: &Cup) -> Result<Vec<Flag>, CupError> {
    let eating = Domain::EatingDrinking;
    let figures = match figures(cup) {
        // A cup that was not touched has no rate, but it is told.
        Err(CupError::NothingDrunk) if cup.left > Millilitres::ZERO => None,
        figures => Some(figures?),
    };
    let mut flags = Vec::new();
    if let Some(figures) = figures.filter(|f| f.slow) {
        let fact = TimedWaterFact::Slow(figures.capacity);
        flags.push(rules::TIMED_WATER_SLOW.flag(Level::Note, eating, fact));
    }
    if cup.left > Millilitres::ZERO {
        let (left, offered) = (cup.left, cup.offered);
        let fact = TimedWaterFact::Left { left, offered };
        flags.push(rules::TIMED_WATER_LEFT.flag(Level::Incomplete, eating, fact));
    }
    Ok(flags)
}

/// What is said where a rate would be set beside that of another volume. None where they may be.
pub fn other_volume(now: Millilitres, before: Millilitres) -> Option<Flag> {
    let fact = TimedWaterFact::OtherVolume { now, before };
    (now != before)
        .then(|| rules::TIMED_WATER_VOLUME.flag(Level::Note, Domain::EatingDrinking, fact))
}

/// What holds up a timed cup, if something does: whether the small sips were clear.
pub fn before(sips_clear: Looked) -> Option<Flag> {
    let fact = match sips_clear {
        Looked::Present => return None,
        Looked::Absent => TimedWaterFact::SipsNotClear,
        Looked::NotTested => TimedWaterFact::NoSips,
    };
    Some(rules::TIMED_WATER_AFTER_SIPS.flag(Level::Note, Domain::EatingDrinking, fact))
}
