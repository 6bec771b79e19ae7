//! The text for nursing: the decision and what to do first, then identify, situation,
//! background, assessment, recommendation (ISBAR order, Australian national handover guidance as
//! taught; WHO-endorsed per Burgess and others 2020), on one phone screen.

use crate::support::*;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::ITEMS;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Label, Role, Setting, Sex};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::handover::action;
use penlight::handover::nursing::{MOST, write};
use penlight::handover::outdated::outdated;
use penlight::record::event::{Action, Details, Event, Plan, Route, Text};

fn adult() -> Scene {
    Scene::new(Age::Years(72), Role::Screener)
}

#[test]
fn all_clear() {
    let mut s = adult();
    s.gate(&[])
        .breaths(16)
        .dry(&[2_100, 9_800, 17_500, 26_000])
        .water(&[]);
    assert_eq!(
        s.text(),
        "NO SIGN SEEN on this screen. This screen changes no eating or drinking order.\n\
         \n\
         Identify: Visit 3, 14:10, 72 years, ward. Patient: ____ (check the name band).\n\
         Screened at 14:01 by ____ (clinician trained to screen). Issued at 14:31, 25 Nov 2026.\n\
         Situation: swallow screen done.\n\
         Background: awake, sits upright, manages saliva, can cough; breathing 16 a minute (counted \
         elsewhere).\n\
         Assessment: 4 dry swallows in 30 seconds (3 or more expected); 90 mL of water drunk in one go \
         in 8 seconds, no sign for 60 seconds after it, voice clear before and after.\n\
         Recommendation: keep to the orders in force; an order of nothing by mouth until this screen: \
         only whoever gave it lifts it; food and drink only awake and upright; mouth care. Watch for \
         choking, colour change: local emergency procedure; cough, wet voice, watering eyes, fever: \
         stop, call speech-language pathology now. Screen again after any new weakness, \
         drowsiness, chest or swallowing change.\n\
         A screen, not a diagnosis; silent aspiration is not seen."
    );
}

#[test]
fn a_cough_refers_and_says_what_to_do_first() {
    let mut s = adult();
    s.gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[(Sign::Cough, 20_300)]);
    s.plan(Action::NothingByMouth, "");
    let text = s.text();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(
        lines[..3],
        [
            "REFER to speech-language pathology today.",
            "NOTHING BY MOUTH, tablets included, until assessed.",
            "Time-critical medicines: ask the prescriber now for another route.",
        ]
    );
    assert!(text.contains("Situation: coughed 20 seconds after the last swallow of the 90 mL."));
    assert!(!text.contains("food and drink"), "{text}");
    assert!(
        !text.contains("stop, call"),
        "there is nothing to stop: {text}"
    );
}

#[test]
fn an_emergency_outranks_every_sign_and_waits_for_no_press() {
    let mut s = adult();
    s.gate(&[("new-weakness", "new")])
        .breaths(16)
        .dry(&[4_000, 19_000]);
    s.say(Event::LastWell("today 11:30".to_owned()));
    let text = s.text();
    assert!(text.starts_with("EMERGENCY: swallow screen NOT DONE. Use your local emergency procedure.\nLast well: today 11:30.\nNOTHING BY MOUTH"), "{text}");
    assert!(
        text.contains("new or worse weakness, droop or speech"),
        "{text}"
    );
    assert!(text.contains("2 dry swallows"), "{text}");
    assert_eq!(
        action::missing(&s.visit.decision().unwrap(), &s.visit.plan, &s.visit.exam),
        None
    );
}

#[test]
fn what_was_pressed_for_one_verdict_does_not_stand_for_a_graver_one() {
    let mut s = adult();
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000, 17_000]);
    s.plan(Action::KeepPlan, "the plan in force already covers this");
    assert_eq!(
        action::missing(&s.visit.decision().unwrap(), &s.visit.plan, &s.visit.exam),
        None
    );
    s.water(&[(Sign::Choke, -2_000)]);
    assert!(action::missing(&s.visit.decision().unwrap(), &s.visit.plan, &s.visit.exam).is_some());
    let text = s.text();
    assert!(
        text.starts_with("STOP: no more trials by mouth. Call the doctor now."),
        "{text}"
    );
    assert!(!text.contains("Keep the current plan"), "{text}");
}

