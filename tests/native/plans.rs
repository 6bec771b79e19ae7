//! What to do until somebody reviews: for what a plan was pressed, and how long it stands.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::action;
use penlight::record::event::Action;
use script::*;

fn asked_for(s: &Script) -> bool {
    let decision = s.visit.decision().unwrap();
    action::missing(&decision, &s.visit.plan, &s.visit.exam).is_some()
}

/// It was pressed for a cup of which nobody knew the end.
#[test]
fn a_plan_pressed_while_a_watch_runs_is_asked_for_again_after_it() {
    let while_the_watch_runs = || {
        let mut s = ready(Role::Screener);
        s.open(TaskId::Water90);
        s.choose("voice-before", "clear")
            .mark(100_000, MarkKind::Start)
            .mark(108_400, MarkKind::End)
            .choose("cup", "one-go");
        assert_eq!(s.verdict(), Verdict::Incomplete);
        assert!(asked_for(&s));
        s.plan(Action::NothingByMouth, "");
        assert!(!asked_for(&s));
        assert!(s.text().contains("NOTHING BY MOUTH"), "{}", s.text());
        s
    };
    // Over, and the voice not heard yet: incomplete still, for another reason.
    let mut s = while_the_watch_runs();
    s.mark(168_430, MarkKind::WatchOver);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(asked_for(&s));
    assert!(!s.text().contains("NOTHING BY MOUTH"), "{}", s.text());
    // A sign in it, and the watch goes on.
    let mut s = while_the_watch_runs();
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Refer);
    assert!(asked_for(&s));
    // Clear to its end: nothing is left that it was pressed for.
    let mut s = while_the_watch_runs();
    s.mark(168_430, MarkKind::WatchOver)
        .choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(!s.text().contains("NOTHING BY MOUTH"), "{}", s.text());
}
