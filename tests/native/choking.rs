//! Choking: who is called, how it went, and that "no sign" is not said beside it.
//! What must hold is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::Domain;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::sign::SignTask;
use penlight::clinical::knowledge::sign::meaning;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::action;
use penlight::handover::action::suggested;
use penlight::record::event::Action;
use penlight::record::event::ByWhen;
use penlight::record::event::Event;
use penlight::record::event::Whom;

/// Whatever choked, or changed the breathing, in whatever task: the doctor, now.
#[test]
fn choking_and_breathing_go_to_the_doctor_now() {
    for task in SignTask::ALL {
        for sign in [Sign::Choke, Sign::BreathingChange] {
            let (_, rule) = meaning(sign, task);
            let mut s = ready(Role::Slp);
            s.water(&[(Sign::Cough, 1_000)]);
            let mut decision = s.visit.decision().unwrap();
            assert_eq!(suggested(&decision), (Whom::Slp, ByWhen::Today));
            decision.reasons.push(rule.flag(
                Level::Stop,
                Domain::EatingDrinking,
                penlight::clinical::findings::fact::VisitFact::AgeNotGiven,
            ));
            assert_eq!(
                suggested(&decision),
                (Whom::Doctor, ByWhen::Now),
                "{task:?} {sign:?}"
            );
            let breathing = sign == Sign::BreathingChange;
            assert_eq!(
                action::deteriorating(&decision),
                breathing,
                "{task:?} {sign:?}"
            );
        }
    }
    // A sign first, and failing breathing found after it: the headline is the sign's, the line on
    // deterioration stays.
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)]).breaths(30);
    assert_eq!(s.verdict(), Verdict::Refer);
    let text = s.text();
    assert!(text.starts_with("REFER to the doctor now."), "{text}");
    assert!(text.contains("local procedure for deterioration"), "{text}");
}

#[test]
fn a_slip_on_choking_takes_back_no_earlier_choking() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::HelpCalled(at(5_000)))
        .say(Event::BackToBaseline(at(90_000)));
    s.say(Event::Choking(at(200_000))).say(Event::NotChoking);
    assert_eq!(s.verdict(), Verdict::Stop);
    let text = s.text();
    assert!(
        text.contains("choking at 14:00: help called after 4 s, back to baseline after 1 min 29 s"),
        "{text}"
    );
    s.say(Event::NotChoking).water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass);
}

/// The first, of which nobody noted help or an end, is not covered by the second that went well.
#[test]
fn each_choking_is_told_with_its_help_and_its_end() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)));
    s.say(Event::Choking(at(200_000)))
        .say(Event::HelpCalled(at(204_000)))
        .say(Event::BackToBaseline(at(260_000)));
    let text = s.text();
    assert!(text.contains("help call not recorded"), "{text}");
}

#[test]
fn an_emergency_after_a_choke_tells_both() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 1_000)])
        .gate(&[("new-weakness", "new")]);
    let text = s.text();
    assert!(
        text.starts_with("EMERGENCY") && text.contains("choked"),
        "{text}"
    );
}

/// Choking by the button of the page while the cup was at the lips: no "no sign" beside it.
#[test]
fn a_choke_by_the_button_is_not_told_beside_no_sign() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .say(Event::Choking(at(105_000)))
        .say(Event::BackToBaseline(at(107_000)));
    s.mark(108_400, MarkKind::End)
        .mark(168_430, MarkKind::WatchOver)
        .choose("cup", "one-go")
        .choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!s.text().contains("no sign for 60 seconds"), "{}", s.text());
}

#[test]
fn a_choke_by_the_button_in_an_own_trial_is_not_told_beside_no_sign() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[])
        .choose("own-level", "d0")
        .say(Event::Choking(at(101_000)));
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!s.text().contains("given once, no sign"), "{}", s.text());
}

/// Help noted only after it was over: no time is told that nobody knows.
#[test]
fn help_noted_after_it_was_over_has_no_time() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::BackToBaseline(at(61_000)))
        .say(Event::HelpCalled(at(601_000)));
    let text = s.text();
    assert!(
        text.contains("help called (noted afterwards), back to baseline after 1 min 0 s"),
        "{text}"
    );
}

/// A choke at the table, help and its end noted there: they come along, in their place in time.
#[test]
fn an_attached_tally_brings_help_and_end_of_its_choking() {
    let tally = |s: &mut Scene, since: i64| {
        let trial = s.visit.next_trial();
        s.say(Event::Attached {
            from: s.visit.id.clone(),
            trial,
            task: TaskId::Meal,
            length: None,
            marks: vec![
                (at(since - 20_000), MarkKind::Start),
                (at(since), MarkKind::Sign(Sign::Choke)),
                (at(since + 90_000), MarkKind::End),
            ],
            hidden: Vec::new(),
            answers: Vec::new(),
            chokings: vec![(at(since), Some(at(since + 4_000)), Some(at(since + 60_000)))],
        });
    };
    let mut s = ready(Role::Screener);
    tally(&mut s, 50_000);
    assert_eq!(s.verdict(), Verdict::Stop);
    let told = "choking at 14:00: help called after 4 s, back to baseline after 1 min 0 s";
    assert!(s.text().contains(told), "{}", s.text());
    // One of the visit that was later stays the last, and a slip takes back that one.
    let mut s = ready(Role::Screener);
    s.say(Event::Choking(at(400_000)));
    tally(&mut s, 50_000);
    let told = "choked 2 times, at 14:00 and 14:06; the last time: help call not recorded, NOT \
                back to baseline yet";
    assert!(s.text().contains(told), "{}", s.text());
    s.say(Event::NotChoking);
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(s.text().contains("help called after 4 s"), "{}", s.text());
}

