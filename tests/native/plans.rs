//! What to do until somebody reviews: for what a plan was pressed, and how long it stands.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::clinical::tasks::water;
use penlight::handover::action;
use penlight::record::event::Action;
use penlight::record::event::ByWhen;
use penlight::record::event::Event;
use penlight::record::event::Plan;
use penlight::record::event::Whom;

fn asked_for(s: &Scene) -> bool {
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

#[test]
fn a_plan_for_one_reason_does_not_stand_for_another() {
    let mut s = ready(Role::Screener);
    s.water(&[]).choose(water::CUP, water::SOME_LEFT);
    assert_eq!(s.verdict(), Verdict::Refer);
    s.plan_with(|plan| Plan {
        action: Some(Action::KeepPlan),
        because: "she was only not thirsty".to_owned(),
        drink: Some(0),
        ..plan
    });
    assert!(s.text().contains("only not thirsty"), "{}", s.text());
    let trial = s.trial;
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let text = s.text();
    assert!(
        !text.contains("only not thirsty") && !text.contains("level 0"),
        "{text}"
    );
    let decision = s.visit.decision().unwrap();
    assert!(action::missing(&decision, &s.visit.plan, &s.visit.exam).is_some());
    // The slip taken back, what was pressed before it stands again.
    s.say(Event::Undo { trial });
    assert!(s.text().contains("only not thirsty"), "{}", s.text());
}

#[test]
fn a_risk_plan_nobody_knew_of_needs_its_reason() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)])
        .plan(Action::AcknowledgedRisk, "");
    let missing =
        |s: &Scene| action::missing(&s.visit.decision().unwrap(), &s.visit.plan, &s.visit.exam);
    assert!(missing(&s).is_some());
    s.plan(Action::AcknowledgedRisk, "the doctor decided so");
    assert!(missing(&s).is_none());
    assert!(
        s.text().contains("because the doctor decided so"),
        "{}",
        s.text()
    );
    let mut s = adult(Role::Screener);
    s.gate(&[("risk-plan", "plan")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    s.water(&[(Sign::Cough, 1_000)])
        .plan(Action::AcknowledgedRisk, "");
    assert!(missing(&s).is_none());
}

/// "Keep the current plan for eating and drinking, because .": read on the page between the press and
/// its reason, and by the ward where a full stop alone was typed.
#[test]
fn a_plan_without_its_reason_says_so_and_does_not_leave() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)]);
    let missing =
        |s: &Scene| action::missing(&s.visit.decision().unwrap(), &s.visit.plan, &s.visit.exam);
    for (action, without, with) in [
        (
            Action::KeepPlan,
            "Keep the current plan for eating and drinking: reason not given yet.",
            "Keep the current plan for eating and drinking, because it was one sip.",
        ),
        (
            Action::AcknowledgedRisk,
            "Acknowledged-risk plan (reason not given yet): follow it where it is recorded.",
            "Acknowledged-risk plan, because it was one sip: follow it where it is recorded.",
        ),
    ] {
        for because in ["", "  ", ".", " . . "] {
            s.plan(action, because);
            assert!(missing(&s).is_some(), "{because:?}");
            for text in [s.text(), s.note()] {
                assert!(text.contains(without), "{because:?}\n{text}");
                assert!(!text.contains("because ."), "{because:?}\n{text}");
                assert!(!text.contains("because :"), "{because:?}\n{text}");
            }
        }
        s.plan(action, "It was one sip.");
        assert!(missing(&s).is_none());
        assert!(s.text().contains(with), "{}", s.text());
    }
}

/// "Keep the plan", pressed after the first choking, is no word on the second.
#[test]
fn a_plan_after_one_choking_does_not_stand_after_the_next() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::BackToBaseline(at(60_000)))
        .plan(Action::KeepPlan, "it was only a crumb");
    assert!(s.text().contains("only a crumb"), "{}", s.text());
    s.say(Event::Choking(at(200_000)));
    assert!(!s.text().contains("only a crumb"), "{}", s.text());
}

/// "Broken off, tomorrow will do" is no word on failing breathing.
#[test]
fn a_plan_for_a_broken_off_screen_does_not_stand_when_the_gate_closes() {
    let mut s = ready(Role::Screener);
    s.say(Event::EndedEarly(EndedEarly::BrokenOff));
    s.plan_with(|plan| Plan {
        action: Some(Action::KeepPlan),
        because: "he went to his x-ray".to_owned(),
        whom: Some(Whom::Slp),
        by_when: Some(ByWhen::Within24Hours),
        ..plan
    });
    s.gate(&[("distress", "distress")]);
    let text = s.text();
    assert!(
        s.first_line().contains("the doctor now") && !text.contains("x-ray"),
        "{text}"
    );
}

