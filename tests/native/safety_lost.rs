//! Signs and refusals that could get lost, and what was offered although something should have held
//! it: sequences found by a second reading.

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
use penlight::clinical::tasks::by_mouth::{lag, saturation};
use penlight::clinical::tasks::{breathing, timed_water};
use penlight::handover::nursing::write;
use penlight::measure::time::{PageLife, Stamp};
use penlight::record::event::{Action, Event, Route, Text, Versions};
use penlight::record::head::Head;
use script::*;

// --- Signs that get lost -------------------------------------------------------------------------

/// The voice is asked for after the minute: heard wet, the sign pressed at 63 s, and answered wet.
#[test]
fn a_wet_voice_that_is_pressed_late_and_answered_counts() {
    let mut s = ready(Role::Screener);
    timed(&mut s, 300_000, &[], "wet");
    assert_eq!(s.verdict(), Verdict::Refer);
    let mut s = ready(Role::Screener);
    timed(&mut s, 300_000, &[(Sign::VoiceChange, 63_000)], "wet");
    assert_eq!(s.verdict(), Verdict::Refer, "{}", s.text());
}

#[test]
fn a_wet_voice_after_a_sip_that_is_pressed_late_and_answered_counts() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[(Sign::VoiceChange, 61_500)])
        .number("sip", 5)
        .choose("voice-after", "wet");
    assert_eq!(s.verdict(), Verdict::Refer, "{}", s.text());
}

/// A cough 5 seconds after the minute of the first cup, and a second cup that was clear.
#[test]
fn a_late_cough_of_the_first_cup_is_told_after_a_clear_second() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 65_000)]);
    assert!(s.text().contains("coughed 65 seconds"), "{}", s.text());
    s.water(&[]);
    assert!(s.text().contains("coughed 65 seconds"), "{}", s.text());
}

#[test]
fn a_second_cup_that_was_opened_and_left_hides_nothing_of_the_first() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 5_000)]);
    s.open(TaskId::Water90);
    let text = s.text();
    assert!(
        text.contains("cleared the throat") && !text.contains("not given"),
        "{text}"
    );
}

/// Wet already before any water: as "does not manage saliva" at the gate.
#[test]
fn a_wet_voice_before_water_that_was_then_not_given_is_told() {
    for (task, screen) in [
        (TaskId::Water90, ScreenId::Swallow),
        (TaskId::Sips, ScreenId::Stepped),
    ] {
        let mut s = ready(Role::Screener);
        s.on(screen).open(task);
        s.choose("voice-before", "wet");
        let text = s.text();
        let before_advice = text.split("Recommendation:").next().unwrap();
        assert!(before_advice.contains("wet"), "{text}");
    }
}

#[test]
fn a_wet_voice_before_water_is_not_told_as_managing_saliva() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "wet");
    let text = s.text();
    assert!(!text.contains("manages saliva"), "{text}");
}

#[test]
fn a_request_to_stop_is_told_though_the_screen_was_then_ended() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[(Sign::AskedToStop, 5_000)])
        .number("sip", 5);
    assert!(s.text().contains("asked to stop"), "{}", s.text());
    s.say(Event::EndedEarly(
        penlight::clinical::findings::exam::EndedEarly::BrokenOff,
    ));
    assert!(s.text().contains("asked to stop"), "{}", s.text());
}

#[test]
fn a_refusal_of_own_trials_is_told() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.open(TaskId::Own);
    s.choose("not-valid", "refused");
    assert!(s.text().contains("did not want to"), "{}", s.text());
}

#[test]
fn a_refusal_after_the_first_own_trial_is_told() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
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

