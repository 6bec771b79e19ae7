//! Sequences in which a text could have said too little: each was found by trying to get a clear
//! result past something that had been seen. What must hold is local policy unless a source is named.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use crate::support::in_the_way::holds;
use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::{Sign, SignTask, meaning};
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::{lag, saturation, watched};
use penlight::clinical::tasks::{timed_water, water};
use penlight::handover::action::{self, suggested};
use penlight::handover::nursing::{MOST, write};
use penlight::measure::time::{PageLife, Stamp};
use penlight::record::event::{Action, ByWhen, Event, Plan, Route, Text, Versions, Whom};
use penlight::record::head::Head;
use penlight::wording::verdict::in_list;
use script::*;

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
                penlight::clinical::findings::flag::Level::Stop,
                penlight::clinical::findings::flag::Domain::EatingDrinking,
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
fn counting_breaths_again_takes_back_no_saturation() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(85).breaths(17);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
    assert!(s.text().contains("oxygen saturation 85 %"), "{}", s.text());
    // A better reading does, and both are told.
    s.spo2(96).dry(&[2_000, 9_000, 17_000]).water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass);
    let told = "oxygen saturation 85 %, then oxygen saturation 96 %";
    assert!(s.text().contains(told), "{}", s.text());
}

#[test]
fn a_fall_in_a_trial_stands_whatever_is_read_afterwards() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(96).dry(&[2_000, 9_000, 17_000]).water(&[]);
    s.number(saturation::LOWEST, 85);
    assert_eq!(s.verdict(), Verdict::Stop);
    s.breaths(17);
    assert_eq!(s.verdict(), Verdict::Stop);
    s.spo2(86);
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(s.text().contains("fell from 96 to 85 %"), "{}", s.text());
}

/// NEWS2: 91 % or less is its gravest band; nothing is offered there, so nothing is clear there.
#[test]
fn a_low_reading_in_a_trial_is_never_clear_and_every_reading_is_told() {
    for (before, lowest, verdict) in [
        (92, 89, Verdict::Incomplete),
        (94, 91, Verdict::Incomplete),
        (95, 92, Verdict::Pass),
        (97, 97, Verdict::Pass),
    ] {
        let mut s = adult(Role::Screener);
        s.gate(&[])
            .spo2(before)
            .dry(&[2_000, 9_000, 17_000])
            .water(&[]);
        s.number(saturation::LOWEST, lowest);
        assert_eq!(s.verdict(), verdict, "{before} {lowest}");
        let told = format!("oxygen saturation from {before} to {lowest} % during the trial");
        assert!(s.text().contains(&told), "{}", s.text());
    }
}

#[test]
fn a_low_saturation_of_a_child_is_no_matter_for_a_chart() {
    let mut s = Script::new(Age::Years(5), Role::Screener);
    s.gate(&[]).spo2(80);
    let held = holds(TaskId::Water90, &s.visit.exam);
    let hold = held.iter().find(|h| h.says.contains("80 %")).unwrap();
    assert!(!hold.go_on.open_to(Role::Screener) && hold.go_on.open_to(Role::Slp));
    let mut s = Script::new(Age::Years(5), Role::Screener);
    s.gate(&[]).spo2(98);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
}

/// What was gone past, and what was drunk, outlasts what holds and what is as expected.
#[test]
fn a_full_text_keeps_what_was_gone_past() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::FullVisit).gate(&[
        ("airway-tube", "tracheostomy"),
        ("suction", "none"),
        ("chest", "chest"),
        ("fluids", "restricted"),
        ("allergy", "allergy"),
    ]);
    let item = penlight::clinical::findings::gate::find("airway-tube").unwrap();
    let exception = item
        .exceptions
        .iter()
        .find(|e| e.id == "tracheostomy")
        .unwrap();
    s.say(Event::WentOn {
        hold: penlight::clinical::findings::gate::hold_id(item, exception),
        because: "cuff down and speaking valve on".to_owned(),
        by: Role::Slp,
        says: String::new(),
        ground: None,
    });
    s.examined(MUCH_IN_THE_MOUTH);
    s.breaths(16).dry(&[2_000, 9_000, 17_000]).water(&[]);
    let text = s.text();
    assert!(text.chars().count() < MOST, "{text}");
    assert!(
        text.contains("racheostomy") && text.contains("speaking valve on"),
        "{text}"
    );
    assert!(text.contains("90 mL of water drunk in one go"), "{text}");
}

