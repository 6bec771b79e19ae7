//! How old an answer is when something is about to be given: readiness is a state of the moment.

use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate::Group;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::{breath_taps, breathing, water};
use crate::measure::time::{Doubt, Millis, Stamp, elapsed};
use crate::wording::words::small;

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
        self.is_older(now, limit(exam))
    }

    fn is_older(self, now: Moment, limit: Millis) -> bool {
        self.gaps != now.gaps || now.passed - self.passed > limit
    }
}

/// Whether more than the policy's time lies between two times of the wall clock.
pub fn long_between(from: Millis, to: Millis, exam: &Exam) -> bool {
    from != Millis::ZERO && to - from > limit(exam)
}

fn limit(exam: &Exam) -> Millis {
    Millis::from_secs(i64::from(exam.policy.ready_minutes) * 60)
}

/// Begins the id of the hold by a reading of the breathing.
pub const BREATHING: &str = "old.breath";

/// What is too old for a trial by mouth: the id of its hold, its words, what to do, who may go on.
pub struct Old {
    /// The hold's id: a reason given for it speaks for this answer alone.
    pub hold: String,
    /// What was asked or heard.
    pub what: String,
    /// In words.
    pub says: String,
    /// What to do.
    pub advice: &'static str,
    /// Who may go on.
    pub go_on: GoOn,
}

/// Begins the id of the hold by answers of a group of the gate.
pub const fn begins(group: Group) -> &'static str {
    match group {
        Group::Person => "old.person",
        Group::Orders => "old.orders",
        Group::Airway => "old.airway",
        Group::Ready => "old.ready",
    }
}

/// When a group of the gate was answered: the oldest of its answers.
pub fn asked_at(group: Group, exam: &Exam) -> Option<Moment> {
    let asked = group.items().filter_map(|i| exam.asked.get(i.id));
    asked.copied().reduce(|a, b| {
        if (a.gaps, a.passed) < (b.gaps, b.passed) {
            a
        } else {
            b
        }
    })
}

/// When "Ready now" was answered.
pub fn ready_at(exam: &Exam) -> Option<Moment> {
    asked_at(Group::Ready, exam)
}

/// How long the answers of a group stand, and in words. How somebody breathes and whether a mask is
/// on is as much of the moment as whether he is awake; orders, and who lies in the bed, change from
/// shift to shift.
fn stands(group: Group, exam: &Exam) -> (Millis, String) {
    match group {
        Group::Person | Group::Orders => {
            let hours = exam.policy.orders_hours;
            let length = Millis::from_secs(i64::from(hours) * 3_600);
            (length, format!("{hours} hours"))
        }
        Group::Airway | Group::Ready => (limit(exam), minutes(exam)),
    }
}

fn minutes(exam: &Exam) -> String {
    format!("{} minutes", exam.policy.ready_minutes)
}

/// Whether a group of the gate must be asked again.
pub fn is_group_old(group: Group, exam: &Exam, now: Moment) -> bool {
    let (length, _) = stands(group, exam);
    asked_at(group, exam).is_some_and(|at| at.is_older(now, length))
}

const VOICE: &str = "old.voice.";

/// The trial whose voice before must be heard again, by the id of the hold.
pub fn voice_of(hold: &str) -> Option<u32> {
    let (trial, _) = hold.strip_prefix(VOICE)?.split_once('.')?;
    trial.parse().ok()
}

/// The voice before a trial that is made ready, where it was heard too long ago.
pub fn old_voice(task: TaskId, exam: &Exam, now: Moment) -> Option<Old> {
    let ready = exam.latest(task).filter(|t| t.start().is_none())?;
    ready.choice(water::VOICE_BEFORE)?;
    let at = *ready.said_at.get(water::VOICE_BEFORE)?;
    at.is_old(now, exam).then(|| Old {
        hold: format!("{VOICE}{}.{}", ready.number, at.at.wall.0),
        what: "the voice before it".to_owned(),
        says: format!("The voice was heard {}", ago(at, now, &minutes(exam))),
        advice: "Hear it again.",
        go_on: GoOn::Never,
    })
}