/// Wet before a cup that was added to the screen, and then not given.
#[test]
fn a_wet_voice_before_what_was_added_is_told() {
    let mut s = ready(Role::Screener);
    s.water(&[]).open(TaskId::TimedWater);
    s.choose("voice-before", "wet");
    assert_eq!(s.verdict(), Verdict::Incomplete, "{}", s.text());
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

/// However much else there is to tell.
#[test]
fn a_late_cough_outlasts_everything_else_in_a_full_text() {
    let mut s = much_to_tell(Role::Screener);
    s.breaths(22).dry(&[2_000, 9_000, 17_000]);
    s.given(TaskId::Own, 300_000, &[(Sign::ThroatClear, 1_000)])
        .choose("own-level", "d2");
    timed(
        &mut s,
        500_000,
        &[(Sign::Pause, 1_000), (Sign::ThroatClear, 2_000)],
        "clear",
    );
    s.water(&[(Sign::ThroatClear, 1_000), (Sign::Cough, 64_000)]);
    let text = s.text();
    assert!(text.contains("coughed 64 seconds"), "{text}");
}

// --- Offered although -----------------------------------------------------------------------------

/// A cough long after the minute: until it is said what was in the mouth, nothing more is given.
#[test]
fn a_late_sign_that_nobody_placed_holds_the_next_trial() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[]).number("sip", 3);
    s.choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2");
    s.mark(240_000, MarkKind::Sign(Sign::Cough));
    let offer = penlight::clinical::tasks::offer(TaskId::Sips, &s.visit.exam).unwrap();
    assert!(
        offer.waits || !holds(TaskId::Sips, &s.visit.exam).is_empty(),
        "{offer:?}"
    );
}

#[test]
fn a_late_sign_of_the_sips_that_nobody_placed_holds_an_own_trial() {
    let mut s = ready(Role::Screener);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    s.mark(240_000, MarkKind::Sign(Sign::Cough));
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Who asked to stop is asked before anything else is put before them.
#[test]
fn a_request_to_stop_holds_the_same_again() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.given(TaskId::Own, 100_000, &[(Sign::AskedToStop, 1_000)])
        .choose("own-level", "d0");
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
}

#[test]
fn a_request_to_stop_holds_the_cup_after_it() {
    let mut s = ready(Role::Screener);
    s.given(TaskId::Own, 100_000, &[(Sign::AskedToStop, 1_000)])
        .choose("own-level", "d0");
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// A cup at the lips, its last swallow not pressed: nothing else is given meanwhile.
#[test]
fn a_trial_that_still_runs_holds_another() {
    let mut s = ready(Role::Slp);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start);
    assert!(!holds(TaskId::Own, &s.visit.exam).is_empty());
    // Its own end is no hold, and a reason speaks for what it was given for.
    pass(&mut s, TaskId::Own, "runs.Water90", Role::Slp);
    assert!(holds(TaskId::Own, &s.visit.exam).is_empty());
    let held = holds(TaskId::Sips, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("runs.Water90")),
        "{held:?}"
    );
}

