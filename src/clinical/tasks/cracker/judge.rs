//! One plain cracker against the clock: bites, chews, swallows, seconds. Reported, not judged.
//!
//! Its signs go by [`crate::clinical::tasks::by_mouth::signs::judge`].

use std::num::NonZeroU32;

use crate::clinical::findings::fact::{AgainstCracker, CrackerFact};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::looked::Looked;
use crate::clinical::knowledge::rules;
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

impl From<UnitError> for CrackerError {
    fn from(error: UnitError) -> CrackerError {
        CrackerError::Unit(error)
    }
}

/// Works out the figures of a cracker.
///
/// # Errors
/// [`CrackerError`] where its figures can't be.
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
/// [`CrackerError`] where its figures can't be.
pub fn judge(cracker: &Cracker) -> Result<Vec<Flag>, CrackerError> {
    judge_of(None, cracker)
}

/// The same, of a cracker that somebody named.
///
/// # Errors
/// [`CrackerError`] where its figures can't be.
pub fn judge_of(typed: Option<&str>, cracker: &Cracker) -> Result<Vec<Flag>, CrackerError> {
    // Figures that can't be are not reported.
    figures(cracker)?;
    let fact = CrackerFact::Report {
        typed: typed.map(str::to_owned),
        bites: cracker.bites,
        chews: cracker.chews,
        swallows: cracker.swallows,
        time: cracker.time,
    };
    let report = rules::CRACKER_REPORT.flag(Level::Note, Domain::EatingDrinking, fact);
    Ok(vec![report])
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

/// What speaks against a cracker, or is not known; empty where nothing does.
pub fn against(known: &Before) -> Vec<AgainstCracker> {
    use AgainstCracker::{
        Allergy, AllergyNotAsked, DietOrder, DietOrderNotChecked, DrinkWentWrong, NoDrinkTried,
        NoTeeth, TeethNotKnown,
    };
    let drink = known.drink_went_wrong;
    [
        (drink, Looked::Present, DrinkWentWrong, NoDrinkTried),
        (known.allergy, Looked::Present, Allergy, AllergyNotAsked),
        (known.teeth, Looked::Absent, NoTeeth, TeethNotKnown),
        (
            known.diet_order,
            Looked::Present,
            DietOrder,
            DietOrderNotChecked,
        ),
    ]
    .into_iter()
    .filter_map(|(looked, bad, against, open)| match looked {
        Looked::NotTested => Some(open),
        looked => (looked == bad).then_some(against),
    })
    .collect()
}

/// It as a flag.
pub fn not_for(against: AgainstCracker) -> Flag {
    let fact = CrackerFact::Against(against);
    rules::CRACKER_NOT_FOR.flag(Level::Note, Domain::EatingDrinking, fact)
}

/// What holds up a cracker, a flag for each reason; empty where nothing does.
pub fn before(known: &Before) -> Vec<Flag> {
    against(known).into_iter().map(not_for).collect()
}
