//! What comes later in a visit takes nothing back of what was before it, and what was said before
//! speaks for nothing that came after: sequences found by a second reading.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use crate::support::in_the_way::holds;
use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breathing;
use penlight::clinical::tasks::by_mouth::{saturation, watched};
use penlight::handover::action::{self};
use penlight::measure::time::{PageLife, Stamp};
use penlight::record::event::{Action, ByWhen, Event, Plan, Whom};
use script::*;

// --- Chokings ---------------------------------------------------------------------------------

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
fn a_reason_after_one_choking_does_not_speak_for_the_next() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::BackToBaseline(at(60_000)));
    pass(&mut s, TaskId::Water90, "choked", Role::Slp);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.say(Event::Choking(at(200_000)))
        .say(Event::BackToBaseline(at(260_000)));
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(held.iter().any(|h| h.id.starts_with("choked")), "{held:?}");
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

/// What was gone past after a choke is told, at the table too.
#[test]
fn going_on_to_a_meal_after_a_choke_is_told() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::BackToBaseline(at(60_000)));
    pass(&mut s, TaskId::Meal, "choked", Role::Slp);
    s.open(TaskId::Meal);
    s.mark(100_000, MarkKind::Start)
        .mark(200_000, MarkKind::End);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
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

// --- A reason given for one thing speaks for another -------------------------------------------

#[test]
fn a_reason_after_a_cough_does_not_speak_for_failing_breath_in_the_same_cup() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    pass(&mut s, TaskId::Water90, "again.Water90", Role::Slp);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.mark(150_000, MarkKind::Sign(Sign::BreathingChange));
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

#[test]
fn a_reason_after_a_cough_does_not_speak_for_a_fall_of_saturation() {
    let mut s = adult(Role::Slp);
    s.gate(&[])
        .spo2(96)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[(Sign::Cough, 1_000)]);
    pass(&mut s, TaskId::Own, "after.Water90", Role::Slp);
    assert!(holds(TaskId::Own, &s.visit.exam).is_empty());
    s.number(saturation::LOWEST, 80);
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
}

#[test]
fn a_reason_after_a_cough_with_a_drink_does_not_speak_for_worse_before_a_cracker() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    let water = s.trial;
    s.open(TaskId::Cracker);
    s.choose("allergy", "fine")
        .choose("teeth", "fine")
        .choose("diet-order", "fine");
    pass(&mut s, TaskId::Cracker, "cracker.", Role::Slp);
    assert!(holds(TaskId::Cracker, &s.visit.exam).is_empty());
    s.say(Event::Mark {
        trial: water,
        at: at(150_000),
        kind: MarkKind::Sign(Sign::BreathingChange),
    });
    assert!(!holds(TaskId::Cracker, &s.visit.exam).is_empty());
}

#[test]
fn a_reason_for_slurred_speech_does_not_speak_for_a_droop_found_later() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::FullVisit).gate(&[]).breaths(16);
    s.dry(&[2_000, 9_000, 17_000])
        .examined(&[("speech", "slurred")]);
    pass(&mut s, TaskId::Water90, "weakness.", Role::Screener);
    s.examined(&[("speech", "slurred"), ("face.rest", "droop")]);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("weakness.")),
        "{held:?}"
    );
}

// --- A plan made for one thing stands for another ----------------------------------------------

/// "Broken off, tomorrow will do" is no word on failing breathing.
#[test]
fn a_plan_for_a_broken_off_screen_does_not_stand_when_the_gate_closes() {
    let mut s = ready(Role::Screener);
    s.say(Event::EndedEarly(
        penlight::clinical::findings::exam::EndedEarly::BrokenOff,
    ));
    let decision = s.visit.decision().unwrap();
    s.say(Event::Plan(Plan {
        action: Some(Action::KeepPlan),
        because: "he went to his x-ray".to_owned(),
        whom: Some(Whom::Slp),
        by_when: Some(ByWhen::Within24Hours),
        ..action::standing(&decision, &s.visit.plan)
    }));
    s.gate(&[("distress", "distress")]);
    let text = s.text();
    assert!(
        first_line(&s).contains("the doctor now") && !text.contains("x-ray"),
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
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(!s.text().contains("no time for the water"), "{}", s.text());
}

/// The plan kept because only thin drinks made her cough, and then the thicker one does.
#[test]
fn a_plan_for_a_cough_with_one_drink_does_not_stand_for_another() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
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
    let decision = s.visit.decision().unwrap();
    s.say(Event::Plan(Plan {
        action: Some(Action::KeepPlan),
        because: "one small cough".to_owned(),
        whom: Some(Whom::Slp),
        by_when: Some(ByWhen::Within24Hours),
        ..action::standing(&decision, &s.visit.plan)
    }));
    s.breaths(30);
    let text = s.text();
    assert!(
        first_line(&s).contains("the doctor now") && !text.contains("one small cough"),
        "{text}"
    );
}

