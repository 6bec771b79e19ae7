//! Breathing rates of children: measured percentiles up to 3 years, taught ranges from 3 to 15.
//!
//! Notes only. Whether water is offered hangs on the local chart for the age, which
//! [`crate::clinical::tasks::breathing`] asks for whatever is said here.

use std::fmt;

use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::knowledge::norms::{Method, NoNorm, Norm, Query, Task, Unit, lookup};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rules;
use crate::measure::decimals::decimals;
use crate::measure::units::{PerMinute, UnitError};
use crate::wording::norms::no_norm;

/// Awake or asleep: the percentiles differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// Awake and calm.
    Awake,
    /// Asleep.
    Asleep,
}

impl State {
    /// The word for it.
    pub const fn words(self) -> &'static str {
        match self {
            State::Awake => "awake",
            State::Asleep => "asleep",
        }
    }
}

/// An age the equation is made for: 0.5 to 36 months (RUS94: 15 days to 3 years).
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct InfantMonths(f64);

impl InfantMonths {
    /// So many months; none outside 0.5 to 36.
    pub fn new(months: f64) -> Option<InfantMonths> {
        (0.5..=36.0)
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

/// A percentile of the breathing rate at an age (RUS94):
/// log10 rate = (a + b z) - (c + d z) m + e m², with the age m in months.
///
/// # Errors
/// Never for an age in range; the unit's own.
pub fn percentile(months: InfantMonths, state: State, line: Line) -> Result<PerMinute, UnitError> {
    let (a, b, c, d, e) = match state {
        State::Awake => (1.6801, 0.085_92, 0.011_89, 0.000_430_1, 0.000_134_01),
        State::Asleep => (1.5773, 0.091_96, 0.013_14, 0.000_515_5, 0.000_176_46),
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

/// Why there is nothing to set it beside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoRange {
    /// Younger than one whole month: the equation starts at 15 days, which whole months can't say.
    TooYoung,
    /// One or two years: the equation goes by months.
    GiveMonths,
    /// Awake or asleep was not said.
    StateNotGiven,
    /// 16 or over: the bands for adults are used.
    Adult,
    /// The table of ranges has nothing.
    NoTable(NoNorm),
    /// The equation gave no rate.
    Unit(UnitError),
}

impl fmt::Display for NoRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            NoRange::TooYoung => "No published value is used in the first month of life.",
            NoRange::GiveMonths => {
                "No comparison: under 3 years the published values go by months."
            }
            NoRange::StateNotGiven => {
                "No comparison: under 3 years the published values go by awake or asleep."
            }
            NoRange::Adult => "From 16 years the bands for adults are used.",
            NoRange::NoTable(why) => return f.write_str(&no_norm(why)),
            NoRange::Unit(_) => "No comparison: the equation gave no rate.",
        })
    }
}

impl std::error::Error for NoRange {}

/// What is usual at an age.
///
/// # Errors
/// [`NoRange`] with the sentence to show.
pub fn usual(age: Age, state: Option<State>) -> Result<Usual, NoRange> {
    match age {
        Age::Adult | Age::Years(16..) => Err(NoRange::Adult),
        Age::Years(3..) => {
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
            let line = |line| percentile(months, state, line).map_err(NoRange::Unit);
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
    let side = |low: f64, high: f64| {
        if whole < low {
            Some("below")
        } else if whole > high {
            Some("above")
        } else {
            None
        }
    };
    let shown = rate.whole();
    let flag = match usual {
        Usual::Measured { low, high, state } => side(low.get(), high.get()).map(|side| {
            rules::BREATHING_INFANT.flag(
                Level::Note,
                Domain::Breathing,
                format!(
                    "breathing {shown} a minute {}: {side} the middle 90 of 100 children of {age} \
                     ({} to {})",
                    state.words(),
                    decimals(low.get(), 1),
                    decimals(high.get(), 1),
                ),
            )
        }),
        Usual::Taught(norm) => norm.row.low.zip(norm.row.high).and_then(|(low, high)| {
            side(low, high).map(|side| {
                rules::BREATHING_TAUGHT_RANGE.flag(
                    Level::Note,
                    Domain::Breathing,
                    format!(
                        "breathing {shown} a minute: {side} one taught range for {age} ({} to {}); \
                         taught ranges differ",
                        decimals(low, 0),
                        decimals(high, 0),
                    ),
                )
            })
        }),
    };
    flag.into_iter().collect()
}
