//! How old an answer is when something is about to be given: readiness is a state of the moment.

use crate::clinical::findings::answered::Answered;
use crate::clinical::findings::exam::Exam;
use crate::clinical::findings::fact::GateFact;
use crate::clinical::findings::flag::{Domain, Flag, Level};
use crate::clinical::findings::gate::Group;
use crate::clinical::findings::in_the_way::Obstacle;
use crate::clinical::findings::moment::Moment;
use crate::clinical::findings::old::{Old, Stands};
use crate::clinical::findings::trial::Trial;
use crate::clinical::knowledge::rules;
use crate::clinical::knowledge::task::TaskId;
use crate::clinical::tasks::{breath_taps, breathing, water};
use crate::measure::time::Millis;

/// Whether more than the policy's time lies between two times of the wall clock.
pub fn long_between(from: Millis, to: Millis, exam: &Exam) -> bool {
    from != Millis::ZERO && to - from > exam.policy.moment_stands()
}

/// When a group of the gate was answered: the oldest of its answers.
fn asked_at(group: Group, exam: &Exam) -> Option<Moment> {
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
    let stands = Stands::of_group(group, &exam.policy);
    Old::new(Answered::Group(group), asked_at(group, exam)?, now, stands)
}

/// The voice before a trial that is made ready, where it was heard too long ago.
pub fn old_voice(task: TaskId, exam: &Exam, now: Moment) -> Option<Old> {
    let ready = exam.latest(task).filter(|t| t.start().is_none())?;
    ready.choice(water::VOICE_BEFORE)?;
    let at = *ready.said_at.get(water::VOICE_BEFORE)?;
    let old = Old::new(
        Answered::Voice,
        at,
        now,
        Stands::of_the_moment(&exam.policy),
    )?;
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
pub fn breaths_at(exam: &Exam) -> Option<Moment> {
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
    let mut old = all_old(exam, now);
    old.retain(|old| {
        let one = Obstacle::Old(*old);
        exam.went_past(&one, old.who_may_go_on()).is_none()
    });
    old
}

/// The same with what was gone past.
pub fn all_old(exam: &Exam, now: Moment) -> Vec<Old> {
    let groups = Group::ALL.into_iter();
    let mut old: Vec<Old> = groups.filter_map(|g| old_group(g, exam, now)).collect();
    for (what, at) in [
        (Answered::Breaths, breaths_at(exam)),
        (Answered::Saturation, saturation_at(exam)),
    ] {
        let stands = Stands::of_the_moment(&exam.policy);
        old.extend(at.and_then(|at| Old::new(what, at, now, stands)));
    }
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
    let given = |t: &&Trial| t.task.is_by_mouth() && t.start().is_some();
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

#[cfg(test)]
mod tests {
    use super::*;

    /// The time of the policy itself is not yet long, and a time that nobody knows is none.
    #[test]
    fn long_begins_after_the_time_of_the_policy() {
        let exam = Exam::default();
        let stands = exam.policy.moment_stands();
        let from = Millis(1_000);
        assert!(!long_between(from, from + stands, &exam));
        assert!(long_between(from, from + stands + Millis(1), &exam));
        assert!(!long_between(Millis::ZERO, stands + stands, &exam));
    }
}
