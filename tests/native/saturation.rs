//! Oxygen saturation: where it is asked for in a trial, what a fall says, and that no later reading
//! takes it back. What must hold is local policy unless a source is named.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::trial::Answer;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::breathing;
use penlight::clinical::tasks::breathing::SATURATION;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::clinical::tasks::by_mouth::saturation::LOWEST;
use penlight::record::event::Event;

/// Without a reading before it there is nothing to compare with, and nobody is sent for an oximeter.
#[test]
fn it_is_asked_for_after_a_trial_only_where_it_was_read_before() {
    let given = [
        TaskId::Water90,
        TaskId::Sips,
        TaskId::TimedWater,
        TaskId::Own,
        TaskId::Cracker,
    ];
    let asked = |s: &Scene| {
        given.map(|task| {
            let spec = tasks::spec(task);
            let there = spec.questions.iter().any(|q| q.id == LOWEST);
            assert!(there, "{task:?} has no such question");
            tasks::spec(task).asks(LOWEST, &s.visit.exam)
        })
    };
    let mut s = ready(Role::Screener);
    assert_eq!(asked(&s), [false; 5]);
    s.breaths(16).number(SATURATION, 97);
    assert_eq!(asked(&s), [true; 5]);
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
    assert!(s.text().contains("from 96 to 85 %"), "{}", s.text());
}

/// NEWS2: 91 % or less is its gravest band; nothing is offered there, and a trial stops there.
#[test]
fn a_low_reading_in_a_trial_is_never_clear_and_every_reading_is_told() {
    for (before, lowest, verdict) in [
        (92, 89, Verdict::Stop),
        (94, 91, Verdict::Stop),
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
        let told = format!("from {before} to {lowest} % during the trial");
        assert!(s.text().contains(&told), "{}", s.text());
    }
}

#[test]
fn a_low_saturation_of_a_child_is_no_matter_for_a_chart() {
    let mut s = Scene::new(Age::Years(5), Role::Screener);
    s.gate(&[]).spo2(80);
    let held = holds(TaskId::Water90, &s.visit.exam);
    let hold = held.iter().find(|h| h.says.contains("80 %")).unwrap();
    assert!(!hold.go_on.open_to(Role::Screener) && hold.go_on.open_to(Role::Slp));
    let mut s = Scene::new(Age::Years(5), Role::Screener);
    s.gate(&[]).spo2(98);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().all(|h| h.go_on.open_to(Role::Screener)),
        "{held:?}"
    );
}