/// Two chokings of which the first was never marked as over: each has its mark.
#[test]
fn a_choking_that_was_never_over_leaves_the_next_its_own() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::HelpCalled(at(3_000)));
    let first = s.visit.choking().unwrap();
    assert!(!first.may_be_a_slip(at(200_000)) && first.may_hide_another(at(200_000)));
    // One place on the page: never both at once, nor one right after the other.
    s.say(Event::Choking(at(190_000)));
    let fresh = s.visit.choking().unwrap();
    assert!(fresh.may_be_a_slip(at(309_000)) && !fresh.may_hide_another(at(309_000)));
    assert!(!fresh.may_be_a_slip(at(312_000)) && !fresh.may_hide_another(at(312_000)));
    s.say(Event::NotChoking);
    s.say(Event::Choking(at(200_000)))
        .say(Event::BackToBaseline(at(230_000)));
    let told = "choked 2 times, at 14:00 and 14:03; the last time: help call not recorded, back \
                to baseline after 30 s (before that: back to baseline not recorded)";
    assert!(s.text().contains(told), "{}", s.text());
}

/// "NOT back to baseline yet" of yesterday is not of now.
#[test]
fn a_choking_of_long_ago_is_told_with_its_time() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, -2_000)]);
    s.say(Event::Choking(at(106_400)));
    s.plan(Action::NothingByMouth, "");
    assert!(s.text().contains("choking at 14:01: help"), "{}", s.text());
    let text = s.text_at(&clock_after(NEXT_DAY));
    let words = "choking at 14:01 on 25 Nov 2026: help call not recorded";
    assert!(text.contains(words), "{text}");
}

/// Choked, the end not marked, and "keep the plan" pressed: the text said what may be eaten.
#[test]
fn nothing_is_kept_up_while_a_choking_is_not_over() {
    let not_yet = "Choking is not over: nothing by mouth before back to baseline.";
    for action in [Action::KeepPlan, Action::AcknowledgedRisk] {
        let mut s = ready(Role::Slp);
        s.water(&[(Sign::Choke, -2_000)]);
        s.say(Event::Choking(at(106_400)));
        s.plan(action, "comfort comes first");
        let above = s.text().split("\n\n").next().unwrap().to_owned();
        assert!(above.contains(not_yet), "{above}");
        s.say(Event::BackToBaseline(at(130_000)));
        assert!(!s.text().contains(not_yet), "{}", s.text());
    }
}

/// Nobody rings speech-language pathology for somebody who turns blue.
#[test]
fn choking_and_colour_change_go_to_the_local_procedure() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let watch = "Watch for choking, colour change: local emergency procedure; cough, wet voice, \
                 watering eyes, fever: stop, call speech-language pathology now.";
    assert!(s.text().contains(watch), "{}", s.text());
    // Where the text names the doctor, he is called.
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 1_000)])
        .plan(Action::NothingByMouth, "");
    let watch = "watering eyes, fever: call the doctor now.";
    assert!(s.text().contains(watch), "{}", s.text());
}

/// What a choking makes moot is no reproach; one after it is.
#[test]
fn a_trial_rightly_stopped_misses_nothing() {
    let begun = |sign: bool| {
        let mut s = ready(Role::Screener);
        s.open(TaskId::Water90);
        s.choose("voice-before", "clear")
            .mark(100_000, MarkKind::Start)
            .mark(102_000, MarkKind::Tap);
        if sign {
            s.mark(104_000, MarkKind::Sign(Sign::Choke));
        }
        s.say(Event::Choking(at(104_000)));
        s
    };
    for sign in [true, false] {
        let s = begun(sign);
        assert_eq!(s.verdict(), Verdict::Stop);
        assert!(
            s.visit.decision().unwrap().missing.is_empty(),
            "{}",
            s.text()
        );
        assert!(!s.text().contains("not marked"), "{}", s.text());
        assert!(!s.text().contains("not watched"), "{}", s.text());
    }
    for task in [TaskId::Cracker, TaskId::TimedWater] {
        let mut s = ready(Role::Slp);
        s.open(task);
        s.mark(100_000, MarkKind::Start)
            .say(Event::Choking(at(104_000)));
        let missing = s.visit.decision().unwrap().missing;
        assert!(
            missing.iter().all(|f| !f.reason().contains("marked")),
            "{missing:?}"
        );
    }
    // A cup begun after it is asked for all.
    let mut s = begun(true);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(300_000, MarkKind::Start);
    assert!(!s.visit.decision().unwrap().missing.is_empty());
    // Nor does a request to stop, or a choking long after the watch, excuse what is open.
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 300_000)]);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(600_000, MarkKind::Start)
        .mark(604_000, MarkKind::Sign(Sign::AskedToStop));
    assert!(!s.visit.decision().unwrap().missing.is_empty());
}