#[test]
fn choking_says_how_it_went() {
    let mut s = adult();
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000, 17_000]);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start);
    s.mark(104_000, MarkKind::Sign(Sign::Choke));
    s.say(Event::Choking(at(104_000)))
        .say(Event::HelpCalled(at(117_000)));
    assert!(
        s.text()
            .contains("choking at 14:01: help called after 13 s, NOT back to baseline yet"),
        "{}",
        s.text()
    );
    s.say(Event::BackToBaseline(at(187_000)));
    assert!(
        s.text().contains("back to baseline after 1 min 23 s"),
        "{}",
        s.text()
    );
}

#[test]
fn failing_breathing_goes_to_the_doctor_and_the_local_procedure() {
    for make in [
        (|s: &mut Scene| {
            s.gate(&[]).breaths(28);
        }) as fn(&mut Scene),
        |s| {
            s.gate(&[("distress", "distress")]).breaths(18);
        },
    ] {
        let mut s = adult();
        make(&mut s);
        let text = s.text();
        assert!(text.starts_with("SWALLOW SCREEN NOT DONE: "), "{text}");
        assert!(
            text.lines().next().unwrap().ends_with("To the doctor now."),
            "{text}"
        );
        assert!(
            text.contains("use your local procedure for deterioration"),
            "{text}"
        );
    }
}

#[test]
fn an_override_is_told_with_its_reason_and_who_took_it() {
    let mut s = Scene::new(Age::Years(60), Role::Slp);
    s.gate(&[("airway-tube", "tracheostomy")]);
    s.say(Event::WentOn {
        hold: "gate.airway-tube.tracheostomy".to_owned(),
        because: "needed for the assessment".to_owned(),
        by: Role::Slp,
        says: String::new(),
        initials: None,
        ground: None,
    });
    s.breaths(16).dry(&[2_000, 9_000, 17_000]).water(&[]);
    let text = s.text();
    assert!(text.starts_with("NO SIGN SEEN"), "{text}");
    assert!(text.contains("tracheostomy tube; gone on despite this, decided by the speech-language pathologist: needed for the assessment"), "{text}");
}

#[test]
fn withdrawing_after_a_sign_is_told() {
    let mut s = adult();
    s.gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[(Sign::Cough, -1_000)]);
    s.say(Event::EndedEarly(EndedEarly::Withdrew));
    let text = s.text();
    assert!(text.starts_with("REFER"), "{text}");
    assert!(text.contains("the person wanted to stop"), "{text}");
}

#[test]
fn not_for_a_child_under_two() {
    let mut s = Scene::new(Age::Months(15), Role::Screener);
    s.gate(&[]);
    let text = s.text();
    assert!(
        text.starts_with("SWALLOW SCREEN NOT DONE: not meant for children under 2 years."),
        "{text}"
    );
    assert!(!text.contains("NOTHING BY MOUTH"), "{text}");
}

/// The full note names the policy that the visit was begun under; both texts go by it.
#[test]
fn a_local_policy_is_named_and_followed() {
    let policy = Policy {
        name: "Ward 4, spring".to_owned(),
        water_from_years: 5,
        upright_minutes: 30,
        ..Policy::default()
    };
    let mut child = Scene::under(policy.clone(), Age::Years(4), Role::Screener);
    child.gate(&[]);
    let text = child.text();
    assert!(
        text.starts_with("SWALLOW SCREEN NOT DONE: not meant for children under 5 years."),
        "{text}"
    );
    let note = child.note();
    assert!(note.contains("\nPolicy: Ward 4, spring.\n"), "{note}");

    let upright = "Upright for 30 minutes after eating or drinking.";
    let mut clear = Scene::under(policy, Age::Adult, Role::Screener);
    clear
        .gate(&[])
        .breaths(16)
        .dry(&[2_100, 9_800, 17_500, 26_000]);
    clear.water(&[]);
    assert!(clear.text().contains(upright), "{}", clear.text());
    clear.mark(6_000, MarkKind::Sign(Sign::Cough));
    clear.plan(Action::NothingByMouth, "");
    assert!(!clear.text().contains(upright), "{}", clear.text());
}

#[test]
fn levels_are_left_out_with_nothing_by_mouth_and_told_as_the_clinician_s() {
    let mut s = adult();
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000]);
    let verdict = s.visit.decision().unwrap().verdict.id().to_owned();
    let plan = |action| {
        Event::Plan(Plan {
            verdict: verdict.clone(),
            action: Some(action),
            because: "the doctor decided so".to_owned(),
            drink: Some(2),
            food: Some(4),
            ..Plan::default()
        })
    };
    s.say(plan(Action::NothingByMouth));
    assert!(!s.text().contains("level"), "{}", s.text());
    s.say(plan(Action::KeepPlan));
    assert!(s.text().contains("Drinks level 2 Mildly thick, food level 4 Pureed: set by the clinician, not by this screen."), "{}", s.text());
}

