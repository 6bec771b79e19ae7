//! Breathing before water: breaths per minute, SpO2, oxygen.
//!
//! No published, validated limit for withholding a water trial was found. The lines are local
//! policy, borrowed from the single-parameter bands of NEWS2 (Royal College of Physicians 2017).

use super::breath_taps;
use crate::clinical::compare::{self, Comparison};
use crate::clinical::exam::Exam;
use crate::clinical::flag::{Domain, Flag, Level};
use crate::clinical::go_on::GoOn;
use crate::clinical::judge::adult_bands::{
    Breathes, ConfirmedTarget, Prescription, Saturation, scale_2,
};
use crate::clinical::judge::breathing_child::{self, State};
use crate::clinical::norms::{self, Quantity, Task, Unit};
use crate::clinical::policy::Policy;
use crate::clinical::rule::Rule;
use crate::clinical::rules;
use crate::clinical::task::{Choice, Length, Pad, Question, Takes, TaskId, TaskSpec, When};
use crate::clinical::trial::{MarkKind, Trial};
use crate::measure::decimals::decimals;
use crate::measure::time::{Doubt, Millis};
use crate::measure::units::PerMinute;
use crate::measure::window::Window;

/// The counted minute.
pub const WINDOW: Millis = Millis::from_secs(60);

/// Question: a rate counted elsewhere.
pub const TYPED: &str = "rate";
/// Question: SpO2.
pub const SATURATION: &str = "spo2";
/// Question: air or oxygen.
pub const OXYGEN: &str = "oxygen";
/// Question: lowest value of a prescribed target.
pub const TARGET: &str = "target";

/// Question: whether a target of 88 to 92 % is prescribed in confirmed respiratory failure.
pub const CONFIRMED: &str = "confirmed-target";

/// What a reading of SpO2 may be.
pub(super) const PERCENT: Takes = Takes::Number {
    unit: "%",
    least: 50,
    most: 100,
    step: 0,
};

/// The task.
pub static SPEC: TaskSpec = TaskSpec {
    id: TaskId::Breathing,
    title: "Breaths in 60 seconds",
    steps: &[
        "Watch the chest or the blanket. Do not say that you count.",
        "Tap each breath in. The count ends by itself after 60 seconds.",
    ],
    say: "Rest quietly for a minute.",
    by_mouth: false,
    pad: Pad {
        counts: ("breath", "breaths"),
        start: "Start",
        length: Length::Fixed(WINDOW),
        first_counts: false,
        touch_ends: false,
        beat: None,
        late: None,
        end: None,
        watch: None,
        signs: None,
        countdown: false,
    },
    more: "A rate counted elsewhere, SpO2, oxygen",
    questions: &[
        Question {
            id: TYPED,
            ask: "Or enter a rate counted for 60 seconds elsewhere",
            when: When::Before,
            takes: Takes::Number {
                unit: "breaths per minute",
                least: 1,
                most: 120,
                step: 0,
            },
            only_if: None,
            needed: false,
        },
        Question {
            id: SATURATION,
            ask: "SpO2, if an oximeter is on",
            when: When::Before,
            takes: PERCENT,
            only_if: None,
            needed: false,
        },
        Question {
            id: OXYGEN,
            ask: "On air or oxygen?",
            when: When::Before,
            takes: Takes::OneOf(&[
                Choice {
                    id: "air",
                    words: "Air",
                },
                Choice {
                    id: "oxygen",
                    words: "Oxygen",
                },
            ]),
            only_if: None,
            needed: false,
        },
        Question {
            id: TARGET,
            ask: "Lowest SpO2 of a prescribed target, if there is one",
            when: When::Before,
            takes: Takes::Number {
                unit: "%",
                least: 80,
                most: 99,
                step: 0,
            },
            only_if: None,
            needed: false,
        },
        Question {
            id: CONFIRMED,
            ask: "Respiratory failure with raised carbon dioxide confirmed, and 88 to 92 % prescribed?",
            when: When::Before,
            takes: Takes::OneOf(&[
                Choice {
                    id: "yes",
                    words: "Both, yes",
                },
                Choice {
                    id: "no",
                    words: "No",
                },
            ]),
            only_if: None,
            needed: false,
        },
        Question {
            needed: false,
            ..breath_taps::ASK_STATE
        },
    ],
    trials: 1,
    usual: |_| Vec::new(),
    lines: None,
    caveat: "SpO2 is recorded for respiratory safety. A fall does not show, and a steady value \
             does not rule out, aspiration (published: BRI18).",
    compare,
    untimed: None,
    for_whom: "Everybody who is to be given something by mouth. The bands are for adults; under 16 years the local chart for the age is used.",
    rules: &[
        &rules::BREATHING_RATE,
        &rules::BREATHING_SPO2,
        &rules::BREATHING_SPO2_FALL,
        &rules::BREATHING_SECOND_SCALE,
        &rules::BREATHING_CHILD,
        &rules::BREATHING_NOT_COUNTED,
    ],
    not_for: |_, _| None,
};