#[test]
fn what_was_seen_at_a_meal_holds_the_next_trial() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Meal);
    s.mark(0, MarkKind::Start)
        .mark(20_000, MarkKind::Sign(Sign::BreathingChange))
        .mark(60_000, MarkKind::End);
    assert_eq!(s.verdict(), Verdict::Stop);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("after.Meal")),
        "{held:?}"
    );
    assert!(!held[0].go_on.open_to(Role::Screener));
    // A meal that showed nothing holds nothing, and its end needs no watch.
    let mut s = ready(Role::Screener);
    s.open(TaskId::Meal);
    s.mark(0, MarkKind::Start).mark(60_000, MarkKind::End);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
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
        text.contains("choking: help called after 4 s, back to baseline after 1 min 29 s"),
        "{text}"
    );
    s.say(Event::NotChoking).water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass);
}

/// What the examination saw outranks what the gate was told before it.
#[test]
fn what_the_mouth_shows_speaks_against_the_gate() {
    for (item, found, gate, slp_only) in [
        ("mouth.moist", "drools", "manages saliva", true),
        ("throat.wall", "pooled", "manages saliva", true),
        ("voice.ah", "wet", "manages saliva", true),
        ("cough", "none", "can cough", true),
        ("mouth.sulci", "food", "", false),
    ] {
        let mut s = adult(Role::Screener);
        s.on(ScreenId::FullVisit).gate(&[]);
        s.breaths(16).dry(&[2_000, 9_000, 17_000]);
        s.examined(&[]);
        assert!(gate.is_empty() || s.text().contains(gate), "{}", s.text());
        s.examined(&[(item, found)]);
        let held = holds(TaskId::Water90, &s.visit.exam);
        let hold = held
            .iter()
            .find(|h| h.id == format!("oral.{item}.{found}"))
            .unwrap();
        assert_eq!(!hold.go_on.open_to(Role::Screener), slp_only, "{item}");
        s.water(&[]);
        assert_eq!(s.verdict(), Verdict::Incomplete, "{item}");
        let text = s.text();
        assert!(gate.is_empty() || !text.contains(gate), "{text}");
        // Gone past by somebody who may, it is told and keeps nothing open.
        s.say(Event::Role(Role::Slp)).say(Event::WentOn {
            hold: hold.id.clone(),
            because: "needed for the assessment".to_owned(),
            by: Role::Slp,
            says: hold.says.clone(),
            ground: None,
        });
        assert!(s.text().contains("gone on despite this"), "{}", s.text());
    }
}

#[test]
fn an_age_put_right_takes_back_no_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, -2_000)]);
    assert_eq!(s.verdict(), Verdict::Stop);
    let mut details = s.visit.details.clone().unwrap();
    details.age = Some(Age::Months(18));
    s.say(Event::Details(details));
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(s.text().starts_with("STOP"), "{}", s.text());
}

#[test]
fn a_plan_for_one_reason_does_not_stand_for_another() {
    let mut s = ready(Role::Screener);
    s.water(&[]).choose(water::CUP, water::SOME_LEFT);
    assert_eq!(s.verdict(), Verdict::Refer);
    let decision = s.visit.decision().unwrap();
    s.say(Event::Plan(Plan {
        action: Some(Action::KeepPlan),
        because: "she was only not thirsty".to_owned(),
        drink: Some(0),
        ..action::standing(&decision, &s.visit.plan)
    }));
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

/// A repeat that was opened and left is no repeat.
#[test]
fn an_unbegun_trial_clears_nothing() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Cracker);
    s.mark(0, MarkKind::Start).mark(20_000, MarkKind::End);
    s.choose("watch-cut", "called-away");
    let before = s.verdict();
    assert_eq!(before, Verdict::Incomplete);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.open(TaskId::Cracker);
    assert_eq!(s.verdict(), Verdict::Incomplete);
}

/// No swallow counted, and then "could not feel it": whether there was one, nobody knows.
#[test]
fn none_counted_and_then_not_valid_is_no_screener_s_to_pass() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
    assert!(s.text().contains("(0 counted)"), "{}", s.text());
}

#[test]
fn what_was_gone_past_is_told_in_its_words() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000]);
    let hold = holds(TaskId::Water90, &s.visit.exam).remove(0);
    s.say(Event::WentOn {
        hold: hold.id,
        because: "the team agreed".to_owned(),
        by: Role::Screener,
        says: hold.says,
        ground: None,
    });
    s.water(&[]);
    let told = "water was given despite this: 2 dry swallows in 30 seconds (3 or more expected); decided by";
    assert!(s.text().contains(told), "{}", s.text());
}

