//! What taps and the count of 30 seconds come to.

use crate::clinical::findings::breathing::State;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath_taps::judge::{Setting, Taps, read};
use crate::measure::series::{Series, Steadiness};
use crate::measure::time::Millis;
use crate::measure::units::Percent;
use crate::measure::window::Window;

/// Awake or asleep: asked under 3 years.
pub const STATE: &str = "awake-asleep";

/// The shorter count.
pub(super) const THIRTY: Millis = Millis::from_secs(30);

/// What is counted in it is doubled to a minute.
const TO_A_MINUTE: usize = 2;

/// Awake or asleep, if it was said.
pub fn state(trial: &Trial) -> Option<State> {
    match trial.choice(STATE)? {
        "awake" => Some(State::Awake),
        _ => Some(State::Asleep),
    }
}

/// Whether awake or asleep matters for this person.
pub fn asks_state(exam: &Exam) -> bool {
    matches!(exam.age, Some(Age::Months(_)))
}

pub(super) fn series(trial: &Trial) -> Series {
    Series::new(trial.tap_offsets())
}

/// The rate that stands for a child without a count of 60 seconds: even taps, else 30 seconds.
pub fn rate(exam: &Exam) -> Option<(u16, Option<State>)> {
    let by_taps = exam.latest_started(TaskId::BreathTaps).and_then(|trial| {
        let rate = even_rate(&series(trial), Setting::of(&exam.policy))?;
        Some((rate, state(trial)))
    });
    let (rate, state) = by_taps.or_else(|| {
        let trial = exam.latest_started(TaskId::Breaths30)?;
        Some((thirty(trial)?, state(trial)))
    })?;
    Some((u16::try_from(rate).ok()?, state))
}

/// The rate of a count of 30 seconds that ran to its end in sight.
pub(super) fn thirty(trial: &Trial) -> Option<u32> {
    let over = trial.first(MarkKind::WindowOver)?;
    let start = trial.start()?;
    if trial.doubt_over(start, THIRTY, over).is_some() {
        return None;
    }
    let count = Window::new(THIRTY, None)
        .ok()?
        .split(&trial.tap_offsets())
        .count();
    u32::try_from(count * TO_A_MINUTE).ok()
}

/// The rate so far and how even it is, while one taps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Running {
    /// Breaths a minute.
    pub rate: u32,
    /// Intervals so far.
    pub all: usize,
    /// Those of them that are close to the middle one.
    pub within: usize,
    /// How close, in per cent of it.
    pub spread: u8,
    /// Whether that is even enough.
    pub even: Even,
}

/// How even taps are so far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Even {
    /// Even enough.
    Enough,
    /// So many more even ones are needed.
    More(usize),
    /// Too many are off: it must be counted.
    Uneven,
}

/// The rate so far and how even it is; none before there is one.
pub fn running(trial: &Trial, policy: &Policy) -> Option<Running> {
    if trial.task != TaskId::BreathTaps {
        return None;
    }
    let setting = Setting::of(policy);
    let spread = Percent::new(f64::from(setting.spread)).ok()?;
    let breathing = series(trial)
        .breathing(setting.least_intervals, spread)
        .ok()?;
    let even = match breathing.steadiness {
        Steadiness::KeepCounting { outside, .. } if outside >= setting.least_intervals.get() => {
            Even::Uneven
        }
        Steadiness::KeepCounting { more, .. } => Even::More(more),
        Steadiness::Steady | Steadiness::SteadyApartFrom { .. } => Even::Enough,
    };
    Some(Running {
        rate: breathing.rate.whole(),
        all: breathing.intervals,
        within: breathing.within,
        spread: setting.spread,
        even,
    })
}

/// The rate of taps that are even enough.
pub(super) fn even_rate(taps: &Series, setting: Setting) -> Option<u32> {
    match read(taps, setting) {
        Taps::Rate { rate, .. } => Some(rate.whole()),
        Taps::KeepTapping => None,
    }
}
