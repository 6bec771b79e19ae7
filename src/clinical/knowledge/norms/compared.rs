//! A measured value beside the published one that fits the person, or why it stands alone.

use serde::Serialize;

use crate::clinical::knowledge::norms::lookup::{NoNorm, Norm, Query, lookup};
use crate::clinical::knowledge::norms::place::{Place, Quantity};
use crate::clinical::knowledge::norms::row::{Method, Row, Task};
use crate::clinical::knowledge::person::{Age, Sex};
use crate::measure::units::SyllablesPerSecond;

/// The person, as far as published values go by it.
#[derive(Clone, Copy, Debug, Default)]
pub struct Who<'a> {
    /// Age, if given.
    pub age: Option<Age>,
    /// Sex, if given.
    pub sex: Option<Sex>,
    /// Language as a BCP 47 tag, if given.
    pub language: Option<&'a str>,
}

impl Who<'_> {
    /// Whether the rules for adults are used: 16 and over, and where no age was given.
    pub fn by_adult_rules(&self) -> bool {
        self.age.is_none_or(Age::is_adult)
    }

    /// Whether the person is known to have reached this many years.
    pub fn is_from(&self, years: u32) -> bool {
        self.age
            .is_some_and(|age| age.at_least_months() >= years * 12)
    }
}

/// A value beside the published one that fits.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Compared {
    /// The published value and how near its group is.
    pub norm: Norm,
    /// Where the value stands.
    pub place: Place,
}

impl Compared {
    /// Looks up the published value and puts `value` beside it, in the value's own unit.
    ///
    /// # Errors
    /// [`NoNorm`] where none fits.
    pub fn find(
        task: Task,
        method: Method,
        value: impl Into<Quantity>,
        who: &Who,
    ) -> Result<Compared, NoNorm> {
        let value = value.into();
        let norm = lookup(&Query {
            task,
            method,
            unit: value.unit(),
            age: who.age,
            sex: who.sex,
            language: who.language,
        })?;
        let place = norm
            .place(value)
            .map_err(|wrong| NoNorm::OtherUnit(task, wrong.wanted))?;
        Ok(Compared { norm, place })
    }

    /// Whether the value is so many standard deviations on the worse side, or more; no where the
    /// group has no published spread.
    pub fn is_worse_by(&self, line: f64) -> bool {
        self.place.sds_worse().is_some_and(|worse| worse >= line)
    }
}

/// Why a value is not compared.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub enum NotCompared {
    /// No published value fits.
    NoNorm {
        /// Why.
        why: NoNorm,
        /// What is published for this person when the task is timed the other way.
        #[serde(skip)]
        otherwise: Option<&'static Row>,
    },
    /// It was counted in whole sequences: one more or less moves the rate by this much.
    TooCoarse(SyllablesPerSecond),
}

impl From<NoNorm> for NotCompared {
    fn from(why: NoNorm) -> NotCompared {
        NotCompared::NoNorm {
            why,
            otherwise: None,
        }
    }
}
