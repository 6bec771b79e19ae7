//! How old an answer is when something is about to be given: readiness is a state of the moment.

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::GateFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate::Group;
use crate::clinical::findings::go_on::GoOn;
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks;
use crate::clinical::tasks::{breath_taps, breathing, water};
use crate::measure::time::Millis;

/// How long an answer stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// So many minutes.
    Minutes(i32),
    /// So many hours.
    Hours(i32),
}

impl Stands {
    /// What is a state of the moment.
    fn of_the_moment(exam: &Exam) -> Stands {
        Stands::Minutes(exam.policy.ready_minutes)
    }

    /// A group of the gate. How somebody breathes and whether a mask is on is as much of the moment
    /// as whether he is awake; orders, and who lies in the bed, change from shift to shift.
    fn of_group(group: Group, exam: &Exam) -> Stands {
        match group {
            Group::Person | Group::Orders => Stands::Hours(exam.policy.orders_hours),
            Group::Airway | Group::Ready => Stands::of_the_moment(exam),
        }
    }

    fn length(self) -> Millis {
        match self {
            Stands::Minutes(n) => Millis::from_secs(i64::from(n) * 60),
            Stands::Hours(n) => Millis::from_secs(i64::from(n) * 3_600),
        }
    }
}

/// Whether more than the policy's time lies between two times of the wall clock.
pub fn long_between(from: Millis, to: Millis, exam: &Exam) -> bool {
    from != Millis::ZERO && to - from > exam.policy.moment_stands()
}

/// What is too old for a trial by mouth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Old {
    /// What was asked or heard.
    pub what: Answered,
    /// The trial whose voice before it is.
    pub trial: Option<u32>,
    /// When it was given.
    pub at: Moment,
    /// It is older than this; none where nobody knows how old it is.
    pub older_than: Option<Stands>,
}

impl Old {
    fn new(what: Answered, at: Moment, now: Moment, stands: Stands) -> Option<Old> {
        at.is_older(now, stands.length()).then(|| Old {
            what,
            trial: None,
            at,
            older_than: at.is_known_at(now).then_some(stands),
        })
    }

    /// Who may go on past it.
    pub fn go_on(&self) -> GoOn {
        match self.what {
            Answered::Group(_) | Answered::Voice => GoOn::Never,
            Answered::Breaths => GoOn::SlpWithReason,
            Answered::Saturation => GoOn::WithReason,
        }
    }

    /// The id of its hold: a reason given for it speaks for this answer alone.
    pub fn hold(&self) -> String {
        let at = self.at.at.wall.0;
        match (self.what, self.trial) {
            (Answered::Group(group), _) => format!("{}.{at}", begins(group)),
            (Answered::Breaths, _) => format!("{BREATHING}.{at}"),
            (Answered::Saturation, _) => format!("{BREATHING}-spo2.{at}"),
            (Answered::Voice, trial) => format!("{VOICE}{}.{at}", trial.unwrap_or_default()),
        }
    }
}

/// Begins the id of the hold by a reading of the breathing.
pub const BREATHING: &str = "old.breath";

/// Begins the id of the hold by answers of a group of the gate.
pub const fn begins(group: Group) -> &'static str {
    match group {
        Group::Person => "old.person",
        Group::Orders => "old.orders",
        Group::Airway => "old.airway",
        Group::Ready => "old.ready",
    }
}

const VOICE: &str = "old.voice.";

/// The trial whose voice before must be heard again, by the id of the hold.
pub fn voice_of(hold: &str) -> Option<u32> {
    let (trial, _) = hold.strip_prefix(VOICE)?.split_once('.')?;
    trial.parse().ok()
}

/// When a group of the gate was answered: the oldest of its answers.
pub fn asked_at(group: Group, exam: &Exam) -> Option<Moment> {
    let asked = group.items().filter_map(|i| exam.asked.get(i.id));
    asked.copied().reduce(Moment::earlier)
}

/// When "Ready now" was answered.
pub fn ready_at(exam: &Exam) -> Option<Moment> {
    asked_at(Group::Ready, exam)
}

/// Whether a group of the gate must be asked again.
pub fn is_group_old(group: Group, exam: &Exam, now: Moment) -> bool {
    old_group(group, exam, now).is_some()
}

