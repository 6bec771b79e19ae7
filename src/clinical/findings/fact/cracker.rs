//! Facts about the cracker.

use serde::Serialize;

use super::by_mouth::Unwatched;
use crate::measure::time::Millis;

/// What a rule says about the cracker.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub enum CrackerFact {
    /// It was eaten. A count of 0 is one that was not taken.
    Report {
        /// Which cracker, as somebody typed it.
        typed: Option<String>,
        /// Bites.
        bites: u32,
        /// Chewing movements.
        chews: u32,
        /// Swallows.
        swallows: u32,
        /// From the first bite to the end of the last swallow.
        time: Millis,
    },
    /// One that was begun is not whole.
    Open(CrackerOpen),
    /// None is given.
    Against(AgainstCracker),
}

/// What is missing of a cracker that was begun.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum CrackerOpen {
    /// Its end was not marked, or its time can't be known.
    End,
    /// Its time is nothing or less.
    NoTime,
    /// The watch after it was ended early.
    WatchCut,
    /// The watch after it is not over.
    WatchRuns,
    /// The watch ran out while the app was off.
    Unwatched(Unwatched),
}

/// What speaks against a cracker, or is not known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum AgainstCracker {
    /// A drink went wrong at this visit.
    DrinkWentWrong,
    /// No drink was tried at this visit.
    NoDrinkTried,
    /// An allergy to it.
    Allergy,
    /// Not asked about an allergy.
    AllergyNotAsked,
    /// No teeth, and no dentures that fit.
    NoTeeth,
    /// Not known whether there are teeth, or dentures that fit.
    TeethNotKnown,
    /// A diet order does not allow it.
    DietOrder,
    /// Not checked whether a diet order allows it.
    DietOrderNotChecked,
}