/// Words to the ward that were written under "no sign seen".
#[test]
fn a_remark_made_before_a_choke_does_not_stand_after_it() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let decision = s.visit.decision().unwrap();
    s.say(Event::Plan(Plan {
        remark: "May have his tea now".to_owned(),
        ..action::standing(&decision, &s.visit.plan)
    }));
    assert!(s.text().contains("tea now"), "{}", s.text());
    s.mark(150_000, MarkKind::Sign(Sign::Choke));
    assert!(!s.text().contains("tea now"), "{}", s.text());
}

#[test]
fn an_emergency_names_no_level_to_drink() {
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", "new")]);
    let decision = s.visit.decision().unwrap();
    s.say(Event::Plan(Plan {
        drink: Some(0),
        food: Some(7),
        ..action::standing(&decision, &s.visit.plan)
    }));
    let text = s.text();
    assert!(text.contains("NOTHING BY MOUTH"), "{text}");
    assert!(!text.contains("rinks level"), "{text}");
}

/// RCSLT: where such a plan is known, nothing by mouth is not written without asking for it.
#[test]
fn an_emergency_does_not_silence_a_risk_plan() {
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", "new"), ("risk-plan", "plan")]);
    let text = s.text();
    assert!(text.contains("ask now whether it stands"), "{text}");
}

// --- Breathing and saturation -------------------------------------------------------------------

/// "Do it again" pressed and left: the 30 that were counted stand.
#[test]
fn a_count_opened_and_left_takes_back_no_failing_breathing() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(30);
    assert!(first_line(&s).contains("the doctor now"), "{}", s.text());
    s.open(TaskId::Breathing);
    assert!(first_line(&s).contains("the doctor now"), "{}", s.text());
}

/// A loose count of an hour ago, attached now, is no newer reading.
#[test]
fn an_attached_older_count_takes_back_no_failing_breathing() {
    let mut s = adult(Role::Screener);
    s.gate(&[]);
    s.open(TaskId::Breathing);
    s.mark(3_600_000, MarkKind::Start);
    for n in 0..30 {
        s.mark(3_600_500 + n * 1_990, MarkKind::Tap);
    }
    s.mark(3_660_020, MarkKind::WindowOver);
    assert!(first_line(&s).contains("the doctor now"), "{}", s.text());
    let mut marks = vec![(at(0), MarkKind::Start)];
    marks.extend((0..16).map(|n| (at(500 + n * 3_700), MarkKind::Tap)));
    marks.push((at(60_020), MarkKind::WindowOver));
    let trial = s.visit.next_trial();
    s.say(Event::Attached {
        from: s.visit.id.clone(),
        trial,
        task: TaskId::Breathing,
        length: None,
        marks,
        hidden: Vec::new(),
        answers: Vec::new(),
        chokings: Vec::new(),
    });
    assert!(
        first_line(&s).contains("the doctor now")
            && !holds(TaskId::Water90, &s.visit.exam).is_empty(),
        "{}",
        s.text()
    );
}

/// At 91 % or less nothing is offered before; so neither after it was read in a sip.
#[test]
fn a_low_saturation_in_the_sips_holds_the_next_sip_and_the_cup() {
    let mut s = stepped(Role::Screener, 92);
    sips_given(&mut s, &mut |n, s| {
        if n == 0 {
            s.number(saturation::LOWEST, 89);
            let held = holds(TaskId::Sips, &s.visit.exam);
            assert!(!held.is_empty(), "the next sip is offered");
        }
    });
}

#[test]
fn a_low_saturation_in_the_sips_holds_the_cup() {
    let mut s = stepped(Role::Screener, 92);
    sips_given(&mut s, &mut |n, s| {
        if n == 5 {
            s.number(saturation::LOWEST, 89);
        }
    });
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(!held.is_empty(), "{}", s.text());
}

/// The same reading before water goes to the doctor, now.
#[test]
fn a_low_saturation_in_a_trial_goes_to_the_doctor_now() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .spo2(92)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[])
        .number(saturation::LOWEST, 89);
    let text = s.text();
    assert!(
        first_line(&s).contains("the doctor now")
            && text.contains("local procedure for deterioration"),
        "{text}"
    );
}

#[test]
fn a_low_saturation_in_a_trial_is_told_though_the_person_then_stopped() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .spo2(92)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[])
        .number(saturation::LOWEST, 89);
    s.say(Event::EndedEarly(
        penlight::clinical::findings::exam::EndedEarly::Withdrew,
    ));
    assert!(s.text().contains("to 89 %"), "{}", s.text());
}