/// Said to be of nothing: then it holds no more. A reason frees what it was given for.
#[test]
fn a_late_sign_holds_until_it_is_said() {
    let mut s = stepped(Role::Screener, 97);
    s.given(TaskId::Sips, 100_000, &[]).number("sip", 3);
    s.choose("sip-way", "under-tongue")
        .choose("extra-swallows", "2");
    assert!(holds(TaskId::Sips, &s.visit.exam).is_empty());
    s.mark(240_000, MarkKind::Sign(Sign::Cough));
    let held = holds(TaskId::Sips, &s.visit.exam);
    assert_eq!(held.len(), 1, "{held:?}");
    assert!(held[0].advice.contains("next was in the mouth"), "{held:?}");
    let mut on = s.visit.clone();
    assert!(held[0].go_on.open_to(Role::Screener));
    s.choose(&lag::late_id(at(240_000)), lag::NOTHING);
    assert!(holds(TaskId::Sips, &s.visit.exam).is_empty());
    std::mem::swap(&mut s.visit, &mut on);
    pass(&mut s, TaskId::Sips, "again.Sips", Role::Screener);
    assert!(holds(TaskId::Sips, &s.visit.exam).is_empty());
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
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

/// A mistaken second choking takes back nothing of the first, and a reason for one that was a
/// mistake does not speak for the next.
#[test]
fn a_reason_for_a_choking_that_was_a_slip_speaks_for_no_other() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::BackToBaseline(at(60_000)));
    pass(&mut s, TaskId::Water90, "choked", Role::Slp);
    s.say(Event::Choking(at(100_000)));
    pass(&mut s, TaskId::Water90, "choked", Role::Slp);
    s.say(Event::NotChoking);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
    s.say(Event::Choking(at(200_000)));
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// A cough or a request to stop at the table holds no tally: a meal is watched.
#[test]
fn only_what_stops_every_trial_holds_the_meal() {
    for (sign, holds_it) in [
        (Sign::Cough, false),
        (Sign::AskedToStop, false),
        (Sign::NoSwallow, true),
    ] {
        let mut s = ready(Role::Slp);
        s.open(TaskId::Meal);
        s.mark(100_000, MarkKind::Start)
            .mark(120_000, MarkKind::Sign(sign))
            .mark(200_000, MarkKind::End);
        let held = holds(TaskId::Meal, &s.visit.exam);
        assert_eq!(!held.is_empty(), holds_it, "{sign:?} {held:?}");
    }
    // A choke is gone past once, not twice.
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Choke, 1_000)]);
    pass(&mut s, TaskId::Meal, "choked", Role::Slp);
    assert!(holds(TaskId::Meal, &s.visit.exam).is_empty());
}

/// Going on past weakness that could be new is told.
#[test]
fn weakness_that_was_gone_past_is_told() {
    let mut s = adult(Role::Screener);
    s.on(ScreenId::FullVisit).gate(&[]).breaths(16);
    s.dry(&[2_000, 9_000, 17_000])
        .examined(&[("speech", "slurred")]);
    pass(&mut s, TaskId::Water90, "weakness.", Role::Screener);
    s.water(&[]);
    assert!(
        s.text()
            .contains("water was given despite this: the examination found weakness"),
        "{}",
        s.text()
    );
}

// --- What the nurse is told to do ----------------------------------------------------------------

#[test]
fn a_limit_of_neck_or_spine_goes_before_upright() {
    let mut s = adult(Role::Screener);
    s.gate(&[("spine", "limit")])
        .breaths(16)
        .dry(&[2_000, 9_000]);
    s.plan(Action::NothingByMouth, "");
    let text = s.text();
    let advice = text.split("Recommendation:").nth(1).unwrap();
    assert!(
        !advice.contains("upright") || advice.contains("limit"),
        "{text}"
    );
}

/// RHD, STM: no swallow felt: stop, clear the mouth, refer.
#[test]
fn no_swallow_tells_to_clear_the_mouth() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::NoSwallow, -1_000)]);
    let text = s.text();
    assert!(text.starts_with("STOP"), "{text}");
    assert!(text.contains("clear the mouth"), "{text}");
}

// --- The list at home, and who was told -----------------------------------------------------------

fn decided(s: &mut Script) {
    let verdict = s.verdict().id().to_owned();
    s.say(Event::Decided {
        verdict,
        reasons: Vec::new(),
        versions: Versions {
            app: "0".to_owned(),
            rules: "1".to_owned(),
        },
        policy: "Penlight default 1".to_owned(),
    });
}

/// Consent, or being awake, taken back after the decision.
#[test]
fn the_list_does_not_keep_no_sign_seen_of_a_gate_that_is_open_again() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    decided(&mut s);
    assert_eq!(Head::of(&s.visit).verdict, "No sign seen");
    s.say(Event::GateCleared("awake".to_owned()));
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert_ne!(Head::of(&s.visit).verdict, "No sign seen");
}