/// A watch of which nobody saw the end: the app was off for hours.
#[test]
fn a_watch_that_ran_out_unseen_is_asked_for() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    s.mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End);
    let trial = s.trial;
    let late = Stamp {
        life: PageLife(8),
        ..at(10_908_400)
    };
    s.say(Event::Mark {
        trial,
        at: late,
        kind: MarkKind::WatchOver,
    });
    s.choose("cup", "one-go").choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(
        s.text().contains("not said whether it was watched"),
        "{}",
        s.text()
    );
    s.choose(watched::WATCHED, "no");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    s.choose(watched::WATCHED, "yes");
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(
        s.text().contains("restarted during this time"),
        "{}",
        s.text()
    );
}

/// A wet voice taken over from the trial before holds as one that was answered.
#[test]
fn a_wet_voice_that_is_taken_over_holds_too() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::Stepped)
        .gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    s.given(TaskId::Sips, 100_000, &[]).number("sip", 10);
    s.choose("voice-after", "wet");
    let held = holds(TaskId::Water90, &s.visit.exam);
    let wet = held
        .iter()
        .find(|h| h.id.starts_with("water.wet-before"))
        .unwrap();
    assert!(!wet.go_on.open_to(Role::Screener));
}

#[test]
fn each_cup_is_told() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 5_000)]).water(&[]);
    assert_eq!(s.verdict(), Verdict::Refer);
    let text = s.text();
    assert!(
        text.contains("cup 1: 90 mL") && text.contains("cup 2: 90 mL"),
        "{text}"
    );
    assert_eq!(text.matches("no sign for 60 seconds").count(), 1, "{text}");
}

/// The list at home never keeps saying "no sign seen" of a visit that has one now, and what was
/// closed is closed for what it was closed for.
#[test]
fn a_sign_after_the_decision_shows_in_the_list() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.say(Event::Decided {
        verdict: "pass".to_owned(),
        reasons: Vec::new(),
        versions: Versions {
            app: "0".to_owned(),
            rules: "1".to_owned(),
        },
        policy: "Penlight default 1".to_owned(),
    });
    assert_eq!(in_list(&Head::of(&s.visit)), "No sign seen");
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let head = Head::of(&s.visit);
    assert_eq!(
        (in_list(&head).as_str(), head.unclosed),
        ("Now: Refer", true)
    );
    s.say(Event::Closed("seen".to_owned()));
    assert!(!Head::of(&s.visit).unclosed);
    s.mark(130_000, MarkKind::Sign(Sign::Choke));
    assert!(Head::of(&s.visit).unclosed);
}

#[test]
fn an_emergency_that_was_answered_otherwise_is_told() {
    let item = penlight::clinical::findings::gate::find("new-weakness").unwrap();
    let emergency = item
        .exceptions
        .iter()
        .find(|e| e.state == penlight::clinical::findings::gate::State::Emergency)
        .unwrap();
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", emergency.id)]);
    assert!(s.text().starts_with("EMERGENCY"), "{}", s.text());
    s.gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass);
    let told = "new weakness, droop or speech was first answered as an emergency, then changed";
    assert!(s.text().contains(told), "{}", s.text());
}

/// Weakness that the gate did not know of: somebody says what it is before anything is given.
#[test]
fn weakness_found_after_the_gate_is_asked_about_before_the_water() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::FullVisit).gate(&[]).breaths(16);
    s.dry(&[2_000, 9_000, 17_000])
        .examined(&[("speech", "slurred")]);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("weakness.")),
        "{held:?}"
    );
    s.gate(&[("new-weakness", "known")]);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.id.starts_with("weakness.")),
        "{held:?}"
    );
}

#[test]
fn a_risk_plan_nobody_knew_of_needs_its_reason() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)])
        .plan(Action::AcknowledgedRisk, "");
    let missing =
        |s: &Script| action::missing(&s.visit.decision().unwrap(), &s.visit.plan, &s.visit.exam);
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

/// Who was told of an earlier text was not told of the corrected one.
#[test]
fn told_goes_with_the_text_it_was_told_of() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let issue = |s: &mut Script, time: &str| {
        let text = write(&s.visit, &clock(time)).unwrap();
        s.say(Event::Issued {
            route: Route::Copied,
            text,
            clock: time.to_owned(),
            which: Text::Nursing,
        });
    };
    let tell = |s: &mut Script| {
        s.say(Event::Told {
            whom: "nurse".to_owned(),
            read_back: true,
        });
    };
    issue(&mut s, "14:31");
    tell(&mut s);
    issue(&mut s, "14:33");
    assert_eq!(s.visit.told[0].of, s.visit.last_text().unwrap().clock);
    s.mark(120_000, MarkKind::Sign(Sign::BreathingChange));
    issue(&mut s, "14:40");
    assert_ne!(s.visit.told[0].of, s.visit.last_text().unwrap().clock);
    tell(&mut s);
    assert_eq!(s.visit.told[1].of, "14:40");
}

