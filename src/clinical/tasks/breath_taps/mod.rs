//! Breathing by a tap at every breath, and the count of 30 seconds.
//!
//! Both are quicker than the count of 60 seconds and neither clears an adult. Nothing is dropped
//! in silence: intervals that are off are counted and said.

pub mod judge;

use crate::clinical::findings::breathing::State;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::BreathingFact;
use crate::clinical::findings::flag::Flag;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath_taps::judge as breath_taps;
use crate::clinical::tasks::breath_taps::judge::{Setting, Taps};
use crate::clinical::tasks::breathing;
use crate::clinical::tasks::spec::{Choice, Length, Pad, Question, Takes, TaskSpec, When};
use crate::measure::series::{Series, Steadiness};
use crate::measure::time::Millis;
use crate::measure::units::{PerMinute, Percent};
use crate::measure::window::Window;

/// Awake or asleep: asked under 3 years.
pub const STATE: &str = "awake-asleep";

/// The shorter count.
const THIRTY: Millis = Millis::from_secs(30);

/// What is counted in it is doubled to a minute.
const TO_A_MINUTE: usize = 2;

/// The question about being awake or asleep.
pub const ASK_STATE: Question = Question {
    id: STATE,
    ask: "Awake or asleep? (under 3 years)",
    when: When::Before,
    takes: Takes::OneOf(&[
        Choice {
            id: "awake",
            words: "Awake, calm",
        },
        Choice {
            id: "asleep",
            words: "Asleep",
        },
    ]),
    only_if: None,
    needed: true,
};

const fn pad(start: &'static str, length: Length, first: bool, end: Option<&'static str>) -> Pad {
    Pad {
        counts: ("breath", "breaths"),
        start,
        length,
        first_counts: first,
        touch_ends: false,
        beat: None,
        late: None,
        end,
        watch: None,
        signs: None,
        countdown: false,
    }
}

/// By taps.
pub static TAPS: TaskSpec = TaskSpec {
    id: TaskId::BreathTaps,
    title: "Breathing by taps",
    steps: &[
        "Watch the chest or the blanket. Do not say that you count.",
        "Touch the pad at each breath in, at the same point of the breath. Stop when it says even.",
        "Uneven: count for 60 seconds.",
    ],
    say: "",
    by_mouth: false,
    pad: pad("Touch at a breath in", Length::Open, true, Some("Stop")),
    more: "",
    questions: &[ASK_STATE],
    trials: 1,
    usual: |_| Vec::new(),
    lines: None,
    compare: |_| Vec::new(),
    caveat: "60 over the middle interval. Tried with videos of children (published: KAR14); in \
             adults it never replaces the count of 60 seconds.",
    untimed: None,
    for_whom: "Children, and adults for whom a minute is counted besides: in adults taps alone clear nobody.",
    rules: &[&rules::BREATHING_TAPS],
    not_for: |_, _| None,
};

/// In 30 seconds.
pub static COUNT_30: TaskSpec = TaskSpec {
    id: TaskId::Breaths30,
    title: "Breaths in 30 seconds",
    steps: &["Tap each breath in. The count ends by itself; it is doubled."],
    say: "",
    by_mouth: false,
    pad: pad("Start", Length::Fixed(THIRTY), false, None),
    more: "",
    questions: &[ASK_STATE],
    trials: 1,
    usual: |_| Vec::new(),
    lines: None,
    compare: |_| Vec::new(),
    caveat: "Steps of 2 a minute. It missed a quarter of the rates that are \
             highest on an early-warning scale (published: RIM19): count for 60 seconds where it \
             matters.",
    untimed: None,
    for_whom: "Where a whole minute can't be had: it clears no adult.",
    rules: &[&rules::BREATHING_THIRTY],
    not_for: |_, _| None,
};

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

fn series(trial: &Trial) -> Series {
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
fn thirty(trial: &Trial) -> Option<u32> {
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
        all: breathing.deviations.len(),
        within: breathing.deviations.iter().filter(|d| d.within).count(),
        spread: setting.spread,
        even,
    })
}

/// What the rules say about an examination.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let Some(trial) = exam.latest_started(task) else {
        return Vec::new();
    };
    let counted = !breathing::counted(exam).is_empty();
    let mut flags = Vec::new();
    let rate = if task == TaskId::BreathTaps {
        let (taps, setting) = (series(trial), Setting::of(&exam.policy));
        flags.extend(breath_taps::judge(&taps, exam.age, counted, setting));
        even_rate(&taps, setting)
    } else {
        let rate = thirty(trial);
        let alone = exam.age.is_none_or(Age::is_adult) && !counted;
        let (level, domain) = breath_taps::decides(alone);
        let fact = BreathingFact::Thirty { rate, alone };
        flags.push(rules::BREATHING_THIRTY.flag(level, domain, fact));
        rate
    };
    let rate = rate.and_then(|rate| PerMinute::new(f64::from(rate)).ok());
    flags.extend(rate.map_or(Vec::new(), |rate| {
        breathing::child_notes(rate, exam, state(trial))
    }));
    flags
}

/// The rate of taps that are even enough.
fn even_rate(taps: &Series, setting: Setting) -> Option<u32> {
    match breath_taps::read(taps, setting) {
        Taps::Rate { rate, .. } => Some(rate.whole()),
        Taps::KeepTapping => None,
    }
}
