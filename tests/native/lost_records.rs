//! Entries that can't be read: what was seen in their trials counts all the same.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::record::event::Event;

/// The start is lost: the signs of the trial are not.
#[test]
fn a_sign_in_a_trial_whose_start_cannot_be_read_counts() {
    for task in [TaskId::Own, TaskId::Sips, TaskId::TimedWater] {
        let mut s = ready(Role::Slp);
        s.open(task);
        s.lost();
        s.mark(102_000, MarkKind::End)
            .mark(103_000, MarkKind::Sign(Sign::Cough));
        assert_eq!(s.verdict(), Verdict::Refer, "{task:?} {}", s.text());
        assert!(s.text().contains("coughed"), "{}", s.text());
        assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
    }
}

/// That a trial was opened is lost, and with it what of: its signs are not.
#[test]
fn a_sign_whose_trial_cannot_be_read_counts() {
    let mut s = ready(Role::Slp);
    s.lost();
    s.trial = s.visit.next_trial();
    s.mark(100_000, MarkKind::Start)
        .mark(103_000, MarkKind::Sign(Sign::BreathingChange));
    assert_eq!(s.verdict(), Verdict::Stop, "{}", s.text());
    assert!(s.text().contains("breathing changed"), "{}", s.text());
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Help was called for a choking whose own entry is lost.
#[test]
fn help_that_was_called_tells_of_a_choking_that_cannot_be_read() {
    let mut s = ready(Role::Slp);
    s.lost();
    s.say(Event::HelpCalled(at(5_000)))
        .say(Event::BackToBaseline(at(60_000)));
    assert_eq!(s.verdict(), Verdict::Stop, "{}", s.text());
}