#[test]
fn the_list_does_not_keep_no_sign_seen_of_a_screen_that_was_then_ended() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    decided(&mut s);
    s.say(Event::EndedEarly(
        penlight::clinical::findings::exam::EndedEarly::Withdrew,
    ));
    assert_ne!(Head::of(&s.visit).verdict, "No sign seen");
}

/// Closed for a cough; the press was then put right to what it was.
#[test]
fn what_was_closed_for_a_cough_is_not_closed_for_a_choke() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let trial = s.trial;
    s.say(Event::Closed("seen".to_owned()));
    assert!(!Head::of(&s.visit).unclosed);
    s.say(Event::Undo { trial })
        .mark(121_000, MarkKind::Sign(Sign::Choke));
    assert!(Head::of(&s.visit).unclosed);
}

/// Two texts in one minute: who was told of the first was not told of the second.
#[test]
fn told_goes_with_the_text_also_within_a_minute() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let issue = |s: &mut Script| {
        let text = write(&s.visit, &clock("14:40")).unwrap();
        s.say(Event::Issued {
            route: Route::Copied,
            text,
            clock: "14:40".to_owned(),
            which: Text::Nursing,
        });
    };
    issue(&mut s);
    s.say(Event::Told {
        whom: "the nurse in charge".to_owned(),
        read_back: true,
    });
    s.mark(120_000, MarkKind::Sign(Sign::BreathingChange));
    issue(&mut s);
    assert!(s.visit.last_text().unwrap().text.contains("STOP"));
    assert_ne!(s.visit.told[0].of, s.visit.last_text().unwrap().clock);
}

/// "Yes: it was given", pressed by mistake and taken back: the cough was there all the same.
#[test]
fn a_sign_that_was_given_to_the_next_trial_is_not_lost_with_it() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    let before = s.trial;
    s.mark(229_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Incomplete);
    let to = s.open(TaskId::Own);
    s.choose("own-level", "d0").mark(229_000, MarkKind::Start);
    s.say(Event::SignMoved {
        from: before,
        to,
        sign: Sign::Cough,
        at: at(229_000),
    });
    assert_eq!(s.verdict(), Verdict::Refer);
    // What "undo" of the page takes back: the newest press, and again.
    for _ in 0..2 {
        let trial = s.visit.undo_goes_to(TaskId::Own).unwrap();
        s.say(Event::Undo { trial });
    }
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

/// Water given while the minute of an own trial still ran: a cough may be of either.
#[test]
fn a_sign_within_the_minute_of_another_task_names_both() {
    let mut s = ready(Role::Slp);
    s.open(TaskId::Own);
    s.choose("own-level", "f4").mark(90_000, MarkKind::Start);
    s.mark(95_000, MarkKind::End);
    pass(&mut s, TaskId::Water90, "watch.Own", Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    let text = s.text();
    assert!(text.contains("either may be meant"), "{text}");
}

/// A request to stop in one cracker, and a second that went well.
#[test]
fn a_request_to_stop_in_a_cracker_is_not_taken_back_by_a_second() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    for (from, sign) in [(300_000, true), (500_000, false)] {
        s.open(TaskId::Cracker);
        s.choose("allergy", "fine")
            .choose("teeth", "fine")
            .choose("diet-order", "fine");
        s.mark(from, MarkKind::Start)
            .mark(from, MarkKind::Tap)
            .mark(from + 20_000, MarkKind::End);
        if sign {
            s.mark(from + 30_000, MarkKind::Sign(Sign::AskedToStop));
        }
        s.mark(from + 80_030, MarkKind::WatchOver);
    }
    assert!(s.text().contains("asked to stop"), "{}", s.text());
}