/// Where the rate came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Counted here, 60 s.
    Counted,
    /// Entered.
    Entered,
    /// From even taps or from 30 seconds: for children, where nothing was counted for 60 seconds.
    Shorter,
}

/// What the trial yields.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Breaths per minute and how they were come by. Where one was counted and another entered,
    /// both stand: the graver one counts, none is hidden by the other.
    pub rates: Vec<(u16, Method)>,
    /// SpO2 in percent.
    pub spo2: Option<f64>,
    /// Whether oxygen is given; none where not answered.
    pub oxygen: Option<bool>,
    /// Lowest value of a prescribed target in percent.
    pub target: Option<f64>,
    /// A target of 88 to 92 % in confirmed failure: then the second scale is used.
    pub confirmed: Option<ConfirmedTarget>,
    /// What speaks against the counted rate.
    pub doubt: Option<Doubt>,
}

/// Reads a trial.
pub fn read(trial: &Trial) -> Finding {
    let counted = trial
        .start()
        .zip(trial.first(MarkKind::WindowOver))
        .filter(|(start, over)| {
            trial
                .between(*start, *over)
                .length
                .is_none_or(|length| length >= WINDOW)
        });
    let (counted, doubt) = match counted {
        Some((start, over)) => {
            let n = Window::new(WINDOW, None)
                .map(|window| window.split(&trial.tap_offsets()).count())
                .unwrap_or_default();
            let doubt = trial.doubt_over(start, WINDOW, over);
            (u16::try_from(n).ok(), doubt)
        }
        None => (None, None),
    };
    let entered = trial
        .number(TYPED)
        .map(|n| (n.round() as u16, Method::Entered));
    // A count that a hidden page may have cut short is no count.
    let counted = counted
        .filter(|_| doubt.is_none())
        .map(|n| (n, Method::Counted));
    Finding {
        rates: counted.into_iter().chain(entered).collect(),
        spo2: trial.number(SATURATION),
        oxygen: trial.choice(OXYGEN).map(|id| id == "oxygen"),
        target: trial.number(TARGET),
        confirmed: ConfirmedTarget::try_from(Prescription {
            hypercapnic_failure_confirmed: trial.choice(CONFIRMED) == Some("yes"),
            lowest: trial.number(TARGET).map_or(88, |n| n.round() as u8),
            highest: 92,
        })
        .ok(),
        doubt,
    }
}

/// The newest reading, and what it leaves out as it was read before: counting again takes back no
/// saturation.
pub fn reading(exam: &Exam) -> Option<Finding> {
    let mut readings = exam
        .trials
        .iter()
        .rev()
        .filter(|t| t.task == TaskId::Breathing)
        .map(read);
    let mut newest = readings.next()?;
    // One that was opened and left is no count: the one before stands.
    newest.rates = counted(exam);
    newest.doubt = count(exam).and_then(|t| read(t).doubt);
    for earlier in readings {
        if newest.spo2.is_none() {
            newest.spo2 = earlier.spo2;
            newest.oxygen = newest.oxygen.or(earlier.oxygen);
        }
        if newest.target.is_none() {
            newest.target = earlier.target;
            newest.confirmed = earlier.confirmed;
        }
    }
    Some(newest)
}

