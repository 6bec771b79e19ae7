//! A cup of water against the clock: millilitres a second, millilitres and seconds for each
//! swallow.
//!
//! Its signs go by [`crate::clinical::tasks::by_mouth::signs::judge`] and stand whatever the figures do. No "percent
//! predicted": the published equation was not seen.

use std::fmt;
use std::num::NonZeroU32;

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::rules;
use crate::measure::decimals::{decimals, short};
use crate::measure::time::Millis;
use crate::measure::units::{
    Millilitres, MillilitresPerSecond, MillilitresPerSwallow, Seconds, UnitError,
};

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

/// Why a cup yields no figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CupError {
    /// The time is nothing or less.
    NoTime,
    /// More is left than was offered.
    MoreLeftThanOffered,
    /// Nothing was drunk.
    NothingDrunk,
    /// A figure is out of the range of its unit.
    Unit(UnitError),
}

impl fmt::Display for CupError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            CupError::NoTime => "The time must be more than zero: time the cup again.",
            CupError::MoreLeftThanOffered => {
                "More is left than was offered: please check both volumes."
            }
            CupError::NothingDrunk => "Nothing was drunk: there is no rate.",
            CupError::Unit(_) => "These figures can't belong to one cup: please check them.",
        })
    }
}

impl std::error::Error for CupError {}

impl From<UnitError> for CupError {
    fn from(error: UnitError) -> CupError {
        match error {
            UnitError::MoreLeftThanOffered => CupError::MoreLeftThanOffered,
            other => CupError::Unit(other),
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
    /// Strictly below 10 millilitres a second.
    pub slow: bool,
}

impl Figures {
    /// What to ask for, where something is missing.
    pub fn ask(&self) -> Option<&'static str> {
        self.each
            .is_none()
            .then_some("How many swallows were there? Without the count there are no figures for each swallow.")
    }
}

/// Works out the figures of a cup.
///
/// # Errors
/// [`CupError`] with the sentence to show.
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
        // 10 mL in a second are 100 tenths in 1000 ms: whole numbers, so the line is exact.
        slow: i64::from(drunk.tenths()) * 10 < cup.time.0,
    })
}

/// What the rules say about a cup.
///
/// # Errors
/// [`CupError`] with the sentence to show.
pub fn judge(cup: &Cup) -> Result<Vec<Flag>, CupError> {
    let eating = Domain::EatingDrinking;
    let figures = match figures(cup) {
        // A cup that was not touched has no rate, but it is told.
        Err(CupError::NothingDrunk) if cup.left > Millilitres::ZERO => None,
        figures => Some(figures?),
    };
    let mut flags = Vec::new();
    if let Some(figures) = figures.filter(|f| f.slow) {
        let rate = decimals(figures.capacity.get(), 1);
        let rate = match rate.as_str() {
            // Rounded, it would read as the line itself.
            "10.0" => "just under 10",
            rate => rate,
        };
        flags.push(rules::TIMED_WATER_SLOW.flag(
            Level::Note,
            eating,
            format!(
                "drank {rate} millilitres a second (10 or more expected): slow for this test; read \
                 it with age and sex; not by itself a sign of aspiration"
            ),
        ));
    }
    if cup.left > Millilitres::ZERO {
        flags.push(rules::TIMED_WATER_LEFT.flag(
            Level::Incomplete,
            eating,
            format!(
                "timed cup not finished: {} of {} mL left",
                short(cup.left.get()),
                short(cup.offered.get())
            ),
        ));
    }
    Ok(flags)
}

/// What is said where a rate would be set beside that of another volume. None where they may be.
pub fn other_volume(now: Millilitres, before: Millilitres) -> Option<Flag> {
    (now != before).then(|| {
        rules::TIMED_WATER_VOLUME.flag(
            Level::Note,
            Domain::EatingDrinking,
            format!(
                "{} mL now, {} mL before: drinking rates of different volumes are not compared",
                short(now.get()),
                short(before.get())
            ),
        )
    })
}

/// What holds up a timed cup, if something does: whether the small sips were clear.
pub fn before(sips_clear: Looked) -> Option<Flag> {
    let why = match sips_clear {
        Looked::Present => return None,
        Looked::Absent => "the small sips were not clear",
        Looked::NotTested => "no small sips were given before",
    };
    Some(rules::TIMED_WATER_AFTER_SIPS.flag(
        Level::Note,
        Domain::EatingDrinking,
        format!("timed cup waits: {why}"),
    ))
}
