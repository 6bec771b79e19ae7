//! One plain cracker against the clock: bites, chews, swallows, seconds. Reported, not judged.
//!
//! Its signs go by [`crate::clinical::tasks::by_mouth::signs::judge`].

use std::fmt;
use std::num::NonZeroU32;

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::rules;
use crate::measure::decimals::decimals;
use crate::measure::time::Millis;
use crate::measure::units::{PerBite, Seconds, UnitError};

/// One cracker. A count of 0 is one that was not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cracker {
    /// Bites.
    pub bites: u32,
    /// Chewing movements.
    pub chews: u32,
    /// Swallows.
    pub swallows: u32,
    /// From the first bite to the end of the last swallow.
    pub time: Millis,
}

/// The four derived figures (source: ASE24); none where what they are divided by is 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figures {
    /// Seconds for each bite.
    pub time_per_bite: Option<Seconds>,
    /// Chews for each bite.
    pub chews_per_bite: Option<PerBite>,
    /// Swallows for each bite.
    pub swallows_per_bite: Option<PerBite>,
    /// Seconds for each swallow.
    pub time_per_swallow: Option<Seconds>,
}

/// Why a cracker yields no figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CrackerError {
    /// The time is nothing or less.
    NoTime,
    /// A figure is out of the range of its unit.
    Unit(UnitError),
}

impl fmt::Display for CrackerError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            CrackerError::NoTime => "The time must be more than zero: time the cracker again.",
            CrackerError::Unit(_) => {
                "These figures can't belong to one cracker: please check them."
            }
        })
    }
}

impl std::error::Error for CrackerError {}

impl From<UnitError> for CrackerError {
    fn from(error: UnitError) -> CrackerError {
        CrackerError::Unit(error)
    }
}

/// Works out the figures of a cracker.
///
/// # Errors
/// [`CrackerError`] with the sentence to show.
pub fn figures(cracker: &Cracker) -> Result<Figures, CrackerError> {
    if cracker.time <= Millis::ZERO {
        return Err(CrackerError::NoTime);
    }
    let time = Seconds::try_from(cracker.time)?;
    let bites = NonZeroU32::new(cracker.bites);
    let per_bite = |n: u32| {
        NonZeroU32::new(n)
            .zip(bites)
            .map(|(n, bites)| PerBite::new(f64::from(n.get()) / f64::from(bites.get())))
            .transpose()
    };
    Ok(Figures {
        time_per_bite: bites.map(|n| time.each(n)),
        chews_per_bite: per_bite(cracker.chews)?,
        swallows_per_bite: per_bite(cracker.swallows)?,
        time_per_swallow: NonZeroU32::new(cracker.swallows).map(|n| time.each(n)),
    })
}

/// The report of a cracker.
///
/// # Errors
/// [`CrackerError`] with the sentence to show.
pub fn judge(cracker: &Cracker) -> Result<Vec<Flag>, CrackerError> {
    judge_of(None, cracker)
}

/// The same, with the name of the cracker.
///
/// # Errors
/// [`CrackerError`] with the sentence to show.
pub fn judge_of(which: Option<&str>, cracker: &Cracker) -> Result<Vec<Flag>, CrackerError> {
    let named = which.map_or_else(String::new, |which| format!(" ({which})"));
    // Figures that can't be are not reported.
    figures(cracker)?;
    let counted = |n: u32, one: &str, many: &str| match n {
        0 => format!("{many} not counted"),
        1 => format!("1 {one}"),
        n => format!("{n} {many}"),
    };
    Ok(vec![rules::CRACKER_REPORT.flag(
        Level::Note,
        Domain::EatingDrinking,
        format!(
            "one cracker{named}: {}, {}, {}, {} seconds; reported, not judged",
            counted(cracker.bites, "bite", "bites"),
            counted(cracker.chews, "chew", "chews"),
            counted(cracker.swallows, "swallow", "swallows"),
            decimals(cracker.time.seconds(), 1),
        ),
    )])
}

/// What must be known before a cracker is given.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Before {
    /// Own teeth, or dentures that are in and fit.
    pub teeth: Looked,
    /// A drink that went wrong at this visit.
    pub drink_went_wrong: Looked,
    /// An allergy to the cracker.
    pub allergy: Looked,
    /// A diet order that does not allow it.
    pub diet_order: Looked,
}

/// What holds up a cracker, a flag for each reason; empty where nothing does.
pub fn before(known: &Before) -> Vec<Flag> {
    let mut reasons = Vec::new();
    match known.teeth {
        Looked::Present => {}
        Looked::Absent => reasons.push("no teeth and no dentures that fit"),
        Looked::NotTested => reasons.push("not known whether there are teeth or dentures that fit"),
    }
    for (looked, there, open) in [
        (
            known.drink_went_wrong,
            "a drink went wrong",
            "no drink was tried before",
        ),
        (
            known.allergy,
            "an allergy to it",
            "not asked about an allergy to it",
        ),
        (
            known.diet_order,
            "a diet order does not allow it",
            "not checked whether a diet order allows it",
        ),
    ] {
        match looked {
            Looked::Absent => {}
            Looked::Present => reasons.push(there),
            Looked::NotTested => reasons.push(open),
        }
    }
    reasons
        .into_iter()
        .map(|why| {
            rules::CRACKER_NOT_FOR.flag(
                Level::Note,
                Domain::EatingDrinking,
                format!("no cracker: {why}"),
            )
        })
        .collect()
}
