//! Breathing by a tap at every breath, and the count of 30 seconds.
//!
//! Both are quicker than the count of 60 seconds and neither clears an adult. Nothing is dropped
//! in silence: intervals that are off are counted and said.

pub mod judge;
pub mod reading;

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::BreathingFact;
use crate::clinical::findings::flag::Flag;
use crate::clinical::knowledge::person::Age;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breath_taps::judge as breath_taps;
use crate::clinical::tasks::breath_taps::judge::Setting;
pub use crate::clinical::tasks::breath_taps::reading::{
    ASK_STATE, Even, Running, STATE, asks_state, rate, running, state,
};
use crate::clinical::tasks::breath_taps::reading::{THIRTY, even_rate, series, thirty};
use crate::clinical::tasks::breathing;
use crate::clinical::tasks::spec::{Length, Pad, TaskSpec};
use crate::measure::units::PerMinute;

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
