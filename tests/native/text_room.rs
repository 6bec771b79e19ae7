//! What a text that is full keeps, and what goes first. What must hold is local policy.

use crate::support::*;
use penlight::clinical::findings::gate;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::handover::nursing::MOST;
use penlight::record::event::Action;
use penlight::record::event::Event;

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
    let item = gate::find("airway-tube").unwrap();
    let exception = item
        .exceptions
        .iter()
        .find(|e| e.id == "tracheostomy")
        .unwrap();
    s.say(Event::WentOn {
        hold: penlight::clinical::findings::in_the_way::gate_key(item, exception),
        because: "cuff down and speaking valve on".to_owned(),
        by: Role::Slp,
        says: String::new(),
        initials: None,
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

/// However much else there is to tell.
#[test]
fn a_late_cough_outlasts_everything_else_in_a_full_text() {
    let mut s = much_to_tell(Role::Screener);
    s.breaths(22).dry(&[2_000, 9_000, 17_000]);
    s.given(TaskId::Own, 300_000, &[(Sign::ThroatClear, 1_000)])
        .choose("own-level", "d2");
    s.timed_cup(
        500_000,
        &[(Sign::Pause, 1_000), (Sign::ThroatClear, 2_000)],
        "clear",
    );
    s.water(&[(Sign::ThroatClear, 1_000), (Sign::Cough, 64_000)]);
    let text = s.text();
    assert!(text.contains("coughed 64 seconds"), "{text}");
}

/// However much was gone past: that it is not over is told.
#[test]
fn a_choking_that_is_not_over_outlasts_what_was_gone_past() {
    let mut s = adult(Role::Slp);
    let past = [
        ("airway-tube", "tracheostomy"),
        ("diet", "modified"),
        ("tube", "tube"),
        ("extubation", "recent"),
        ("cough", "no"),
        ("mouth", "no"),
        ("nothing-by-mouth", "other-reason"),
    ];
    s.gate(&past).breaths(30);
    for (n, hold) in holds(TaskId::Water90, &s.visit.exam)
        .into_iter()
        .enumerate()
    {
        s.say(Event::WentOn {
            hold: hold.id,
            because: format!(
                "reason {n}, said at length: the team, the family and the person agreed"
            ),
            by: Role::Slp,
            says: hold.says,
            initials: None,
            ground: None,
        });
    }
    s.dry(&[2_000, 9_000, 17_000])
        .water(&[(Sign::Choke, 1_000)])
        .say(Event::Choking(at(109_400)));
    s.plan(
        Action::KeepPlan,
        "the doctor decided so after a talk with the family today",
    );
    let text = s.text();
    assert!(text.contains("NOT back to baseline"), "{text}");
}

#[test]
fn unreadable_entries_are_told_in_a_full_text_beside_a_sign() {
    let mut s = long(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    s.lost();
    let text = s.text();
    assert!(text.chars().count() < MOST, "{text}");
    assert!(text.contains("can't be read"), "{text}");
}

/// An incomplete screen of which the reading is why the doctor is called.
#[test]
fn why_the_doctor_is_called_is_told_whatever_else_is_missing() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::FullVisit).gate(MUCH_AT_THE_GATE);
    s.examined(&[
        ("mouth.sulci", "food"),
        ("mouth.moist", "pooled"),
        ("voice.ah", "wet"),
        ("cough", "none"),
        ("speech", "slurred"),
    ]);
    s.spo2(92);
    s.dry(&[2_000, 9_000, 17_000])
        .choose("not-valid", "not-felt");
    s.water(&[]).number(saturation::LOWEST, 89);
    s.choose("watch-cut", "called-away");
    for item in ["fluids", "identity", "mask"] {
        s.say(Event::GateCleared(item.to_owned()));
    }
    s.plan(
        Action::KeepPlan,
        "the doctor decided so after a talk with the family of this person today",
    );
    let text = s.text();
    assert!(s.first_line().contains("the doctor now"), "{text}");
    assert!(text.contains("89 %"), "{text}");
}

/// Several reasons to stop: the one that calls the doctor is never the one that is cut.
#[test]
fn the_reason_that_calls_the_doctor_is_told_before_other_stops() {
    let mut s = long(Role::Slp);
    s.dry(&[]).dry(&[]);
    s.timed_cup(300_000, &[(Sign::NoSwallow, 1_000)], "clear");
    s.open(TaskId::Meal);
    s.mark(500_000, MarkKind::Start)
        .mark(520_000, MarkKind::Sign(Sign::BreathingChange))
        .mark(600_000, MarkKind::End);
    let text = s.text();
    assert!(s.first_line().contains("the doctor now"), "{text}");
    assert!(text.contains("breathing changed"), "{text}");
}

/// An emergency, and before it a sign: however much else keeps the gate closed.
#[test]
fn an_emergency_tells_the_sign_before_it_whatever_else_is_missing() {
    let mut s = adult(Role::Slp);
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000, 17_000]);
    s.water(&[(Sign::BreathingChange, 1_000)]);
    s.gate(&[
        ("new-weakness", "new"),
        ("distress", "distress"),
        ("awake", "no"),
        ("saliva", "no"),
        ("cough", "no"),
        ("airway-tube", "tracheostomy"),
        ("diet", "modified"),
        ("tube", "tube"),
        ("chest", "chest"),
        ("risk-plan", "plan"),
    ]);
    s.say(Event::LastWell(
        "before she went to sleep yesterday evening, as her daughter said on the phone".to_owned(),
    ));
    s.breaths(30).spo2(85);
    let text = s.text();
    assert!(text.starts_with("EMERGENCY"), "{text}");
    assert!(text.contains("breathing changed"), "{text}");
}