fn ago(at: Moment, now: Moment, length: &str) -> String {
    if at.gaps == now.gaps {
        format!("more than {length} ago")
    } else {
        "at a time that is not known".to_owned()
    }
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
    for group in Group::ALL {
        if let Some(at) = asked_at(group, exam).filter(|_| is_group_old(group, exam, now)) {
            let what = format!("\"{}\"", group.title());
            let (_, length) = stands(group, exam);
            old.push(Old {
                hold: format!("{}.{}", begins(group), at.at.wall.0),
                says: format!("{what} was asked {}", ago(at, now, &length)),
                what,
                advice: match group {
                    Group::Airway | Group::Ready => "It is a state of the moment.",
                    Group::Person | Group::Orders => "It may have changed since.",
                },
                go_on: GoOn::Never,
            });
        }
    }
    let mut ask = |id: &str, what: &str, was: &str, at: Option<Moment>, advice, go_on| {
        if let Some(at) = at.filter(|at| at.is_old(now, exam)) {
            old.push(Old {
                hold: format!("{id}.{}", at.at.wall.0),
                what: small(what),
                says: format!("{what} {was} {}", ago(at, now, &minutes(exam))),
                advice,
                go_on,
            });
        }
    };
    let rate = breathing::newest_count(exam).or_else(|| {
        let taps = breath_taps::rate(exam).is_some();
        let of = |t: &&Trial| [TaskId::BreathTaps, TaskId::Breaths30].contains(&t.task);
        exam.trials.iter().rev().filter(|_| taps).find(of)
    });
    ask(
        BREATHING,
        "Breaths",
        "were counted",
        rate.and_then(counted_at),
        "Count them again.",
        GoOn::SlpWithReason,
    );
    let mut trials = exam.trials.iter().rev();
    let read = trials.find(|t| t.number(breathing::SATURATION).is_some());
    ask(
        "old.breath-spo2",
        "SpO2",
        "was read",
        read.and_then(|t| t.said_at.get(breathing::SATURATION).copied()),
        "Read it again.",
        GoOn::WithReason,
    );
    old.retain(|old| exam.went_on(&old.hold, old.go_on).is_none());
    old
}

/// What of it was not asked yet, or too long ago, when a trial by mouth is begun.
pub fn begun_on(task: TaskId, exam: &Exam, now: Moment) -> Vec<String> {
    let open = |group: &Group| group.items().any(|item| !exam.gate.answered(item));
    let missing = Group::ALL.into_iter().filter(open);
    let missing = missing.map(|group| format!("\"{}\"", group.title()));
    let old = old(exam, now).into_iter().chain(old_voice(task, exam, now));
    let mut all: Vec<String> = missing.collect();
    for old in old {
        if !all.contains(&old.what) {
            all.push(old.what);
        }
    }
    all
}

/// The moment that ages are told against: the start of the newest trial by mouth.
pub fn told_against(exam: &Exam) -> Option<Moment> {
    let given = |t: &&Trial| crate::clinical::tasks::spec(t.task).by_mouth && t.start().is_some();
    exam.trials.iter().rev().find(given)?.started_at()
}

/// Trials by mouth that were begun on answers too old.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let by_mouth =
        |t: &&Trial| crate::clinical::tasks::spec(t.task).by_mouth && t.start().is_some();
    let mut what: Vec<&str> = Vec::new();
    for words in exam
        .trials
        .iter()
        .filter(by_mouth)
        .flat_map(|t| &t.begun_on)
    {
        if !what.contains(&words.as_str()) {
            what.push(words);
        }
    }
    let words = format!(
        "something was given on answers that were missing or too old: {}",
        what.join(", ")
    );
    let flag = |words| rules::GATE_READY_OLD.flag(Level::Incomplete, Domain::EatingDrinking, words);
    let any = !what.is_empty();
    any.then(|| flag(words)).into_iter().collect()
}