#[test]
fn a_plan_while_incomplete_does_not_stand_for_another_reason() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(92).dry(&[2_000, 9_000, 17_000]);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.plan(Action::KeepPlan, "there was no time for the water");
    s.water(&[]).number(saturation::LOWEST, 89);
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!s.text().contains("no time for the water"), "{}", s.text());
}

/// The plan kept because only thin drinks made her cough, and then the thicker one does.
#[test]
fn a_plan_for_a_cough_with_one_drink_does_not_stand_for_another() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Cough, 1_000)])
        .choose("own-level", "d0");
    s.plan(Action::KeepPlan, "only thin drinks made her cough");
    assert!(s.text().contains("only thin drinks"), "{}", s.text());
    s.given(TaskId::Own, 300_000, &[(Sign::Cough, 1_000)])
        .choose("own-level", "d2");
    assert!(!s.text().contains("only thin drinks"), "{}", s.text());
}

#[test]
fn a_plan_after_a_cough_does_not_stand_when_breathing_fails() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)]);
    s.plan_with(|plan| Plan {
        action: Some(Action::KeepPlan),
        because: "one small cough".to_owned(),
        whom: Some(Whom::Slp),
        by_when: Some(ByWhen::Within24Hours),
        ..plan
    });
    s.breaths(30);
    let text = s.text();
    assert!(
        s.first_line().contains("the doctor now") && !text.contains("one small cough"),
        "{text}"
    );
}

/// Words to the ward that were written under "no sign seen".
#[test]
fn a_remark_made_before_a_choke_does_not_stand_after_it() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.plan_with(|plan| Plan {
        remark: "May have his tea now".to_owned(),
        ..plan
    });
    assert!(s.text().contains("tea now"), "{}", s.text());
    s.mark(150_000, MarkKind::Sign(Sign::Choke));
    assert!(!s.text().contains("tea now"), "{}", s.text());
}

/// Words to the ward under "no sign seen", and then a cough that is told and not counted.
#[test]
fn a_remark_made_before_a_late_cough_does_not_stand_after_it() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.plan_with(|plan| Plan {
        remark: "May have his tea now".to_owned(),
        ..plan
    });
    assert!(s.text().contains("tea now"), "{}", s.text());
    s.mark(180_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Pass);
    let text = s.text();
    assert!(
        text.contains("coughed 72 seconds") && !text.contains("tea now"),
        "{text}"
    );
}

/// "Keep the current plan": of what? "Only awake and upright": what? "Ask the prescriber": what?
#[test]
fn a_plan_that_is_kept_is_one_of_eating_and_drinking() {
    for action in [Action::KeepPlan, Action::AcknowledgedRisk] {
        let mut s = ready(Role::Slp);
        s.water(&[(Sign::Cough, 1_000)]);
        s.plan(action, "the doctor decided so");
        let text = s.text();
        let allowed = "Recommendation: by mouth only what that plan allows, awake and upright";
        let medicines = "Time-critical medicines: ask the prescriber now whether and how to give \
                         them.";
        assert!(text.contains(allowed), "{text}");
        assert!(text.contains(medicines), "{text}");
    }
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    s.plan(Action::KeepPlan, "the doctor decided so");
    let keep = "Keep the current plan for eating and drinking, because the doctor decided so.";
    assert!(s.text().contains(keep), "{}", s.text());
}

/// Shown before the press, and not yet to leave: nothing in it is milder than it may become.
#[test]
fn what_was_not_chosen_is_said_to_be_open() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 1_000)]);
    let text = s.text();
    assert!(
        text.contains("\nUNTIL REVIEWED: not chosen yet.\n"),
        "{text}"
    );
    assert!(
        text.contains("Recommendation: mouth care; upright."),
        "{text}"
    );
    s.plan(Action::KeepPlan, "the doctor decided so");
    assert!(!s.text().contains("not chosen"), "{}", s.text());
}

/// A plan that an earlier version recorded, its basis a digest of sentences: it stands for the decision
/// it was recorded on, and for none where an entry before it is lost: nobody knows what stood then.
#[test]
fn a_plan_of_an_earlier_version_stands_unless_an_entry_is_lost() {
    let of_earlier = |s: &mut Scene| {
        s.say(Event::Plan(Plan {
            verdict: "incomplete 6dc3591cd744cffd".to_owned(),
            action: Some(Action::KeepPlan),
            because: "the team agreed".to_owned(),
            ..Plan::default()
        }));
        asked_for(s)
    };
    let mut s = ready(Role::Screener);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(!of_earlier(&mut s));
    let mut s = ready(Role::Screener);
    s.lost();
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(of_earlier(&mut s));
}