fn old_group(group: Group, exam: &Exam, now: Moment) -> Option<Old> {
    let stands = Stands::of_group(group, exam);
    Old::new(Answered::Group(group), asked_at(group, exam)?, now, stands)
}

/// The voice before a trial that is made ready, where it was heard too long ago.
pub fn old_voice(task: TaskId, exam: &Exam, now: Moment) -> Option<Old> {
    let ready = exam.latest(task).filter(|t| t.start().is_none())?;
    ready.choice(water::VOICE_BEFORE)?;
    let at = *ready.said_at.get(water::VOICE_BEFORE)?;
    let old = Old::new(Answered::Voice, at, now, Stands::of_the_moment(exam))?;
    Some(Old {
        trial: Some(ready.number),
        ..old
    })
}

/// When a trial's rate was counted or entered, the later of the two.
pub fn counted_at(trial: &Trial) -> Option<Moment> {
    let entered = trial.said_at.get(breathing::TYPED).copied();
    let entered = entered.filter(|_| trial.number(breathing::TYPED).is_some());
    entered.or(trial.started_at())
}

/// When the breaths were counted: for 60 seconds, else by taps or in 30 seconds.
fn breaths_at(exam: &Exam) -> Option<Moment> {
    let rate = breathing::newest_count(exam).or_else(|| {
        let taps = breath_taps::rate(exam).is_some();
        let of = |t: &&Trial| [TaskId::BreathTaps, TaskId::Breaths30].contains(&t.task);
        exam.trials.iter().rev().filter(|_| taps).find(of)
    });
    rate.and_then(counted_at)
}

/// When the saturation was read.
fn saturation_at(exam: &Exam) -> Option<Moment> {
    let mut trials = exam.trials.iter().rev();
    let read = trials.find(|t| t.number(breathing::SATURATION).is_some());
    read.and_then(|t| t.said_at.get(breathing::SATURATION).copied())
}

/// What must be asked anew before anything is given at this moment.
pub fn old(exam: &Exam, now: Moment) -> Vec<Old> {
    let groups = Group::ALL.into_iter();
    let mut old: Vec<Old> = groups.filter_map(|g| old_group(g, exam, now)).collect();
    for (what, at) in [
        (Answered::Breaths, breaths_at(exam)),
        (Answered::Saturation, saturation_at(exam)),
    ] {
        let stands = Stands::of_the_moment(exam);
        old.extend(at.and_then(|at| Old::new(what, at, now, stands)));
    }
    old.retain(|old| exam.went_on(&old.hold(), old.go_on()).is_none());
    old
}

/// What of it was not asked yet, or too long ago, when a trial by mouth is begun.
pub fn begun_on(task: TaskId, exam: &Exam, now: Moment) -> Vec<Answered> {
    let open = |group: &Group| group.items().any(|item| !exam.gate.answered(item));
    let missing = Group::ALL.into_iter().filter(open).map(Answered::Group);
    let old = old(exam, now).into_iter().chain(old_voice(task, exam, now));
    each_once(missing.chain(old.map(|old| old.what)))
}

fn each_once(all: impl Iterator<Item = Answered>) -> Vec<Answered> {
    let mut once = Vec::new();
    for what in all {
        if !once.contains(&what) {
            once.push(what);
        }
    }
    once
}

/// Trials by mouth that were started.
fn given(exam: &Exam) -> impl DoubleEndedIterator<Item = &Trial> {
    let given = |t: &&Trial| tasks::spec(t.task).by_mouth && t.start().is_some();
    exam.trials.iter().filter(given)
}

/// The moment that ages are told against: the start of the newest trial by mouth.
pub fn told_against(exam: &Exam) -> Option<Moment> {
    given(exam).next_back()?.started_at()
}

/// Trials by mouth that were begun on answers too old.
pub fn flags(exam: &Exam) -> Vec<Flag> {
    let what = each_once(given(exam).flat_map(|t| t.begun_on.iter().copied()));
    let flag = || {
        rules::GATE_READY_OLD.flag(
            Level::Incomplete,
            Domain::EatingDrinking,
            GateFact::BegunOn(what.clone()),
        )
    };
    (!what.is_empty()).then(flag).into_iter().collect()
}
