//! How old an answer is when something is about to be given: readiness is a state of the moment.

use super::exam::Exam;
use super::flag::{Domain, Flag, Level};
use super::gate::Group;
use super::go_on::GoOn;
use super::rules;
use super::task::TaskId;
use super::tasks::{breath_taps, breathing};
use super::trial::Trial;
use crate::measure::time::{Doubt, Millis, Stamp, elapsed};

/// Where a visit stands in time: what passed between its events, summed, so that a clock set back
/// on the way takes nothing from it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Moment {
    /// By both clocks.
    pub at: Stamp,
    passed: Millis,
    /// How often a time on the way could not be known.
    gaps: u32,
}

/// A clock set back by more may hide that the phone slept.
const SET_BACK: Millis = Millis::from_secs(-60);

impl Moment {
    /// The moment of the next event.
    pub fn next(self, at: Stamp) -> Moment {
        let since = elapsed(self.at, at, true);
        let length = match since.doubt {
            Some(Doubt::ClockSet(by)) if by < SET_BACK => None,
            _ => since.length,
        };
        // A stamp taken before the one that was written first.
        if length.is_some_and(|length| length < Millis::ZERO) {
            return self;
        }
        Moment {
            at,
            passed: self.passed + length.unwrap_or_default(),
            gaps: self.gaps + u32::from(length.is_none()),
        }
    }

    /// One of another visit, or of which nobody knows when it was.
    pub fn of_elsewhere(self, at: Option<Stamp>) -> Moment {
        let at = at.unwrap_or_default();
        let ago = elapsed(at, self.at, true).length;
        let ago = ago.filter(|ago| *ago >= Millis::ZERO && at != Stamp::default());
        Moment {
            at,
            passed: self.passed - ago.unwrap_or_default(),
            gaps: if ago.is_some() { self.gaps } else { u32::MAX },
        }
    }

    /// Whether more than the policy's time lies between this and a later moment, or nobody knows.
    pub fn is_old(self, now: Moment, exam: &Exam) -> bool {
        self.gaps != now.gaps || now.passed - self.passed > limit(exam)
    }
}

/// Whether more than the policy's time lies between two times of the wall clock.
pub fn long_between(from: Millis, to: Millis, exam: &Exam) -> bool {
    from != Millis::ZERO && to - from > limit(exam)
}

fn limit(exam: &Exam) -> Millis {
    Millis::from_secs(i64::from(exam.policy.ready_minutes) * 60)
}

/// Begins the id of the hold by answers of "Ready now".
pub const READY: &str = "old.ready";
/// Begins the id of the hold by a reading of the breathing.
pub const BREATHING: &str = "old.breath";

/// What is too old for a trial by mouth: the id of its hold, its words, what to do, who may go on.
pub struct Old {
    /// The hold's id: a reason given for it speaks for this answer alone.
    pub hold: String,
    /// In words.
    pub says: String,
    /// What to do.
    pub advice: &'static str,
    /// Who may go on.
    pub go_on: GoOn,
}

/// When "Ready now" was answered: the oldest of its answers.
pub fn ready_at(exam: &Exam) -> Option<Moment> {
    let asked = Group::Ready.items().filter_map(|i| exam.asked.get(i.id));
    asked.copied().reduce(|a, b| {
        if (a.gaps, a.passed) < (b.gaps, b.passed) {
            a
        } else {
            b
        }
    })
}

/// When a trial's rate was counted or entered, the later of the two.
pub fn counted_at(trial: &Trial) -> Option<Moment> {
    let entered = trial.said_at.get(breathing::TYPED).copied();
    let entered = entered.filter(|_| trial.number(breathing::TYPED).is_some());
    entered.or(trial.started_at())
}

/// What must be asked anew before anything is given at this moment.
pub fn old(exam: &Exam, now: Moment) -> Vec<Old> {
    let mut old = Vec::new();
    let mut ask = |id: &str, what: &str, at: Option<Moment>, advice, go_on| {
        if let Some(at) = at.filter(|at| at.is_old(now, exam)) {
            old.push(Old {
                hold: format!("{id}.{}", at.at.wall.0),
                says: if at.gaps == now.gaps {
                    format!("{what} more than {} minutes ago", exam.policy.ready_minutes)
                } else {
                    format!("{what} at a time that is not known")
                },
                advice,
                go_on,
            });
        }
    };
    ask(
        READY,
        "\"Ready now\" was asked",
        ready_at(exam),
        "It is a state of the moment.",
        GoOn::Never,
    );
    let rate = breathing::newest_count(exam).or_else(|| {
        let taps = breath_taps::rate(exam).is_some();
        let of = |t: &&Trial| [TaskId::BreathTaps, TaskId::Breaths30].contains(&t.task);
        exam.trials.iter().rev().filter(|_| taps).find(of)
    });
    ask(
        BREATHING,
        "Breaths were counted",
        rate.and_then(counted_at),
        "Count them again.",
        GoOn::SlpWithReason,
    );
    let mut trials = exam.trials.iter().rev();
    let read = trials.find(|t| t.number(breathing::SATURATION).is_some());
    ask(
        "old.breath-spo2",
        "SpO2 was read",
        read.and_then(|t| t.said_at.get(breathing::SATURATION).copied()),
        "Read it again.",
        GoOn::WithReason,
    );
    old.retain(|old| exam.went_on(&old.hold, old.go_on).is_none());
    old
}

/// The moment that ages are told against: the start of the newest trial by mouth.
pub fn told_against(exam: &Exam) -> Option<Moment> {
    let given = |t: &&Trial| super::tasks::spec(t.task).by_mouth && t.start().is_some();
    exam.trials.iter().rev().find(given)?.started_at()
}

/// Trials by mouth that were begun on answers too old.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let by_mouth = |t: &&Trial| super::tasks::spec(t.task).by_mouth;
    let mut given = exam.trials.iter().filter(by_mouth);
    let old = given.any(|t| t.on_old_answers && t.start().is_some());
    let words = format!(
        "something was given more than {} minutes after readiness or breathing was last asked",
        exam.policy.ready_minutes
    );
    let flag = |words| rules::GATE_READY_OLD.flag(Level::Incomplete, Domain::EatingDrinking, words);
    old.then(|| flag(words)).into_iter().collect()
}
