//! What was refused, and consent taken back: told, and never clear. What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;

#[test]
fn a_refusal_of_own_trials_is_told() {
    let mut s = own_trials(Role::Slp);
    s.open(TaskId::Own);
    s.choose("not-valid", "refused");
    assert!(s.text().contains("did not want to"), "{}", s.text());
}

#[test]
fn a_refusal_after_the_first_own_trial_is_told() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    s.open(TaskId::Own);
    s.choose("own-level", "f4").choose("not-valid", "refused");
    assert!(s.text().contains("did not want to"), "{}", s.text());
}

/// Refused, and another one opened and left.
#[test]
fn a_refusal_is_not_taken_back_by_one_that_was_opened() {
    for task in [TaskId::TimedWater, TaskId::Sips, TaskId::Own] {
        let mut s = ready(Role::Screener);
        s.open(task);
        s.choose("not-valid", "refused").open(task);
        s.water(&[]);
        assert!(s.text().contains("did not want to"), "{}", s.text());
        assert_eq!(s.verdict(), Verdict::Incomplete, "{task:?}");
    }
}

#[test]
fn a_refusal_in_the_middle_of_the_sips_is_told() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[])
        .number("sip", 3)
        .choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2");
    s.open(TaskId::Sips);
    s.choose("not-valid", "refused");
    assert!(s.text().contains("did not want to"), "{}", s.text());
}

#[test]
fn a_refusal_of_what_was_added_is_told() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::TimedWater);
    s.choose("not-valid", "refused");
    s.water(&[]);
    assert!(s.text().contains("did not want to"), "{}", s.text());
}

/// "Not given? Did not want to", pressed while the trial before still stands on the page.
#[test]
fn a_refusal_said_beside_the_trial_before_is_told() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    s.choose("not-valid", "refused");
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
    assert!(s.text().contains("did not want to"), "{}", s.text());
    for (task, screen) in [
        (TaskId::Sips, ScreenId::Stepped),
        (TaskId::TimedWater, ScreenId::Swallow),
    ] {
        let mut s = ready(Role::Screener);
        s.on(screen).water(&[]);
        match task {
            TaskId::TimedWater => s.timed_cup(300_000, &[], "clear"),
            _ => {
                s.given(task, 300_000, &[]).number("sip", 3);
            }
        }
        s.choose("not-valid", "refused");
        assert_ne!(s.verdict(), Verdict::Pass, "{task:?}");
        assert!(
            s.text().contains("did not want to"),
            "{task:?} {}",
            s.text()
        );
    }
    // A cup that was given and said not to be given is no clear one.
    let mut s = ready(Role::Screener);
    s.water(&[]).choose("not-valid", "refused");
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// Taken back after a clear cup: nothing says "no sign seen" at its top any more, and what was seen
/// is told.
#[test]
fn consent_taken_back_tells_what_was_seen_before() {
    let mut s = ready(Role::Screener);
    s.water(&[]).gate(&[("consent", "no")]);
    assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::GateClosed));
    assert!(s.text().contains("90 mL of water drunk"), "{}", s.text());
    assert!(
        holds(TaskId::Water90, &s.visit.exam)
            .iter()
            .any(|h| !h.go_on.open_to(Role::Slp))
    );
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 1_000)]).gate(&[("consent", "no")]);
    assert!(s.text().starts_with("STOP"), "{}", s.text());
    assert!(s.found().contains("no agreement"), "{}", s.text());
}