/// Four dry swallows, counted before the visit and attached after it found none.
#[test]
fn an_attached_older_count_takes_back_no_missing_swallow() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16);
    s.open(TaskId::DrySwallow);
    s.mark(3_600_000, MarkKind::Start)
        .mark(3_630_020, MarkKind::WindowOver)
        .choose("not-valid", "not-felt");
    let mut marks = vec![(at(0), MarkKind::Start)];
    marks.extend((1..5).map(|n| (at(n * 5_000), MarkKind::Tap)));
    marks.push((at(30_020), MarkKind::WindowOver));
    let trial = s.visit.next_trial();
    s.say(Event::Attached {
        from: s.visit.id.clone(),
        trial,
        task: TaskId::DrySwallow,
        length: None,
        marks,
        hidden: Vec::new(),
        answers: Vec::new(),
        chokings: Vec::new(),
    });
    assert!(
        !holds(TaskId::Water90, &s.visit.exam).is_empty(),
        "{}",
        s.text()
    );
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

/// "Stop: no more trials by mouth": then nobody eats on unasked, as after a choke.
#[test]
fn a_stop_holds_the_meal() {
    for sign in [Sign::BreathingChange, Sign::NoSwallow] {
        let mut s = ready(Role::Screener);
        s.water(&[(sign, 1_000)]);
        assert!(!holds(TaskId::Meal, &s.visit.exam).is_empty(), "{sign:?}");
    }
}

/// Sips that were begun and a sign in them, whatever comes of the cup.
#[test]
fn a_sign_in_added_sips_is_not_taken_back_by_a_clear_cup() {
    let mut s = ready(Role::Slp);
    s.given(TaskId::Sips, 100_000, &[(Sign::Cough, 1_000)])
        .number("sip", 5);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Refer);
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
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.given(TaskId::Own, 100_000, &[])
        .choose("own-level", "d0")
        .say(Event::Choking(at(101_000)));
    assert_eq!(s.verdict(), Verdict::Stop);
    assert!(!s.text().contains("given once, no sign"), "{}", s.text());
}

/// A wet voice gone past for 3 mL from a syringe is not gone past for a cup.
#[test]
fn a_reason_for_a_sip_despite_a_wet_voice_does_not_speak_for_the_cup() {
    let mut s = stepped(Role::Slp, 97);
    s.open(TaskId::Sips);
    s.choose("voice-before", "wet");
    pass(&mut s, TaskId::Sips, "water.wet-before", Role::Slp);
    sips_given(&mut s, &mut |_, s| {
        s.choose("voice-before", "wet").choose("voice-after", "wet");
    });
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("water.wet-before")),
        "{held:?}"
    );
}

/// A teaspoon after the choke was reasoned for; 90 mL were not.
#[test]
fn a_reason_after_a_choke_speaks_for_its_own_task_alone() {
    let mut s = ready(Role::Slp);
    s.say(Event::Choking(at(1_000)))
        .say(Event::BackToBaseline(at(60_000)));
    pass(&mut s, TaskId::Own, "choked", Role::Slp);
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
}

#[test]
fn a_reason_after_a_cough_speaks_for_its_own_task_alone() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 1_000)]);
    pass(&mut s, TaskId::Own, "after.Water90", Role::Screener);
    assert!(!holds(TaskId::Sips, &s.visit.exam).is_empty());
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

/// As for the 90 mL: a voice nobody heard before can't be heard to have changed.
#[test]
fn a_timed_cup_without_the_voice_before_is_incomplete() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    s.open(TaskId::TimedWater);
    s.choose(timed_water::OFFERED, "100");
    s.mark(300_000, MarkKind::Start)
        .mark(304_000, MarkKind::Tap)
        .mark(308_000, MarkKind::End)
        .mark(368_030, MarkKind::WatchOver);
    s.choose(timed_water::CUP, timed_water::EMPTY)
        .choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete, "{}", s.text());
}

/// Heard wet after a timed cup, the sign pressed at 63 s, and 90 mL that went well.
#[test]
fn a_late_press_of_a_wet_voice_that_was_answered_is_never_clear() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    timed(&mut s, 300_000, &[(Sign::VoiceChange, 63_000)], "wet");
    assert_eq!(s.verdict(), Verdict::Refer, "{}", s.text());
}

