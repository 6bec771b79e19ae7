//! Breathing by a tap at every breath, and the count of 30 seconds.
//!
//! Both are quicker than the count of 60 seconds and neither clears an adult. Nothing is dropped
//! in silence: intervals that are off are counted and said.

pub mod judge;

use std::num::NonZeroUsize;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::policy::Policy;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath_taps::judge as breath_taps;
use crate::clinical::tasks::breath_taps::judge::{Setting, Taps};
use crate::clinical::tasks::breathing;
use crate::clinical::tasks::breathing::child::State;
use crate::clinical::tasks::spec::{Choice, Length, Pad, Question, Takes, TaskSpec, When};
use crate::measure::series::{Series, Steadiness};
use crate::measure::time::Millis;
use crate::measure::units::{PerMinute, Percent};
use crate::measure::window::Window;

/// Awake or asleep: asked under 3 years.
pub const STATE: &str = "awake-asleep";

/// The shorter count.
const THIRTY: Millis = Millis::from_secs(30);

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

/// When taps are even enough.
pub fn setting(policy: &Policy) -> Setting {
    Setting {
        least_intervals: usize::try_from(policy.tap_intervals)
            .ok()
            .and_then(NonZeroUsize::new)
            .unwrap_or(NonZeroUsize::MIN),
        spread: u8::try_from(policy.tap_spread).unwrap_or(0),
    }
}

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
    let by_taps =
        exam.latest_started(TaskId::BreathTaps).and_then(|trial| {
            match breath_taps::read(&series(trial), setting(&exam.policy)) {
                Taps::Rate { rate, .. } => Some((rate.whole(), state(trial))),
                Taps::KeepTapping => None,
            }
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
    u32::try_from(count * 2).ok()
}

/// The rate so far and how even it is, while one taps.
pub fn running(trial: &Trial, policy: &Policy) -> Option<String> {
    let Setting {
        least_intervals,
        spread,
    } = setting(policy);
    let spread_of = Percent::new(f64::from(spread)).ok()?;
    let breathing = series(trial).breathing(least_intervals, spread_of).ok()?;
    let (within, all) = (breathing.within, breathing.intervals);
    let rate = breathing.rate.whole();
    let even = match breathing.steadiness {
        Steadiness::KeepCounting { more, outside }
            if outside >= NonZeroUsize::get(least_intervals) =>
        {
            let _ = more;
            "uneven: count for 60 seconds".to_owned()
        }
        Steadiness::KeepCounting { more, .. } => format!("{more} more"),
        _ => "even enough".to_owned(),
    };
    Some(format!(
        "about {rate} a minute, {within} of {all} within {spread} %: {even}"
    ))
}

/// What the rules say about an examination.
pub fn flags(task: TaskId, exam: &Exam) -> Vec<Flag> {
    let Some(trial) = exam.latest_started(task) else {
        return Vec::new();
    };
    let adult = exam.age.is_none_or(|a| a.is_adult());
    let counted = !breathing::counted(exam).is_empty();
    let mut flags = Vec::new();
    let rate = if task == TaskId::BreathTaps {
        let setting = setting(&exam.policy);
        flags.extend(breath_taps::judge(
            &series(trial),
            exam.age,
            counted,
            setting,
        ));
        match breath_taps::read(&series(trial), setting) {
            Taps::Rate { rate, .. } => Some(rate.whole()),
            Taps::KeepTapping => None,
        }
    } else {
        let rate = thirty(trial);
        let words = match rate {
            Some(rate) => format!("breathing {rate} a minute (counted for 30 seconds, doubled)"),
            None => "breaths in 30 seconds: count again".to_owned(),
        };
        let (level, domain, end) = if adult && !counted {
            let end = ": that does not clear an adult; count for 60 seconds";
            (Level::Incomplete, Domain::EatingDrinking, end)
        } else {
            (Level::Note, Domain::Breathing, "")
        };
        flags.push(rules::BREATHING_THIRTY.flag(level, domain, format!("{words}{end}")));
        rate
    };
    let rate = rate.and_then(|rate| PerMinute::new(f64::from(rate)).ok());
    flags.extend(rate.map_or(Vec::new(), |rate| {
        breathing::child_notes(rate, exam, state(trial))
    }));
    flags
}