/// Read on the page of the breaths, after the water, instead of in the cup's own field.
#[test]
fn a_fall_read_beside_the_trial_is_not_taken_back_by_a_better_one() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .spo2(96)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[])
        .spo2(85);
    assert_ne!(s.verdict(), Verdict::Pass);
    s.spo2(96);
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// 85 typed over the 96 before the cup, and 96 typed over it before the next trial.
#[test]
fn a_fall_typed_over_between_two_trials_is_not_taken_back() {
    let mut s = adult(Role::Slp);
    s.gate(&[]).spo2(96);
    let reading = s.trial;
    let typed = |s: &mut Script, tenths| {
        s.say(Event::Answer {
            trial: reading,
            question: breathing::SATURATION.to_owned(),
            answer: Some(penlight::clinical::findings::trial::Answer::Tenths(tenths)),
        });
    };
    s.dry(&[2_000, 9_000, 17_000]).water(&[]);
    typed(&mut s, 850);
    s.given(TaskId::Own, 300_000, &[]).choose("own-level", "d0");
    typed(&mut s, 960);
    assert_eq!(s.verdict(), Verdict::Stop, "{}", s.text());
    // One that was a slip is put right, as in every field.
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(96).dry(&[2_000, 9_000, 17_000]).water(&[]);
    s.spo2(85).number(breathing::SATURATION, 95);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// Only the saturation was read anew: the breaths that were counted stand.
#[test]
fn a_saturation_read_anew_takes_back_no_failing_breathing() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(30);
    s.open(TaskId::Breathing);
    s.number(breathing::SATURATION, 97);
    assert!(first_line(&s).contains("the doctor now"), "{}", s.text());
    // A count that was begun and left clears nobody either.
    s.open(TaskId::Breathing);
    s.mark(0, MarkKind::Start).mark(3_000, MarkKind::Tap);
    assert!(first_line(&s).contains("the doctor now"), "{}", s.text());
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).open(TaskId::Breathing);
    s.mark(0, MarkKind::Start);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

#[test]
fn a_low_saturation_of_a_child_goes_to_the_doctor_now() {
    let mut s = Script::new(Age::Years(5), Role::Screener);
    s.gate(&[]).breaths(22).number(breathing::SATURATION, 80);
    assert!(first_line(&s).contains("the doctor now"), "{}", s.text());
}

/// What only a speech-language pathologist may go past before water clears no child in it.
#[test]
fn a_low_saturation_of_a_child_in_a_trial_is_never_clear() {
    let mut s = Script::new(Age::Years(5), Role::Screener);
    s.gate(&[]).breaths(22).number(breathing::SATURATION, 93);
    pass(
        &mut s,
        TaskId::Water90,
        "breathing.child.22",
        Role::Screener,
    );
    pass(&mut s, TaskId::Water90, "breathing.child", Role::Screener);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
    s.number(saturation::LOWEST, 90);
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// Too much oxygen in confirmed failure closes the gate: the ward must read why.
#[test]
fn the_second_scale_that_closes_the_gate_is_named() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16);
    s.number(breathing::SATURATION, 98)
        .number(breathing::TARGET, 88)
        .choose(breathing::OXYGEN, "oxygen")
        .choose(breathing::CONFIRMED, "yes");
    let head = first_line(&s);
    assert!(head.contains("98 %"), "{}", s.text());
    assert!(head.contains("the doctor now"), "{}", s.text());
}

/// 40 a minute by even taps: not counted for 60 seconds, and fast all the same.
#[test]
fn fast_breathing_by_taps_goes_to_the_doctor_now() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).open(TaskId::BreathTaps);
    s.mark(0, MarkKind::Start).mark(0, MarkKind::Tap);
    for n in 1..20 {
        s.mark(n * 1_500, MarkKind::Tap);
    }
    s.mark(30_000, MarkKind::End);
    assert!(s.text().contains("40"), "{}", s.text());
    assert!(first_line(&s).contains("the doctor now"), "{}", s.text());
}

// --- Dry swallows -------------------------------------------------------------------------------

/// None counted and not valid; then "do it again" is pressed and left.
#[test]
fn none_counted_stays_no_screener_s_to_pass_after_a_count_that_was_opened() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    s.open(TaskId::DrySwallow);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
}

/// None counted and not valid; the second count is not begun: "did not want to".
#[test]
fn none_counted_stays_told_and_held_after_a_second_count_that_was_refused() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    s.open(TaskId::DrySwallow);
    s.choose("not-valid", "refused");
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| !h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
}