#[test]
fn only_other_words_are_a_correction() {
    let mut s = adult();
    s.gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[]);
    // The label carries the very time of the first text.
    let issue = |s: &mut Scene, time: &str| {
        let written = write(&s.visit, &clock(time)).unwrap();
        let text = written.text.clone();
        s.say(written.issued(Route::Copied, time));
        text
    };
    issue(&mut s, "14:10");
    assert!(!issue(&mut s, "14:12").contains("CORRECTED"));
    s.choose("voice-after", "wet");
    let corrected = issue(&mut s, "14:30");
    assert!(
        corrected.starts_with("CORRECTED 14:30, replaces 14:12.\nREFER"),
        "{corrected}"
    );
    assert!(!issue(&mut s, "14:40").contains("replaces 14:30"));
}

/// Somebody told of a text that no longer stands goes by it until told again.
#[test]
fn who_goes_by_an_older_text_is_named_until_told_again() {
    let mut s = adult();
    s.gate(&[])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000])
        .water(&[]);
    let issue = |s: &mut Scene, time: &str| {
        let written = write(&s.visit, &clock(time)).unwrap();
        s.say(written.issued(Route::Copied, time));
    };
    let tell = |s: &mut Scene, whom: &str| {
        s.say(Event::Told {
            whom: whom.to_owned(),
            read_back: false,
        });
    };
    let old = |s: &Scene| outdated(&s.visit, &clock("14:50"));
    assert_eq!(old(&s), None);
    issue(&mut s, "14:10");
    assert_eq!(old(&s), None);
    tell(&mut s, "the nurse in charge");
    tell(&mut s, "the doctor");
    // The same words once more are the same text.
    issue(&mut s, "14:12");
    assert_eq!(old(&s), None);

    s.choose("voice-after", "wet");
    let both = "The nurse in charge (text of 14:10), the doctor (text of 14:10): what was told no \
                longer stands. Tell again.";
    assert_eq!(old(&s).as_deref(), Some(both));
    issue(&mut s, "14:30");
    assert_eq!(old(&s).as_deref(), Some(both));
    tell(&mut s, "the nurse in charge");
    assert_eq!(
        old(&s).as_deref(),
        Some("The doctor (text of 14:10): what was told no longer stands. Tell again.")
    );
    tell(&mut s, "the doctor");
    assert_eq!(old(&s), None);
}

/// Every item excepted, every field as long as it may be: still one screen, and the lines that
/// say what to do are whole.
#[test]
fn the_longest_text_still_fits_one_screen() {
    let policy = Policy {
        name: "P".repeat(Policy::MOST_NAME),
        upright_minutes: 60,
        ..Policy::default()
    };
    let mut s = Scene::under(policy, Age::Years(101), Role::Slp);
    let exceptions: Vec<(&str, &str)> = ITEMS
        .iter()
        .filter(|i| i.id != "new-weakness")
        .map(|i| (i.id, i.exceptions.last().unwrap().id))
        .collect();
    s.gate(&exceptions);
    let long = "long words ".repeat(7);
    for (item, exception) in &exceptions {
        s.say(Event::WentOn {
            hold: format!("gate.{item}.{exception}"),
            because: long.clone(),
            by: Role::Slp,
            says: String::new(),
            initials: None,
            ground: None,
        });
    }
    s.breaths(28).breaths(24).dry(&[2_000]);
    s.water(&[
        (Sign::Cough, -500),
        (Sign::Spill, -300),
        (Sign::Pause, -200),
        (Sign::ThroatClear, 3_000),
        (Sign::AskedToStop, 9_000),
    ]);
    s.say(Event::Details(Details {
        label: Label::parse(&"L".repeat(60)).unwrap(),
        age: Some(Age::Years(101)),
        sex: None,
        setting: Some(Setting::CareHome),
        language: None,
    }));
    let verdict = s.visit.decision().unwrap().verdict.id().to_owned();
    s.say(Event::Plan(Plan {
        verdict,
        action: Some(Action::KeepPlan),
        because: long.clone(),
        remark: "r".repeat(120),
        ..Plan::default()
    }));
    let text = s.text();
    assert!(
        text.chars().count() < MOST,
        "{}: {text}",
        text.chars().count()
    );
    assert!(text.contains("more in the record"), "{text}");
    assert!(
        text.starts_with(
            "REFER to the doctor now.\nNothing by mouth for another reason: that order stands.\n\
             Breathing or alertness: use your local procedure for deterioration.\n\
             Keep the current plan, because long words"
        ),
        "{text}"
    );
    // Corrected on another day it is longer by its dates, with nothing left to cut: what to do stands.
    s.say(Event::Issued {
        route: Route::Copied,
        text,
        clock: "14:31".to_owned(),
        which: Text::Nursing,
        corrects: None,
    });
    s.say(Event::Details(Details {
        sex: Some(Sex::Female),
        ..s.visit.details.clone().unwrap()
    }));
    let corrected = write(&s.visit, &clock_after(24 * 60)).unwrap().text;
    assert!(
        corrected.starts_with(
            "CORRECTED 14:00 on 26 Nov 2026, replaces 14:31 on 25 Nov 2026.\n\
             REFER to the doctor now.\n\
             Nothing by mouth for another reason: that order stands.\n\
             Breathing or alertness: use your local procedure for deterioration.\n\
             Keep the current plan, because long words"
        ) && corrected.contains("Screened at 14:01 on 25 Nov 2026 by "),
        "{corrected}"
    );
}