/// At 91 % or less nothing is offered before; so neither after it was read in a sip.
#[test]
fn a_low_saturation_in_the_sips_holds_the_next_sip_and_the_cup() {
    let mut s = stepped(Role::Screener, 92);
    s.sips_given(&mut |n, s| {
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
    s.sips_given(&mut |n, s| {
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
        s.first_line().contains("the doctor now")
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
    s.say(Event::EndedEarly(EndedEarly::Withdrew));
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
    let typed = |s: &mut Scene, tenths| {
        s.say(Event::Answer {
            trial: reading,
            question: breathing::SATURATION.to_owned(),
            answer: Some(Answer::Tenths(tenths)),
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

#[test]
fn a_low_saturation_of_a_child_goes_to_the_doctor_now() {
    let mut s = Scene::new(Age::Years(5), Role::Screener);
    s.gate(&[]).breaths(22).number(breathing::SATURATION, 80);
    assert!(s.first_line().contains("the doctor now"), "{}", s.text());
}

/// What only a speech-language pathologist may go past before water clears no child in it.
#[test]
fn a_low_saturation_of_a_child_in_a_trial_is_never_clear() {
    let mut s = Scene::new(Age::Years(5), Role::Screener);
    s.gate(&[]).breaths(22).number(breathing::SATURATION, 93);
    s.pass(TaskId::Water90, "breathing.child.22", Role::Screener);
    s.pass(TaskId::Water90, "breathing.child", Role::Screener);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
    s.number(saturation::LOWEST, 90);
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

#[test]
fn sips_with_a_fall_of_saturation_are_not_told_as_without_a_sign() {
    let mut s = stepped(Role::Screener, 96);
    s.sips_given(&mut |n, s| {
        if n == 5 {
            s.number(saturation::LOWEST, 85);
        }
    });
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!s.text().contains("seconds, no sign"), "{}", s.text());
}

/// At 89 % no screener goes on, before a trial or after it.
#[test]
fn a_low_saturation_in_a_trial_is_no_screener_s_to_pass() {
    let mut s = stepped(Role::Screener, 92);
    s.given(TaskId::Sips, 100_000, &[])
        .number("sip", 3)
        .number(saturation::LOWEST, 89);
    for task in [TaskId::Sips, TaskId::Water90, TaskId::Own] {
        let held = holds(task, &s.visit.exam);
        let low = held.iter().find(|h| h.says.contains("89 %")).unwrap();
        assert!(!low.go_on.open_to(Role::Screener), "{task:?} {low:?}");
        assert!(!low.says.contains("A sign was seen"), "{low:?}");
    }
}

#[test]
fn a_low_saturation_with_a_drink_holds_the_cracker() {
    let mut s = adult(Role::Screener);
    s.gate(&[])
        .spo2(92)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[])
        .number(saturation::LOWEST, 89);
    assert!(!holds(TaskId::Cracker, &s.visit.exam).is_empty());
}

/// A rate that was typed has one page: a reading after the water is typed over the one before it.
#[test]
fn a_reading_typed_over_the_one_before_takes_back_no_fall() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(96);
    let reading = s.trial;
    s.dry(&[2_000, 9_000, 17_000])
        .water(&[])
        .number(saturation::LOWEST, 91);
    assert_eq!(s.verdict(), Verdict::Stop);
    s.say(Event::Answer {
        trial: reading,
        question: breathing::SATURATION.to_owned(),
        answer: Some(Answer::Tenths(910)),
    });
    assert_eq!(s.verdict(), Verdict::Stop, "{}", s.text());
}

/// SpO2 read, dry swallows counted, SpO2 read anew: nothing was given that it could have fallen in.
#[test]
fn no_fall_is_told_of_a_trial_where_nothing_was_given() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(97).dry(&[2_000, 9_000, 17_000]).spo2(93);
    assert!(!s.text().contains("the trial"), "{}", s.text());
    assert_ne!(s.verdict(), Verdict::Stop);
    // The same with a count of breaths, and with a breath that was held.
    for task in [TaskId::Breathing, TaskId::BreathHold] {
        let mut s = adult(Role::Screener);
        s.on(ScreenId::FullVisit).gate(&[]).spo2(97).open(task);
        s.mark(1_000, MarkKind::Start).mark(20_000, MarkKind::End);
        s.spo2(93);
        assert!(!s.text().contains("the trial"), "{task:?} {}", s.text());
    }
    // A start that was pressed by mistake and taken back gave nothing.
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(97).dry(&[2_000, 9_000, 17_000]);
    let trial = s.open(TaskId::Water90);
    s.mark(100_000, MarkKind::Start).say(Event::Undo { trial });
    s.spo2(93);
    assert!(!s.text().contains("the trial"), "{}", s.text());
    // Nobody says "trial" of a meal.
    let mut s = ready(Role::Screener);
    s.spo2(97).open(TaskId::Meal);
    s.mark(100_000, MarkKind::Start)
        .mark(400_000, MarkKind::End);
    s.spo2(93);
    assert!(
        s.text().contains("fell from 97 to 93 % after the meal"),
        "{}",
        s.text()
    );
    // What fell after something was given stands.
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(97).dry(&[2_000, 9_000, 17_000]).water(&[]);
    s.spo2(91);
    assert_eq!(s.verdict(), Verdict::Stop);
}