/// The rates of a child beside the range taught for the age; adults have bands of their own.
fn compare(exam: &Exam) -> Vec<Comparison> {
    if exam.age.is_none_or(|age| age.is_adult()) {
        return Vec::new();
    }
    counted(exam)
        .into_iter()
        .map(|(rate, method)| {
            compare::compare(
                exam,
                Task::Breathe,
                norms::Method::Count60s,
                Quantity::counted(Unit::PerMinute, u32::from(rate)),
                rate_words(rate, method),
            )
        })
        .collect()
}

/// What a reading means for a water trial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Band {
    /// In the usual band.
    Usual,
    /// The clinician decides.
    Caution,
    /// No water.
    Block,
}

/// The band of an adult's breathing rate under a policy.
pub fn rate_band(rate: u16, policy: &Policy) -> Band {
    let rate = i32::from(rate);
    if rate <= policy.breaths_low || rate >= policy.breaths_high {
        Band::Block
    } else if rate <= policy.breaths_caution_low || rate >= policy.breaths_caution_high {
        Band::Caution
    } else {
        Band::Usual
    }
}

/// Least and most breaths a minute that are neither a caution nor a block.
fn usual(policy: &Policy) -> (i32, i32) {
    (
        policy.breaths_caution_low.saturating_add(1),
        policy.breaths_caution_high.saturating_sub(1),
    )
}

/// The band of an adult's SpO2 under a policy, or against the prescribed target.
pub fn spo2_band(percent: f64, target: Option<f64>, policy: &Policy) -> Band {
    match target {
        Some(lowest) if percent < lowest => Band::Block,
        Some(_) => Band::Usual,
        None if percent <= f64::from(policy.spo2_low) => Band::Block,
        // A whole percent is read off; what lies between two belongs to the lower one.
        None if percent < f64::from(policy.spo2_caution) + 1.0 => Band::Caution,
        None => Band::Usual,
    }
}

/// The band of a reading: the second scale only with a confirmed target, and with oxygen unless
/// air was said. Below 88 % the target itself blocks.
fn reading_band(f: &Finding, percent: f64, policy: &Policy) -> Band {
    let saturation = Saturation::new(percent.round() as u8);
    match (f.confirmed, saturation) {
        (Some(target), Some(saturation)) if percent >= 88.0 => {
            let breathes = match f.oxygen {
                Some(false) => Breathes::Air,
                _ => Breathes::Oxygen,
            };
            scale_2(saturation, breathes, target).band()
        }
        (Some(_), _) => Band::Block,
        (None, _) => spo2_band(percent, f.target, policy),
    }
}

/// The rates that were counted for 60 seconds, or entered.
pub fn counted(exam: &Exam) -> Vec<(u16, Method)> {
    count(exam).map_or(Vec::new(), |t| read(t).rates)
}

/// The newest count that was begun, or rate that was entered.
fn count(exam: &Exam) -> Option<&Trial> {
    counts(exam).next()
}

fn counts(exam: &Exam) -> impl Iterator<Item = &Trial> {
    exam.trials.iter().rev().filter(|t| {
        t.task == TaskId::Breathing && (t.start().is_some() || t.number(TYPED).is_some())
    })
}

/// A child's rate beside what is usual at the age: notes.
pub fn child_notes(rate: PerMinute, exam: &Exam, state: Option<State>) -> Vec<Flag> {
    let Some(age) = exam.age.filter(|a| !a.is_adult()) else {
        return Vec::new();
    };
    let flags = breathing_child::judge(rate, age, state);
    if !flags.is_empty() {
        return flags;
    }
    let words = match breathing_child::usual(age, state) {
        Ok(breathing_child::Usual::Measured { low, high, state }) => format!(
            "breathing {} a minute {}: among the middle 90 of 100 children of {age} ({} to {})",
            rate.whole(),
            state.words(),
            decimals(low.get(), 1),
            decimals(high.get(), 1)
        ),
        Ok(breathing_child::Usual::Taught(_)) => return Vec::new(),
        Err(why) => format!("breathing {} a minute. {why}", rate.whole()),
    };
    vec![rules::BREATHING_INFANT.flag(Level::Note, Domain::Breathing, words)]
}

