//! What must hold for every screen, with any of its tasks and of those that can be added to it.
//!
//! `decision_properties.rs` holds more of the swallow screen alone.

use crate::support::any::*;
use crate::support::*;
use penlight::clinical::decision::assess::assess;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::Flag;
use penlight::clinical::findings::oral::{Reason, Seen};
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::oral;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::{Screen, ScreenId};
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::spec::{NOT_VALID, Takes};
use penlight::measure::time::Millis;
use proptest::prelude::*;
use proptest::sample::{Index, select};

/// A task as a clinician would leave it where nothing went wrong.
fn whole(task: TaskId) -> Vec<Trial> {
    let ended = |ms| trial(task, &[(MarkKind::Start, 0), (MarkKind::End, ms)]);
    match task {
        TaskId::Breathing => vec![breaths(16)],
        TaskId::DrySwallow => vec![dry(&[3_000, 9_000, 15_000, 24_000])],
        TaskId::Water90 => vec![water()],
        TaskId::Sips => clear_sips(6),
        TaskId::TimedWater => vec![timed(100, 0, 9_000, 5)],
        TaskId::Own => vec![own_trial(1, "d0", &[]), own_trial(2, "d0", &[])],
        TaskId::Cracker => vec![eaten(4, 60, 3, 48_000)],
        TaskId::Meal => vec![tallied(&[(MarkKind::Tap, 1_000)], 60_000)],
        _ => vec![ended(9_000)],
    }
}

/// One of its trials with something left out, added or answered otherwise, or a repeat of it.
fn changed(task: TaskId) -> impl Strategy<Value = Vec<Trial>> {
    let kinds = vec![
        MarkKind::Start,
        MarkKind::End,
        MarkKind::WindowOver,
        MarkKind::WatchOver,
    ];
    (
        any::<Index>(),
        prop::option::of(select(kinds)),
        prop::collection::vec(any_sign_mark(), 0..2),
        any_answers(task),
        any::<[bool; 2]>(),
    )
        .prop_map(move |(which, lost, signs, answers, [anew, repeat])| {
            let mut trials = whole(task);
            let at = which.index(trials.len());
            let mut trial = trials[at].clone();
            let start = trial.marks.first().map_or(Millis(0), |m| m.at.mono);
            trial.marks.retain(|m| Some(m.kind) != lost);
            trial.marks.extend(signs.into_iter().map(|mut sign| {
                sign.at = sign.at.later(start);
                sign
            }));
            if anew {
                trial.answers = Default::default();
            }
            trial.answers.extend(answers);
            match repeat {
                true => trials.push(trial),
                false => trials[at] = trial,
            }
            trials
        })
}

/// A task that was left out, done well, or done otherwise.
fn any_of(task: TaskId, usual: u32) -> impl Strategy<Value = Vec<Trial>> {
    prop_oneof![
        usual => Just(whole(task)),
        1 => changed(task),
        1 => Just(Vec::new()),
    ]
}

/// Trials of a screen's own tasks, mostly whole, and now and then of any other task.
fn any_trials(screen: &'static Screen) -> BoxedStrategy<Vec<Trial>> {
    let own: Vec<_> = screen.tasks.iter().map(|t| any_of(*t, 6).boxed()).collect();
    let others: Vec<TaskId> = TaskId::ALL
        .iter()
        .copied()
        .filter(|task| !screen.tasks.contains(task))
        .collect();
    let other = prop_oneof![
        2 => Just(Vec::new()),
        1 => select(others).prop_flat_map(|task| any_of(task, 1)),
    ];
    (own, other)
        .prop_map(|(own, other)| {
            let mut trials: Vec<Trial> = own.into_iter().flatten().chain(other).collect();
            for (number, trial) in (0..).zip(&mut trials) {
                trial.number = number;
                // An hour apart, each task's own times kept.
                let hours = TaskId::ALL.iter().position(|t| *t == trial.task).unwrap();
                let by = Millis(i64::try_from(hours).unwrap() * 3_600_000);
                for mark in trial.marks.iter_mut() {
                    mark.at = mark.at.later(by);
                }
            }
            trials
        })
        .boxed()
}

/// A screen and an examination with it.
fn any_exam() -> impl Strategy<Value = Exam> {
    let asked = oral::items().map(|item| (item.id.to_owned(), Seen::AsExpected));
    let looked: Vec<(String, Seen)> = asked.collect();
    select(ScreenId::ALL.to_vec())
        .prop_flat_map(|id| (Just(id), any_trials(id.screen())))
        .prop_flat_map(move |(id, trials)| {
            let looked = looked.clone();
            (
                prop_oneof![3 => Just(Some(Age::Adult)), 1 => any_age()],
                prop_oneof![3 => Just(gate_holds()), 1 => any_gate()],
                prop_oneof![3 => Just(None), 1 => any_policy().prop_map(Some)],
                any::<bool>(),
                any::<bool>(),
            )
                .prop_map(move |(age, gate, policy, gone_on, seen)| {
                    let mut exam = Exam {
                        screen: Some(id),
                        age,
                        gate,
                        trials: trials.clone(),
                        policy: policy.unwrap_or_default(),
                        ..Exam::default()
                    };
                    if seen {
                        exam.oral.take(looked.clone());
                    }
                    if gone_on {
                        for task in id.screen().tasks {
                            for hold in holds(*task, &exam) {
                                exam.went_on.push(went_on(&hold.id, Role::Slp));
                            }
                        }
                    }
                    exam
                })
        })
}