#[test]
fn none_counted_stays_told_after_a_second_count_that_was_refused() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .breaths(16)
        .dry(&[])
        .choose("not-valid", "not-felt");
    s.open(TaskId::DrySwallow);
    s.choose("not-valid", "refused");
    assert!(s.text().contains("0 counted"), "{}", s.text());
}

/// The line is for adults; that no swallow was felt was seen all the same.
#[test]
fn an_age_put_right_takes_back_no_missing_swallow() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]);
    assert_eq!(s.verdict(), Verdict::Stop);
    let mut details = s.visit.details.clone().unwrap();
    details.age = Some(Age::Years(12));
    s.say(Event::Details(details));
    assert!(s.text().contains("no dry swallow"), "{}", s.text());
}

#[test]
fn an_age_put_right_after_no_dry_swallow_still_holds_the_water() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[]);
    let mut details = s.visit.details.clone().unwrap();
    details.age = Some(Age::Years(12));
    s.say(Event::Details(details));
    pass(&mut s, TaskId::Water90, "breathing.child", Role::Screener);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(!held.is_empty(), "{}", s.text());
}

// --- "No sign" where it was not watched, not ended, or not so -----------------------------------

/// Somebody says that nobody watched: then there is no "no sign for 60 seconds".
#[test]
fn a_watch_that_nobody_kept_is_not_told_as_without_a_sign() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    s.mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End);
    let trial = s.trial;
    s.say(Event::Mark {
        trial,
        at: Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        kind: MarkKind::WatchOver,
    });
    s.choose("cup", "one-go").choose("voice-after", "clear");
    s.choose(watched::WATCHED, "no");
    assert!(!s.text().contains("no sign for 60 seconds"), "{}", s.text());
}

#[test]
fn a_wet_voice_after_the_cup_is_not_told_as_without_a_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[]).choose("voice-after", "wet");
    assert_eq!(s.verdict(), Verdict::Refer);
    assert!(!s.text().contains("no sign for 60 seconds"), "{}", s.text());
}

#[test]
fn a_cracker_that_nobody_watched_is_incomplete() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.open(TaskId::Cracker);
    s.choose("allergy", "fine")
        .choose("teeth", "fine")
        .choose("diet-order", "fine");
    s.mark(300_000, MarkKind::Start)
        .mark(300_000, MarkKind::Tap)
        .mark(330_000, MarkKind::End);
    let trial = s.trial;
    s.say(Event::Mark {
        trial,
        at: Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        kind: MarkKind::WatchOver,
    });
    s.choose(watched::WATCHED, "no");
    assert_eq!(s.verdict(), Verdict::Incomplete, "{}", s.text());
}

#[test]
fn an_own_trial_that_nobody_watched_is_not_told_as_without_a_sign() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(100_000, MarkKind::Start);
    s.mark(102_000, MarkKind::End);
    let trial = s.trial;
    s.say(Event::Mark {
        trial,
        at: Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        kind: MarkKind::WatchOver,
    });
    s.choose(watched::WATCHED, "no");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(!s.text().contains("given once, no sign"), "{}", s.text());
}

#[test]
fn an_own_trial_whose_end_was_not_marked_is_not_told_as_without_a_sign() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(100_000, MarkKind::Start);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(!s.text().contains("given once, no sign"), "{}", s.text());
}

/// One of the three was not watched: "each watched" is not so.
#[test]
fn a_sip_whose_watch_was_cut_is_not_told_as_watched() {
    let mut s = stepped(Role::Screener, 97);
    s.open(TaskId::Sips);
    s.choose("voice-before", "clear")
        .mark(20_000, MarkKind::Start)
        .mark(22_000, MarkKind::End)
        .number("sip", 3)
        .choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2")
        .choose("voice-after", "clear")
        .choose("watch-cut", "called-away");
    sips_given(&mut s, &mut |_, _| {});
    assert!(!s.text().contains("each watched"), "{}", s.text());
}

#[test]
fn sips_with_a_fall_of_saturation_are_not_told_as_without_a_sign() {
    let mut s = stepped(Role::Screener, 96);
    sips_given(&mut s, &mut |n, s| {
        if n == 5 {
            s.number(saturation::LOWEST, 85);
        }
    });
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!s.text().contains("seconds, no sign"), "{}", s.text());
}

/// TOH03: 3 mL without two more dry swallows is not the best of the published grades.
#[test]
fn sips_without_two_more_swallows_are_not_no_sign_seen() {
    let mut s = stepped(Role::Screener, 97);
    sips_given(&mut s, &mut |n, s| {
        if n == 0 {
            s.choose("extra-swallows", "0");
        }
    });
    pass(&mut s, TaskId::Water90, "first.", Role::Screener);
    s.water(&[]);
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}
