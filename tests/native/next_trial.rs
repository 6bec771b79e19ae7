//! What was seen in one trial, or still runs, holds the next. What must hold is local policy.

use crate::support::*;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::go_on::WentOn;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::cracker;

/// Who asked to stop is asked before anything else is put before them.
#[test]
fn a_request_to_stop_holds_the_same_again() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::AskedToStop, 1_000)])
        .choose("own-level", "d0");
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
}

#[test]
fn a_request_to_stop_holds_the_cup_after_it() {
    let mut s = ready(Role::Screener);
    s.given(TaskId::Own, 100_000, &[(Sign::AskedToStop, 1_000)])
        .choose("own-level", "d0");
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// A cup at the lips, its last swallow not pressed: nothing else is given meanwhile.
#[test]
fn a_trial_that_still_runs_holds_another() {
    let mut s = ready(Role::Slp);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start);
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
    // Its own end is no hold, and a reason speaks for what it was given for.
    s.pass(TaskId::Own, "runs.Water90", Role::Slp);
    assert!(holds(TaskId::Own, &s.visit.exam).is_empty());
    let held = holds(TaskId::Sips, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("runs.Water90")),
        "{held:?}"
    );
}

#[test]
fn after_a_sign_a_further_trial_needs_a_reason() {
    let exam = exam_with_own(vec![own_trial(1, "d0", &[(Sign::Cough, 1_000)])]);
    assert_eq!(holds(TaskId::Own, &exam).len(), 1);
    assert_eq!(holds(TaskId::TimedWater, &exam).len(), 2);
    assert!(holds(TaskId::Own, &exam_with_own(vec![own_trial(1, "d0", &[])])).is_empty());
}

/// While the minute after a trial of another task runs, nothing else is given.
#[test]
fn a_running_watch_holds_every_other_trial() {
    let mut cup = timed(150, 0, 11_800, 7);
    cup.marks.pop();
    let exam = exam_with_cup(cup);
    for task in [TaskId::Water90, TaskId::Own, TaskId::Sips] {
        let held = holds(task, &exam);
        assert_eq!(held.len(), 1, "{held:?}");
        assert!(held[0].says.contains("still runs"));
    }
    assert!(holds(TaskId::Water90, &exam_with_cup(timed(150, 0, 11_800, 7))).is_empty());
}

/// A cracker is held once by a drink that went wrong, and what was given is told by its name.
#[test]
fn a_cracker_after_a_sip_that_went_wrong_is_held_once() {
    let mut given = clear_sips(1);
    given.push(sip(11, 3, 770_000, &[(Sign::Cough, 4_000)]));
    let mut exam = exam_with_sips(given, None);
    let mut before = Trial::new(TaskId::Cracker, 30, None);
    for question in [cracker::ALLERGY, cracker::TEETH, cracker::ORDER] {
        choose(&mut before, question, cracker::FINE);
    }
    exam.trials.push(before);
    let held = holds(TaskId::Cracker, &exam);
    assert_eq!(held.len(), 1, "{held:?}");
    let held = holds(TaskId::Own, &exam);
    assert_eq!(held.len(), 1, "{held:?}");
    exam.went_on.push(WentOn {
        hold: held[0].id.clone(),
        because: "Needed for the assessment".to_owned(),
        by: Role::Slp,
        says: String::new(),
        initials: None,
        ground: None,
        lapsed: false,
        led_to: Vec::new(),
    });
    // It led to nothing yet: the water was given before it.
    let told = |exam: &Exam| {
        let also = decided(exam).also;
        also.iter().any(|f| f.reason().contains("given despite"))
    };
    assert!(!told(&exam));
    let next = own_trial(40, "d2", &[]);
    exam.went_on[0].led_to.push(next.number);
    exam.trials.push(next);
    reason(
        &decided(&exam).also,
        "A trial by mouth was given despite this",
    );
}