/// Own trials follow one another: a sign long after the minute of one may be the next one's, given
/// with both hands busy. Until somebody says, nothing is clear.
#[test]
fn a_sign_between_two_own_trials_is_asked_for() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(
        s.text().starts_with("NO SIGN SEEN in what was given"),
        "{}",
        s.text()
    );
    let late = at(100_000 + 2_000 + 127_000);
    s.mark(229_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(
        s.text()
            .contains("not said whether the next was in the mouth"),
        "{}",
        s.text()
    );
    // It was: the next trial is given, with that sign.
    let mut with = adult(Role::Slp);
    with.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    with.given(TaskId::Own, 100_000, &[])
        .choose("own-level", "d0");
    let before = with.trial;
    with.mark(229_000, MarkKind::Sign(Sign::Cough));
    let to = with.open(TaskId::Own);
    with.mark(229_000, MarkKind::Start);
    with.say(Event::SignMoved {
        from: before,
        to,
        sign: Sign::Cough,
        at: late,
    });
    assert_eq!(with.verdict(), Verdict::Refer);
    // It was not: told, and not counted.
    s.choose(&lag::late_id(late), lag::NOTHING);
    assert_eq!(s.verdict(), Verdict::Pass);
}

#[test]
fn a_watch_that_was_cut_is_no_clear_trial() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(100_000, MarkKind::Start);
    s.mark(102_000, MarkKind::End)
        .choose("watch-cut", "called-away");
    let text = s.text();
    assert!(
        text.contains("not watched for 60 seconds") && !text.contains("no sign"),
        "{text}"
    );
}

/// Throat clearing decides nothing, and was a sign all the same.
#[test]
fn sips_with_a_throat_clear_are_not_told_as_without_a_sign() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::Stepped)
        .gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    for (n, ml) in [3, 3, 5, 5, 10, 10].into_iter().enumerate() {
        let from = 100_000 + i64::try_from(n).unwrap() * 70_000;
        let signs: &[(Sign, i64)] = match n {
            2 => &[(Sign::ThroatClear, 5_000)],
            _ => &[],
        };
        s.given(TaskId::Sips, from, signs).number("sip", ml);
        if ml == 3 {
            s.choose("sip-way", "under-tongue")
                .choose("extra-swallows", "2");
        }
    }
    let text = s.text();
    assert!(text.contains("cleared the throat"), "{text}");
    assert!(
        text.contains("each watched for 60 seconds") && !text.contains("seconds, no sign"),
        "{text}"
    );
}

/// No line for children: somebody says why, and no adult line is drawn.
#[test]
fn children_are_not_read_with_the_lines_of_adults() {
    for task in [TaskId::Sips, TaskId::TimedWater, TaskId::Cracker] {
        let mut s = Script::new(Age::Years(5), Role::Screener);
        s.gate(&[]).breaths(22);
        let held = holds(task, &s.visit.exam);
        assert!(
            held.iter().any(|h| h.id == format!("child.{task:?}")),
            "{held:?}"
        );
        let mut s = adult(Role::Screener);
        s.gate(&[]).breaths(16);
        let held = holds(task, &s.visit.exam);
        assert!(held.iter().all(|h| !h.id.starts_with("child.")), "{held:?}");
    }
    // 100 mL in 20 seconds: slow in an adult.
    let slow = |age| {
        let mut s = Script::new(age, Role::Screener);
        s.gate(&[]).breaths(16).open(TaskId::TimedWater);
        s.choose(timed_water::OFFERED, "100")
            .choose("voice-before", "clear");
        s.mark(100_000, MarkKind::Start)
            .mark(105_000, MarkKind::Tap);
        s.mark(120_000, MarkKind::End)
            .mark(180_030, MarkKind::WatchOver);
        s.choose(timed_water::CUP, timed_water::EMPTY)
            .choose("voice-after", "clear");
        let flags = penlight::clinical::tasks::flags(TaskId::TimedWater, &s.visit.exam);
        let has = |id: &str| flags.iter().any(|f| f.rule().id == id);
        (
            has("timed-water.slow"),
            has("person.child-trial"),
            s.text().contains("slowly"),
        )
    };
    assert_eq!(slow(Age::Years(72)), (true, false, true));
    assert_eq!(slow(Age::Years(5)), (false, true, false));
}

/// Whatever else closed the gate, failing breathing is what the ward reads first.
#[test]
fn failing_breathing_gives_the_headline_of_a_closed_gate() {
    let mut s = adult(Role::Screener);
    s.gate(&[("consent", "no"), ("distress", "distress")]);
    let text = s.text();
    let first = text.lines().next().unwrap();
    assert!(
        first.contains("visible effort") && first.contains("the doctor now"),
        "{text}"
    );
}