fn of(exam: &Exam) -> Verdict {
    assess(exam.screen.unwrap().screen(), exam).verdict
}

/// That a task was not done, with a reason of its own where it offers some.
fn not_done(trial: &mut Trial, which: &Index) {
    let asked = tasks::spec(trial.task)
        .questions
        .iter()
        .find(|q| q.id == NOT_VALID);
    let mut reasons: Vec<&str> = match asked.map(|q| &q.takes) {
        Some(Takes::OneOf(choices)) => choices.to_vec(),
        _ => vec!["no-time"],
    };
    // Dry swallows that can't be done with this person at all leave a clean cup what it is:
    // `dry_swallows::what_cannot_be_done_leaves_a_clean_cup_clean`.
    reasons.retain(|reason| !["not-felt", "not-followed", "neck"].contains(reason));
    let reason = *which.get(&reasons);
    choose(trial, NOT_VALID, reason);
}

/// The clear way through each screen that decides is "no sign seen": the properties below are
/// about something.
#[test]
fn every_screen_that_decides_can_come_to_no_sign_seen() {
    for id in ScreenId::ALL {
        let screen = id.screen();
        let trials: Vec<Trial> = screen.tasks.iter().flat_map(|t| whole(*t)).collect();
        let exam = Exam {
            screen: Some(id),
            ..exam(trials)
        };
        let wanted = match screen.decides {
            true => Verdict::Pass,
            false => Verdict::NoDecision,
        };
        assert_eq!(of(&exam), wanted, "{id:?}");
    }
}

proptest! {
    #![proptest_config(config(1_500))]

    /// A trial that is marked "not valid" or "not given" afterwards, of whatever task, never makes
    /// a screen "no sign seen" that was none.
    #[test]
    fn a_trial_marked_as_not_done_never_clears(exam in any_exam(), which: Index, why: Index) {
        prop_assume!(!exam.trials.is_empty());
        let mut less = exam.clone();
        let at = which.index(exam.trials.len());
        not_done(&mut less.trials[at], &why);
        let (before, after) = (of(&exam), of(&less));
        prop_assert!(
            after != Verdict::Pass || before == Verdict::Pass,
            "{before:?} became Pass: {:?}", less.trials[at]
        );
    }

    /// Nor does a task that is noted as not given.
    #[test]
    fn a_task_noted_as_not_done_never_clears(
        exam in any_exam(), task in select(TaskId::ALL.to_vec()), why: Index,
    ) {
        let mut less = exam.clone();
        let mut trial = Trial::new(task, 90, None);
        not_done(&mut trial, &why);
        less.trials.push(trial);
        let (before, after) = (of(&exam), of(&less));
        prop_assert!(
            after != Verdict::Pass || before == Verdict::Pass,
            "{before:?} became Pass with {task:?} not done"
        );
    }

    /// Nor does anything of face, mouth and throat that is marked "not tested".
    #[test]
    fn what_was_not_tested_in_the_mouth_never_clears(
        exam in any_exam(), item: Index, why in select(Reason::ALL.to_vec()),
    ) {
        let items: Vec<&str> = oral::items().map(|item| item.id).collect();
        let mut less = exam.clone();
        less.oral.take(vec![((*item.get(&items)).to_owned(), Seen::NotTested(why))]);
        let (before, after) = (of(&exam), of(&less));
        prop_assert!(after != Verdict::Pass || before == Verdict::Pass);
    }

    /// The order in which tasks stand on a screen, and the order in which they were done, decide
    /// nothing. The order of the trials of one task is kept: the newest repeat says what is still
    /// missing, small sips come before large ones, and a sign is that of the newest own trial. So is
    /// that of the breathing before all trials: saturation falls from what was read before one.
    #[test]
    fn the_order_of_the_tasks_decides_nothing(
        (exam, order) in any_exam().prop_flat_map(|exam| {
            (Just(exam), Just(TaskId::ALL.to_vec()).prop_shuffle())
        }),
    ) {
        let screen = exam.screen.unwrap().screen();
        let mut on_screen = screen.tasks.to_vec();
        on_screen.sort_by_key(|task| order.iter().position(|t| t == task));
        let mut again = exam.clone();
        again.trials.sort_by_key(|trial| {
            let place = order.iter().position(|t| *t == trial.task);
            (trial.task != TaskId::Breathing, place)
        });
        for (tasks, exam_of) in [(&on_screen[..], &exam), (screen.tasks, &again), (&on_screen[..], &again)] {
            let shuffled = Screen {
                tasks: Vec::leak(tasks.to_vec()),
                ..*screen
            };
            let (wanted, got) = (assess(screen, &exam), assess(&shuffled, exam_of));
            prop_assert_eq!(got.verdict, wanted.verdict);
            let sorted = |flags: &[Flag]| {
                let mut words: Vec<String> = flags.iter().map(|f| f.reason().to_owned()).collect();
                words.sort();
                words
            };
            prop_assert_eq!(sorted(&all(&got)), sorted(&all(&wanted)));
        }
    }
}
