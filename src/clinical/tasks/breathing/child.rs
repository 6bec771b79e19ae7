//! Breathing rates of children: measured percentiles up to 3 years, taught ranges from 3 to 15.
//!
//! Notes only. Whether water is offered hangs on the local chart for the age, which
//! [`crate::clinical::tasks::breathing`] asks for whatever is said here.

use std::ops::RangeInclusive;

use crate::clinical::findings::breathing::{NoRange, State};
use crate::clinical::findings::fact::{BreathingFact, Off};
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::norms::{Method, Norm, Query, Task, Unit, lookup};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rules;
use crate::measure::units::{PerMinute, UnitError};

/// An age the equation is made for: 0.5 to 36 months (RUS94: 15 days to 3 years).
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct InfantMonths(f64);

/// The ages the equation is made for, in months (RUS94).
const EQUATION_MONTHS: RangeInclusive<f64> = 0.5..=36.0;

impl InfantMonths {
    /// So many months; none outside 0.5 to 36.
    pub fn new(months: f64) -> Option<InfantMonths> {
        EQUATION_MONTHS
            .contains(&months)
            .then_some(InfantMonths(months))
    }
}

/// Which line of the equation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// 5th percentile.
    Low,
    /// Median.
    Middle,
    /// 95th percentile.
    High,
}

impl Line {
    /// Its normal deviate, as the source prints it: the two ends are rounded differently.
    const fn z(self) -> f64 {
        match self {
            Line::Low => -1.65,
            Line::Middle => 0.0,
            Line::High => 1.645,
        }
    }
}

/// a, b, c, d and e of the equation for children awake (RUS94).
const AWAKE: (f64, f64, f64, f64, f64) = (1.6801, 0.085_92, 0.011_89, 0.000_430_1, 0.000_134_01);

/// The same for children asleep (RUS94).
const ASLEEP: (f64, f64, f64, f64, f64) = (1.5773, 0.091_96, 0.013_14, 0.000_515_5, 0.000_176_46);

/// From so many years on ranges are taught by years (see `norms/`); before, the equation is used.
const TAUGHT_FROM_YEARS: u8 = 3;

/// A percentile of the breathing rate at an age (RUS94):
/// log10 rate = (a + b z) - (c + d z) m + e m², with the age m in months.
///
/// # Errors
/// Never for an age in range; the unit's own.
pub fn percentile(months: InfantMonths, state: State, line: Line) -> Result<PerMinute, UnitError> {
    let (a, b, c, d, e) = match state {
        State::Awake => AWAKE,
        State::Asleep => ASLEEP,
    };
    let (m, z) = (months.0, line.z());
    let log = (a + b * z) - (c + d * z) * m + e * m * m;
    PerMinute::new(10_f64.powf(log))
}

/// What a child's rate is set beside.
#[derive(Clone, Copy, Debug)]
pub enum Usual {
    /// Measured: the 5th and the 95th percentile.
    Measured {
        /// 5th percentile.
        low: PerMinute,
        /// 95th percentile.
        high: PerMinute,
        /// Awake or asleep.
        state: State,
    },
    /// Taught: a range of a table.
    Taught(Norm),
}

/// What is usual at an age.
///
/// # Errors
/// [`NoRange`]: why there is nothing.
pub fn usual(age: Age, state: Option<State>) -> Result<Usual, NoRange> {
    match age {
        Age::Adult => Err(NoRange::Adult),
        Age::Years(_) if age.is_adult() => Err(NoRange::Adult),
        Age::Years(TAUGHT_FROM_YEARS..) => {
            let query = Query {
                task: Task::Breathe,
                method: Method::RangeTable,
                unit: Unit::PerMinute,
                age: Some(age),
                sex: None,
                language: None,
            };
            lookup(&query).map(Usual::Taught).map_err(NoRange::NoTable)
        }
        Age::Years(_) => Err(NoRange::GiveMonths),
        Age::Months(m) => {
            let months = InfantMonths::new(f64::from(m)).ok_or(NoRange::TooYoung)?;
            let state = state.ok_or(NoRange::StateNotGiven)?;
            let line = |line| percentile(months, state, line).map_err(|_| NoRange::NoRate);
            Ok(Usual::Measured {
                low: line(Line::Low)?,
                high: line(Line::High)?,
                state,
            })
        }
    }
}

/// What the rules say about a child's rate: a note where it is outside, nothing where it is inside
/// or there is nothing to set it beside ([`usual`] then says why).
pub fn judge(rate: PerMinute, age: Age, state: Option<State>) -> Vec<Flag> {
    let Ok(usual) = usual(age, state) else {
        return Vec::new();
    };
    let whole = f64::from(rate.whole());
    let off = |low: f64, high: f64| {
        if whole < low {
            Some(Off::Below)
        } else if whole > high {
            Some(Off::Above)
        } else {
            None
        }
    };
    let rate = rate.whole();
    let (rule, fact) = match usual {
        Usual::Measured { low, high, state } => {
            let off = off(low.get(), high.get());
            let fact = off.map(|_| BreathingFact::Measured {
                rate,
                age,
                state,
                off,
                low,
                high,
            });
            (&rules::BREATHING_INFANT, fact)
        }
        Usual::Taught(norm) => {
            let range = norm.row.low.zip(norm.row.high);
            let fact = range.and_then(|(low, high)| {
                off(low, high).map(|off| BreathingFact::Taught {
                    rate,
                    age,
                    off,
                    low,
                    high,
                })
            });
            (&rules::BREATHING_TAUGHT_RANGE, fact)
        }
    };
    fact.map(|fact| rule.flag(Level::Note, Domain::Breathing, fact))
        .into_iter()
        .collect()
}