/// The rate as the ward says it.
pub fn rate_words(rate: u16, method: Method) -> String {
    match method {
        Method::Counted => format!("breathing {rate} a minute (counted for 60 seconds)"),
        Method::Entered => format!("breathing {rate} a minute (counted elsewhere)"),
        Method::Shorter => format!("breathing {rate} a minute (by taps or in 30 seconds)"),
    }
}

/// The SpO2 as the ward says it.
pub fn spo2_words(percent: f64, oxygen: Option<bool>, target: Option<f64>) -> String {
    let on = match oxygen {
        Some(true) => " on oxygen",
        Some(false) => " on air",
        None => "",
    };
    let target = target.map_or(String::new(), |lowest| {
        format!(" (prescribed: {} % or more)", decimals(lowest, 0))
    });
    format!("oxygen saturation {} %{on}{target}", decimals(percent, 0))
}

/// A reading that holds up a water trial.
#[derive(Clone, Debug)]
pub struct Block {
    /// The id under which going on is recorded. It carries the reading: a reason given for 25
    /// breaths does not speak for 40.
    pub hold: String,
    /// Who may go on.
    pub go_on: GoOn,
    /// What is said.
    pub flag: Flag,
}

impl Block {
    /// Whether it closes the gate, rather than asking for a count or a look at the chart.
    pub fn closes(&self) -> bool {
        [
            rules::BREATHING_RATE.id,
            rules::BREATHING_SPO2.id,
            rules::BREATHING_SECOND_SCALE.id,
        ]
        .contains(&self.flag.rule().id)
    }
}

/// Readings that hold up a water trial, what was gone past included.
pub fn blocks(exam: &Exam) -> Vec<Block> {
    let finding = reading(exam);
    let mut blocks = Vec::new();
    let mut block = |rule: &'static Rule, reading: String, go_on: GoOn, words: String| {
        blocks.push(Block {
            hold: format!("{}{reading}", rule.id),
            go_on,
            flag: rule.flag(Level::Incomplete, Domain::EatingDrinking, words),
        });
    };
    let slp = GoOn::SlpWithReason;
    let adult = exam.age.is_none_or(|a| a.is_adult());
    let mut rates = finding.as_ref().map_or(Vec::new(), |f| f.rates.clone());
    let none = rates.is_empty();
    let shorter = breath_taps::rate(exam).map(|(rate, _)| (rate, Method::Shorter));
    if none && adult {
        // Neither taps nor a count before one that was not finished clears an adult. What is too
        // fast or too slow by them is so all the same.
        let before = counts(exam).map(|t| read(t).rates).find(|r| !r.is_empty());
        let seen = before.unwrap_or_default().into_iter().chain(shorter);
        rates.extend(seen.filter(|(rate, _)| rate_band(*rate, &exam.policy) == Band::Block));
    } else if none {
        // A child's rate is read with the local chart, however it was counted.
        rates.extend(shorter);
    }
    if none && (adult || rates.is_empty()) {
        let words = match finding.as_ref().and_then(|f| f.doubt) {
            Some(doubt) => format!("Breaths: count again. {doubt}"),
            None => "Breaths not counted".to_owned(),
        };
        block(&rules::BREATHING_NOT_COUNTED, String::new(), slp, words);
    }
    for (rate, method) in &rates {
        let words = rate_words(*rate, *method);
        if !adult {
            let ask = format!("{words}: does it fit the local chart for this age?");
            block(
                &rules::BREATHING_CHILD,
                format!(".{rate}"),
                GoOn::WithReason,
                ask,
            );
        } else if rate_band(*rate, &exam.policy) == Band::Block {
            block(&rules::BREATHING_RATE, format!(".{rate}"), slp, words);
        }
    }
    if let Some(f) = &finding
        && let Some(percent) = f.spo2
    {
        let words = spo2_words(percent, f.oxygen, f.target);
        let below_target = f.target.is_some_and(|lowest| percent < lowest);
        let reading = format!(".{}", decimals(percent, 0));
        // A chart says what is usual, not that a reading which holds an adult is safe.
        if below_target || reading_band(f, percent, &exam.policy) == Band::Block {
            // Above the target it is the second scale that blocks; the id of the hold is stored
            // and stays.
            let rule = match f.confirmed {
                Some(_) if !below_target => &rules::BREATHING_SECOND_SCALE,
                _ => &rules::BREATHING_SPO2,
            };
            let stored = if adult || below_target {
                rules::BREATHING_SPO2.id
            } else {
                rules::BREATHING_CHILD.id
            };
            blocks.push(Block {
                hold: format!("{stored}{reading}"),
                go_on: slp,
                flag: rule.flag(Level::Incomplete, Domain::EatingDrinking, words),
            });
        } else if !adult {
            let ask = format!("{words}: does it fit the local chart for this age?");
            block(&rules::BREATHING_CHILD, reading, GoOn::WithReason, ask);
        }
    }
    blocks
}

