//! What a trial yields, and what is read from all of them.

use crate::clinical::findings::breathing::{Method, Spo2};
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::trial::{MarkKind, Trial};
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::breathing::adult_bands::{ConfirmedTarget, Prescription, SECOND_SCALE};
use crate::clinical::tasks::breathing::questions::{
    CONFIRMED, OXYGEN, SATURATION, TARGET, TYPED, WINDOW,
};
use crate::measure::time::Doubt;
use crate::measure::window::Window;

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

impl Finding {
    /// The saturation with what it was read on.
    pub fn saturation(&self) -> Option<Spo2> {
        self.spo2.map(|percent| Spo2 {
            percent,
            oxygen: self.oxygen,
            target: self.target,
        })
    }
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
            lowest: trial
                .number(TARGET)
                .map_or(*SECOND_SCALE.start(), |n| n.round() as u8),
            highest: *SECOND_SCALE.end(),
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

/// The rates that were counted for 60 seconds, or entered.
pub fn counted(exam: &Exam) -> Vec<(u16, Method)> {
    count(exam).map_or(Vec::new(), |t| read(t).rates)
}

/// The newest count that was begun, or rate that was entered.
pub fn count(exam: &Exam) -> Option<&Trial> {
    counts(exam).next()
}

pub(super) fn counts(exam: &Exam) -> impl Iterator<Item = &Trial> {
    exam.trials.iter().rev().filter(|t| {
        t.task == TaskId::Breathing && (t.start().is_some() || t.number(TYPED).is_some())
    })
}