#[test]
fn a_cough_after_a_small_sip_on_one_phone_screen() {
    let mut script = Scene::new(Age::Years(81), Role::Screener);
    script.on(ScreenId::Stepped).gate(&[]).breaths(18);
    script.dry(&[2_000, 9_000, 17_000]);
    script.given(TaskId::Sips, 100_000, &[]).number("sip", 3);
    script
        .choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2");
    script
        .given(TaskId::Sips, 200_000, &[(Sign::Cough, 20_000)])
        .number("sip", 3);
    script
        .choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2");
    script.plan(Action::NothingByMouth, "");
    let text = script.text();
    assert!(text.starts_with("REFER to "), "{text}");
    assert!(text.contains("NOTHING BY MOUTH"), "{text}");
    assert!(
        text.contains("sip of 3 mL: coughed 20 seconds after the swallow"),
        "{text}"
    );
    assert!(text.contains("small sips of water: 2 of 3 mL"), "{text}");
    assert!(
        text.chars().count() < MOST,
        "{}: {text}",
        text.chars().count()
    );
}

/// The longest table there is on the page: many settings with all their words, each with signs.
#[test]
fn many_own_trials_fit_one_phone_screen() {
    let mut script = Scene::new(Age::Years(81), Role::Slp);
    script.on(ScreenId::OwnTrials).gate(&[]).breaths(18);
    for n in 0..14 {
        let signs = [(Sign::Cough, 1_000), (Sign::VoiceChange, 2_000)];
        script.given(TaskId::Own, n * 100_000, &signs[..(n % 3) as usize]);
        script.choose("own-level", ["d3", "f6", "f5"][(n % 3) as usize]);
        script.words("own-what", &format!("orange juice with thickener {n}"));
        script
            .choose("own-amount", "mouthful")
            .choose("own-by", "self");
        script.choose("own-posture", "turned-right");
        script.choose("own-strategy", "slow");
        script.words("own-strategy-words", "chin on the left shoulder, twice");
    }
    script.plan(Action::NothingByMouth, "");
    let text = script.text();
    assert!(text.starts_with("REFER: "), "{text}");
    assert!(text.contains("more in the record"), "{text}");
    assert!(
        text.chars().count() < MOST,
        "{}: {text}",
        text.chars().count()
    );
}

/// Plans of earlier versions carry the verdict alone, or with its rules: they stand as they did.
#[test]
fn a_plan_of_an_earlier_version_stands_for_its_rules() {
    for (verdict, stands) in [
        ("refer", true),
        ("refer water.cough", true),
        ("refer water.spill", false),
        ("incomplete", false),
    ] {
        let mut s = Scene::new(Age::Years(72), Role::Screener);
        s.gate(&[]).breaths(16).dry(&[2_000, 9_000, 17_000]);
        s.water(&[(Sign::Cough, 1_000)]);
        s.say(Event::Plan(Plan {
            verdict: verdict.to_owned(),
            action: Some(Action::KeepPlan),
            because: "it was decided so".to_owned(),
            ..Plan::default()
        }));
        assert_eq!(
            s.text().contains("it was decided so"),
            stands,
            "{verdict}: {}",
            s.text()
        );
    }
}