/// What was first an emergency outlasts what is only noted.
#[test]
fn an_emergency_that_was_answered_otherwise_is_told_in_a_full_text() {
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", "new")]);
    let mut t = long(Role::Screener);
    t.gate(&[("new-weakness", "new"), ("chest", "chest")]);
    t.gate(&[
        ("fluids", "restricted"),
        ("allergy", "allergy"),
        ("chest", "chest"),
        ("spine", "limit"),
        ("suction", "none"),
        ("requests", "no"),
        ("language", "no"),
        ("high-flow", "high-flow"),
        ("risk-plan", "plan"),
        ("new-weakness", "known"),
    ]);
    t.given(TaskId::Own, 300_000, &[(Sign::ThroatClear, 1_000)])
        .choose("own-level", "d2");
    t.timed_cup(500_000, &[(Sign::ThroatClear, 2_000)], "clear");
    t.water(&[(Sign::ThroatClear, 1_000)]);
    let text = t.text();
    assert!(text.contains("first answered as an emergency"), "{text}");
}

/// However many reasons were given for going on.
#[test]
fn a_late_cough_outlasts_reasons_for_going_on() {
    let mut s = long(Role::Slp);
    for n in 0..8 {
        let from = 300_000 + n * 100_000;
        s.given(TaskId::Own, from, &[(Sign::AskedToStop, 1_000)])
            .choose("own-level", "d2");
        s.pass_all(
            TaskId::Own,
            &format!("reason {n}: the team, the family and the person agreed to it"),
            Role::Slp,
        );
    }
    s.pass_all(
        TaskId::Water90,
        "the team, the family and the person agreed to it",
        Role::Slp,
    );
    s.water(&[(Sign::Cough, 64_000)]);
    let text = s.text();
    assert!(text.contains("coughed 64 seconds"), "{text}");
}

/// REFER to the doctor now, by the breathing: however many reasons there were, it is named.
#[test]
fn failing_breathing_is_named_beside_a_sign_in_a_full_text() {
    let mut s = long(Role::Slp);
    for n in 0..6 {
        let from = 300_000 + n * 100_000;
        s.given(TaskId::Own, from, &[(Sign::Cough, 1_000)])
            .choose("own-level", "d2");
        s.pass_all(
            TaskId::Own,
            &format!("reason {n}: the team, the family and the person agreed to it"),
            Role::Slp,
        );
    }
    s.water(&[(Sign::Cough, 1_000)]).spo2(85).breaths(30);
    let text = s.text();
    assert!(s.first_line().contains("the doctor now"), "{text}");
    assert!(s.found().contains("30 a minute"), "{text}");
    assert!(s.found().contains("85 %"), "{text}");
}

/// Readings that are only noted are not told in the place of a cough that is.
#[test]
fn a_late_cough_outlasts_readings_that_are_noted() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::FullVisit).gate(&[
        ("fluids", "restricted"),
        ("allergy", "allergy"),
        ("chest", "chest"),
        ("language", "no"),
        ("high-flow", "high-flow"),
    ]);
    s.examined(&[
        ("mouth.clean", "coated"),
        ("speech", "slurred"),
        ("throat.clear", "weak"),
        ("nose", "blocked"),
    ]);
    s.spo2(97).dry(&[2_000, 9_000, 17_000]);
    for n in 0..12 {
        s.given(TaskId::Own, 300_000 + n * 100_000, &[])
            .choose(
                "own-level",
                ["d0", "d2", "f4"][usize::try_from(n).unwrap() % 3],
            )
            .number(saturation::LOWEST, 95);
    }
    s.water(&[]).number(saturation::LOWEST, 95);
    s.timed_cup(2_000_000, &[(Sign::Cough, 64_000)], "clear");
    s.number(saturation::LOWEST, 95);
    assert!(s.text().contains("coughed 64 seconds"), "{}", s.text());
}

/// A full visit with findings all over, and reasons given for going on.
#[test]
fn the_water_and_its_signs_are_never_cut() {
    let mut s = much_to_tell(Role::Slp);
    s.breaths(22).dry(&[2_000]);
    for task in [TaskId::Water90, TaskId::Own] {
        s.pass_all(
            task,
            "the team, the family and the person agreed to it this morning",
            Role::Slp,
        );
    }
    s.given(TaskId::Own, 300_000, &[(Sign::Spill, 1_000)])
        .choose("own-level", "d2");
    s.water(&[(Sign::Cough, -2_000), (Sign::VoiceChange, 9_000)])
        .choose("cup", "some-left")
        .number("left", 60);
    s.plan(Action::NothingByMouth, "");
    let text = s.text();
    assert!(text.chars().count() < MOST, "{text}");
    for told in [
        "30 of 90 mL of water drunk, not finished",
        "coughed",
        "voice turned wet or changed",
        "spilled or drooled",
        "1 dry swallow in 30 seconds",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
    // The sentences of what was gone past were the first to go.
    assert!(!text.contains("the family"), "{text}");
}