/// What the rules say about an examination.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let mut flags: Vec<Flag> = blocks(exam)
        .into_iter()
        .map(|block| match exam.went_on(&block.hold, block.go_on) {
            Some(on) => block.flag.rule().flag(
                Level::Note,
                Domain::EatingDrinking,
                on.told(block.flag.reason()),
            ),
            None => block.flag,
        })
        .collect();
    let Some(finding) = reading(exam) else {
        return flags;
    };
    let mut note = |rule: &'static Rule, words: String| {
        flags.push(rule.flag(Level::Note, Domain::Breathing, words));
    };
    if exam.age.is_some_and(|a| !a.is_adult()) {
        let state = count(exam).and_then(breath_taps::state);
        for (rate, _) in &finding.rates {
            if let Ok(rate) = PerMinute::new(f64::from(*rate)) {
                flags.extend(child_notes(rate, exam, state));
            }
        }
        return flags;
    }
    for (rate, method) in &finding.rates {
        if rate_band(*rate, &exam.policy) == Band::Caution {
            let words = rate_words(*rate, *method);
            let (low, high) = usual(&exam.policy);
            note(
                &rules::BREATHING_RATE,
                format!("{words} ({low} to {high} is usual)"),
            );
        }
    }
    if let Some(percent) = finding.spo2
        && reading_band(&finding, percent, &exam.policy) == Band::Caution
    {
        let words = spo2_words(percent, finding.oxygen, finding.target);
        if finding.confirmed.is_some() {
            note(
                &rules::BREATHING_SECOND_SCALE,
                format!("{words} (88 to 92 % is prescribed)"),
            );
            return flags;
        }
        let usual = exam.policy.spo2_caution.saturating_add(1);
        note(
            &rules::BREATHING_SPO2,
            format!("{words} ({usual} % or more is usual)"),
        );
    }
    flags
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NEWS2, Royal College of Physicians 2017: bands 3, 1, 0, 2, 3 of the breathing rate.
    #[test]
    fn adult_rate_bands() {
        let policy = Policy::default();
        for (rate, band) in [
            (8, Band::Block),
            (9, Band::Caution),
            (11, Band::Caution),
            (12, Band::Usual),
            (20, Band::Usual),
            (21, Band::Caution),
            (24, Band::Caution),
            (25, Band::Block),
        ] {
            assert_eq!(rate_band(rate, &policy), band, "{rate}");
        }
    }

    /// NEWS2, Royal College of Physicians 2017: SpO2 scale 1, bands 3, 2, 2, 1, 1, 0.
    #[test]
    fn spo2_bands() {
        let policy = Policy::default();
        for (percent, band) in [
            (91.0, Band::Block),
            (92.0, Band::Caution),
            (93.0, Band::Caution),
            (94.0, Band::Caution),
            (95.0, Band::Caution),
            (96.0, Band::Usual),
        ] {
            assert_eq!(spo2_band(percent, None, &policy), band, "{percent}");
        }
        assert_eq!(spo2_band(90.0, Some(88.0), &policy), Band::Usual);
        assert_eq!(spo2_band(87.0, Some(88.0), &policy), Band::Block);
    }
}