/// What was tried and holds: a sign keeps its weight whatever comes after it.
#[test]
fn a_sign_keeps_its_weight_whatever_comes_after_it() {
    // A text that left as clear, then a choke.
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let text = s.text();
    s.say(Event::Issued {
        route: Route::Copied,
        text,
        clock: "14:31".to_owned(),
        which: Text::Nursing,
    });
    s.mark(160_000, MarkKind::Sign(Sign::Choke));
    let text = write(&s.visit, &clock("14:40")).unwrap();
    assert!(
        text.starts_with("CORRECTED 14:40, replaces 14:31.\nSTOP"),
        "{text}"
    );
    // A sign of which the clocks can't say when.
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let trial = s.trial;
    s.say(Event::Mark {
        trial,
        at: Stamp {
            life: PageLife(8),
            ..at(10_908_400)
        },
        kind: MarkKind::Sign(Sign::Cough),
    });
    assert_eq!(s.verdict(), Verdict::Refer);
    // A cough, then a refusal, a broken-off screen, a child's age.
    for end in [
        penlight::clinical::findings::exam::EndedEarly::Refused,
        penlight::clinical::findings::exam::EndedEarly::Withdrew,
        penlight::clinical::findings::exam::EndedEarly::BrokenOff,
    ] {
        let mut s = ready(Role::Screener);
        timed(&mut s, 300_000, &[(Sign::Cough, 5_000)], "clear");
        s.say(Event::EndedEarly(end));
        let mut details = s.visit.details.clone().unwrap();
        details.age = Some(Age::Months(18));
        s.say(Event::Details(details));
        assert_eq!(s.verdict(), Verdict::Refer, "{end:?}");
        assert!(s.text().contains("coughed"), "{}", s.text());
    }
    // A choke in a loose tally that was attached to an examination without a swallow.
    let mut s = adult(Role::Screener);
    s.on(ScreenId::OralMotor);
    s.say(Event::Attached {
        from: s.visit.id.clone(),
        trial: 0,
        task: TaskId::Meal,
        length: None,
        marks: vec![
            (at(0), MarkKind::Start),
            (at(20_000), MarkKind::Sign(Sign::Choke)),
            (at(60_000), MarkKind::End),
        ],
        hidden: Vec::new(),
        answers: Vec::new(),
        chokings: Vec::new(),
    });
    assert!(s.text().starts_with("STOP"), "{}", s.text());
    // A cough with the first own trial, and the same again without.
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s.given(TaskId::Own, 100_000, &[(Sign::Cough, 1_000)])
        .choose("own-level", "d0");
    s.given(TaskId::Own, 300_000, &[]).choose("own-level", "d0");
    assert_eq!(s.verdict(), Verdict::Refer);
    assert!(
        s.text().contains("given twice, coughed in 1"),
        "{}",
        s.text()
    );
    // "A sign decided already", and there was none.
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End)
        .choose("watch-cut", "sign")
        .choose("cup", "one-go")
        .choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    // A voice gone, not wet.
    let mut s = ready(Role::Screener);
    s.water(&[]).choose("voice-after", "other");
    assert_eq!(s.verdict(), Verdict::Refer);
}

/// A rate that was typed has one page: a reading after the water is typed over the one before it.
#[test]
fn a_reading_typed_over_the_one_before_takes_back_no_fall() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(96);
    let reading = s.trial;
    s.dry(&[2_000, 9_000, 17_000])
        .water(&[])
        .number(saturation::LOWEST, 92);
    assert_eq!(s.verdict(), Verdict::Stop);
    s.say(Event::Answer {
        trial: reading,
        question: breathing::SATURATION.to_owned(),
        answer: Some(penlight::clinical::findings::trial::Answer::Tenths(920)),
    });
    assert_eq!(s.verdict(), Verdict::Stop, "{}", s.text());
}
