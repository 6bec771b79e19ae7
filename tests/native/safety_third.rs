//! Sequences found by a third reading: what a text says of what did not happen, what gets lost where
//! an entry can't be read, and reasons and holds that outlive or fall short of what they were for.
//! What must hold is local policy unless a source is named.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use crate::support::in_the_way::holds;
use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breathing;
use penlight::clinical::tasks::by_mouth::saturation;
use penlight::handover::action;
use penlight::handover::nursing::MOST;
use penlight::record::envelope::{Envelope, SCHEMA};
use penlight::record::event::{Action, Event, Plan, Versions};
use penlight::record::head::Head;
use script::*;

/// An entry that can't be read takes the next place.
fn lost(s: &mut Script) {
    let envelope = Envelope {
        device: "here".to_owned(),
        visit: s.visit.id.clone(),
        seq: s.visit.next,
        schema: SCHEMA,
        key: String::new(),
        at: at(0),
        body: "{\"Mark\":{".to_owned(),
    };
    s.visit.take(&envelope);
}

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

/// Everything that is told before the advice: that has the words "wet voice" and "coughing" itself.
fn found(s: &Script) -> String {
    s.text().split("Recommendation:").next().unwrap().to_owned()
}

fn own_trials(role: Role) -> Script {
    let mut s = adult(role);
    s.on(ScreenId::OwnTrials).gate(&[]).breaths(16);
    s
}

// --- A trial that did not take place ------------------------------------------------------------

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
    s.spo2(93);
    assert_eq!(s.verdict(), Verdict::Stop);
}

/// A cough with an own trial; going on to the cup was reasoned for, and no cup was given.
#[test]
fn a_reason_that_led_to_nothing_is_not_told_as_given() {
    let mut s = ready(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Cough, 1_000)])
        .choose("own-level", "d2");
    pass(&mut s, TaskId::Water90, "after.Own", Role::Slp);
    assert!(!s.text().contains("given despite"), "{}", s.text());
    // A dry swallow is nothing given.
    s.dry(&[2_000, 9_000, 17_000]);
    assert!(!s.text().contains("given despite"), "{}", s.text());
    s.water(&[]);
    let told = "water was given despite this: a sign was seen";
    assert!(
        s.text().to_lowercase().contains(&told.to_lowercase()),
        "{}",
        s.text()
    );
}

/// Water that was given before the reason was is not what the reason was for.
#[test]
fn a_reason_names_what_was_given_after_it() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    pass(&mut s, TaskId::Cracker, "cracker.", Role::Slp);
    s.open(TaskId::Cracker);
    s.choose("allergy", "fine")
        .choose("teeth", "fine")
        .choose("diet-order", "fine");
    assert!(!s.text().contains("despite this"), "{}", s.text());
    // What else was given was not given for that reason.
    let cracker = std::mem::replace(&mut s.trial, 0);
    s.given(TaskId::Own, 200_000, &[]);
    assert!(!s.text().contains("despite this"), "{}", s.text());
    s.trial = cracker;
    s.mark(300_000, MarkKind::Start)
        .mark(300_000, MarkKind::Tap)
        .mark(320_000, MarkKind::End)
        .mark(380_030, MarkKind::WatchOver);
    let text = s.text();
    assert!(
        text.contains("cracker was given despite this") && !text.contains("ater was given despite"),
        "{text}"
    );
}

// --- What was gone past, and is answered otherwise since -----------------------------------------

/// Given while drowsy, with a reason; awake since: that it was given so is told.
#[test]
fn what_was_gone_past_at_the_gate_is_told_though_it_holds_since() {
    let mut s = adult(Role::Slp);
    s.gate(&[("awake", "drowsy")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    pass(&mut s, TaskId::Water90, "gate.awake", Role::Slp);
    s.water(&[]);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
    s.gate(&[]);
    let text = s.text();
    assert!(
        text.contains("needed for the assessment") && text.contains("rowsy"),
        "{text}"
    );
}

#[test]
fn breathing_that_was_gone_past_is_told_though_it_was_counted_anew() {
    let mut s = adult(Role::Slp);
    s.gate(&[]).breaths(30).dry(&[2_000, 9_000, 17_000]);
    pass(&mut s, TaskId::Water90, "breathing.rate", Role::Slp);
    s.water(&[]).breaths(16);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
}

#[test]
fn what_the_mouth_showed_and_was_gone_past_is_told_though_it_was_taken_back() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::FullVisit).gate(&[]).breaths(16);
    s.dry(&[2_000, 9_000, 17_000])
        .examined(&[("voice.ah", "wet")]);
    pass(&mut s, TaskId::Water90, "oral.voice.ah", Role::Slp);
    s.water(&[]).examined(&[]);
    assert!(
        s.text().contains("needed for the assessment"),
        "{}",
        s.text()
    );
}

/// Drowsy, reasoned for, awake, drowsy again: the reason was for the first time.
#[test]
fn a_reason_at_the_gate_does_not_speak_for_the_same_state_come_again() {
    let mut s = adult(Role::Slp);
    s.gate(&[("awake", "drowsy")])
        .breaths(16)
        .dry(&[2_000, 9_000, 17_000]);
    pass(&mut s, TaskId::Water90, "gate.awake", Role::Slp);
    s.gate(&[]).gate(&[("awake", "drowsy")]);
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(
        held.iter().any(|h| h.id.starts_with("gate.awake")),
        "{held:?}"
    );
    // The same answer pressed once more is no new state.
    pass(&mut s, TaskId::Water90, "gate.awake", Role::Slp);
    s.gate(&[("awake", "drowsy")]);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
}

// --- Entries that can't be read -------------------------------------------------------------------

/// The start is lost: the signs of the trial are not.
#[test]
fn a_sign_in_a_trial_whose_start_cannot_be_read_counts() {
    for task in [TaskId::Own, TaskId::Sips, TaskId::TimedWater] {
        let mut s = ready(Role::Slp);
        s.open(task);
        lost(&mut s);
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
    lost(&mut s);
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
    lost(&mut s);
    s.say(Event::HelpCalled(at(5_000)))
        .say(Event::BackToBaseline(at(60_000)));
    assert_eq!(s.verdict(), Verdict::Stop, "{}", s.text());
}

/// What can't be read came after the decision: it may be a sign.
#[test]
fn the_list_does_not_keep_no_sign_seen_of_a_visit_with_an_unreadable_entry_since() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    decided(&mut s);
    assert_eq!(Head::of(&s.visit).verdict, "No sign seen");
    lost(&mut s);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert_ne!(Head::of(&s.visit).verdict, "No sign seen");
}

#[test]
fn unreadable_entries_are_told_in_a_full_text_beside_a_sign() {
    let mut s = long(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    lost(&mut s);
    let text = s.text();
    assert!(text.chars().count() < MOST, "{text}");
    assert!(text.contains("can't be read"), "{text}");
}

// --- What a text leaves out where it is long --------------------------------------------------------

/// A visit with much to tell.
fn long(role: Role) -> Script {
    let mut s = much_to_tell(role);
    s.breaths(22).dry(&[2_000, 9_000, 17_000]);
    s
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
    assert!(first_line(&s).contains("the doctor now"), "{text}");
    assert!(text.contains("89 %"), "{text}");
}

/// Several reasons to stop: the one that calls the doctor is never the one that is cut.
#[test]
fn the_reason_that_calls_the_doctor_is_told_before_other_stops() {
    let mut s = long(Role::Slp);
    s.dry(&[]).dry(&[]);
    timed(&mut s, 300_000, &[(Sign::NoSwallow, 1_000)], "clear");
    s.open(TaskId::Meal);
    s.mark(500_000, MarkKind::Start)
        .mark(520_000, MarkKind::Sign(Sign::BreathingChange))
        .mark(600_000, MarkKind::End);
    let text = s.text();
    assert!(first_line(&s).contains("the doctor now"), "{text}");
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
    timed(&mut t, 500_000, &[(Sign::ThroatClear, 2_000)], "clear");
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
        for hold in holds(TaskId::Own, &s.visit.exam) {
            s.say(Event::WentOn {
                hold: hold.id,
                because: format!("reason {n}: the team, the family and the person agreed to it"),
                by: Role::Slp,
                says: hold.says,
                ground: None,
            });
        }
    }
    for hold in holds(TaskId::Water90, &s.visit.exam) {
        s.say(Event::WentOn {
            hold: hold.id,
            because: "the team, the family and the person agreed to it".to_owned(),
            by: Role::Slp,
            says: hold.says,
            ground: None,
        });
    }
    s.water(&[(Sign::Cough, 64_000)]);
    let text = s.text();
    assert!(text.contains("coughed 64 seconds"), "{text}");
}

// --- The headline names the milder of two ------------------------------------------------------------

/// Glasses are to be put in; that saliva is not managed is why nothing may be given.
#[test]
fn what_blocks_gives_the_headline_before_what_can_be_put_right() {
    let mut s = adult(Role::Screener);
    s.gate(&[("aids", "no"), ("identity", "unsure"), ("saliva", "no")]);
    let head = first_line(&s);
    assert!(head.contains("aliva"), "{head}");
}

#[test]
fn a_clear_cup_with_a_throat_clear_is_not_told_as_without_a_sign() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::ThroatClear, 5_000)]);
    assert_eq!(s.verdict(), Verdict::Pass);
    for flag in s.visit.decision().unwrap().clear {
        assert!(!flag.reason().contains("no sign"), "{}", flag.reason());
    }
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Pause, 1_000)])
        .choose("own-level", "d0");
    for flag in s.visit.decision().unwrap().clear {
        assert!(!flag.reason().contains("no sign"), "{}", flag.reason());
    }
    let mut s = stepped(Role::Screener, 97);
    sips_given(&mut s, &mut |n, s| {
        if n == 5 {
            let from = 100_000 + 5 * 70_000;
            s.mark(from + 5_000, MarkKind::Sign(Sign::ThroatClear));
        }
    });
    for flag in s.visit.decision().unwrap().clear {
        assert!(!flag.reason().contains("no sign"), "{}", flag.reason());
    }
}

// --- A wet voice before a further one ------------------------------------------------------------------

/// A clear timed cup; before a second the voice is wet, and it is not given.
#[test]
fn a_wet_voice_before_a_further_cup_is_told() {
    for task in [TaskId::TimedWater, TaskId::Sips] {
        let mut s = ready(Role::Screener);
        s.water(&[]);
        match task {
            TaskId::TimedWater => timed(&mut s, 300_000, &[], "clear"),
            _ => {
                s.given(task, 300_000, &[]).number("sip", 10);
            }
        }
        s.open(task);
        s.choose("voice-before", "wet");
        assert_ne!(s.verdict(), Verdict::Pass, "{task:?}");
        assert!(found(&s).contains("oice wet"), "{task:?} {}", s.text());
    }
}

/// ... nor is it taken back by another that was opened and left.
#[test]
fn a_wet_voice_before_is_not_taken_back_by_one_that_was_opened() {
    for task in [TaskId::TimedWater, TaskId::Sips, TaskId::Water90] {
        let mut s = ready(Role::Screener);
        s.open(task);
        s.choose("voice-before", "wet").open(task);
        assert_ne!(s.verdict(), Verdict::Pass, "{task:?}");
        assert!(found(&s).contains("oice wet"), "{task:?} {}", s.text());
        let held = holds(task, &s.visit.exam);
        assert!(
            held.iter().any(|h| h.id.starts_with("water.wet-before")),
            "{task:?} {held:?}"
        );
    }
}

// --- Attached, and screens without a gate ---------------------------------------------------------------

/// A minute of breaths counted alone, attached to an examination of the mouth.
#[test]
fn failing_breathing_that_was_attached_goes_to_the_doctor_now() {
    let mut s = adult(Role::Slp);
    s.on(ScreenId::OralMotor);
    let mut marks = vec![(at(0), MarkKind::Start)];
    marks.extend((0..34).map(|n| (at(500 + n * 1_700), MarkKind::Tap)));
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
    let text = s.text();
    assert!(
        first_line(&s).contains("the doctor now") && text.contains("deterioration"),
        "{text}"
    );
}

// --- The text -------------------------------------------------------------------------------------------

/// "... in adults.." reads as a slip of the pen.
#[test]
fn no_sentence_ends_with_two_full_stops() {
    for age in [
        Age::Months(18),
        Age::Years(5),
        Age::Years(12),
        Age::Years(72),
    ] {
        for screen in ScreenId::ALL {
            let mut s = Script::new(age, Role::Screener);
            s.on(screen).gate(&[]).breaths(20);
            for text in [
                s.text(),
                penlight::handover::full_note::write(&s.visit, &clock("14:31")).unwrap(),
            ] {
                assert!(
                    !text.contains("..") && !text.contains(".;"),
                    "{age:?} {screen:?} {text}"
                );
            }
        }
    }
}

/// Broken off: what was counted and doubted before it is told all the same.
#[test]
fn what_was_missing_before_it_was_broken_off_is_told() {
    for end in [
        EndedEarly::BrokenOff,
        EndedEarly::Withdrew,
        EndedEarly::Refused,
    ] {
        let mut s = adult(Role::Screener);
        s.gate(&[])
            .breaths(16)
            .dry(&[])
            .choose("not-valid", "not-felt");
        s.say(Event::EndedEarly(end));
        assert!(s.text().contains("0 counted"), "{end:?} {}", s.text());
        // A cup that nobody watched to the end.
        let mut s = ready(Role::Screener);
        s.open(TaskId::Water90);
        s.choose("voice-before", "clear")
            .mark(100_000, MarkKind::Start)
            .mark(108_400, MarkKind::End)
            .choose("watch-cut", "called-away")
            .choose("cup", "one-go");
        s.say(Event::EndedEarly(end));
        let text = s.text();
        assert!(text.contains("ended early"), "{end:?} {text}");
    }
}

/// Levels, remark and "until review" never speak beside what forbids them.
#[test]
fn every_hold_of_the_gate_says_so_in_the_text_that_leaves() {
    for item in gate::ITEMS {
        for exception in item.exceptions {
            let mut s = ready(Role::Slp);
            s.water(&[]);
            s.gate(&[(item.id, exception.id)]);
            let says = penlight::wording::gate::exception(item, exception);
            let words = penlight::wording::words::small(says);
            assert!(
                s.text().contains(&words) || s.text().contains(says),
                "{} {}",
                says,
                s.text()
            );
        }
    }
    let _ = breathing::TYPED;
}

// --- Refused beside one that was given --------------------------------------------------------------------

/// "Not given? Did not want to", pressed while the trial before still stands on the page.
#[test]
fn a_refusal_said_beside_the_trial_before_is_told() {
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[]).choose("own-level", "d0");
    s.choose("not-valid", "refused");
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
    assert!(s.text().contains("did not want to"), "{}", s.text());
    for (task, screen) in [
        (TaskId::Sips, ScreenId::Stepped),
        (TaskId::TimedWater, ScreenId::Swallow),
    ] {
        let mut s = ready(Role::Screener);
        s.on(screen).water(&[]);
        match task {
            TaskId::TimedWater => timed(&mut s, 300_000, &[], "clear"),
            _ => {
                s.given(task, 300_000, &[]).number("sip", 3);
            }
        }
        s.choose("not-valid", "refused");
        assert_ne!(s.verdict(), Verdict::Pass, "{task:?}");
        assert!(
            s.text().contains("did not want to"),
            "{task:?} {}",
            s.text()
        );
    }
    // A cup that was given and said not to be given is no clear one.
    let mut s = ready(Role::Screener);
    s.water(&[]).choose("not-valid", "refused");
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
}

// --- Counts of dry swallows ---------------------------------------------------------------------------------

/// A finger that bounced: two touches no swallow can come between are not two swallows.
#[test]
fn a_touch_too_quick_for_a_swallow_does_not_make_three() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[2_000, 2_040, 17_000]);
    s.water(&[]);
    assert_ne!(s.verdict(), Verdict::Pass, "{}", s.text());
    assert!(!holds(TaskId::Water90, &s.visit.exam).is_empty());
    // Three besides are three.
    let mut s = adult(Role::Screener);
    s.gate(&[]).breaths(16).dry(&[2_000, 2_040, 9_000, 17_000]);
    s.water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass, "{}", s.text());
}

// --- The list at home ------------------------------------------------------------------------------------------

/// "Not done" is too little for an emergency, and somebody is to close it.
#[test]
fn an_emergency_is_one_in_the_list_until_it_is_closed() {
    let mut s = adult(Role::Screener);
    s.gate(&[("new-weakness", "new")]);
    decided(&mut s);
    let head = Head::of(&s.visit);
    assert_eq!((head.verdict.as_str(), head.unclosed), ("Emergency", true));
    s.say(Event::Closed("seen by the doctor".to_owned()));
    assert!(!Head::of(&s.visit).unclosed);
}

// --- Readings beside a sign --------------------------------------------------------------------------------------

/// REFER to the doctor now, by the breathing: however many reasons there were, it is named.
#[test]
fn failing_breathing_is_named_beside_a_sign_in_a_full_text() {
    let mut s = long(Role::Slp);
    for n in 0..6 {
        let from = 300_000 + n * 100_000;
        s.given(TaskId::Own, from, &[(Sign::Cough, 1_000)])
            .choose("own-level", "d2");
        for hold in holds(TaskId::Own, &s.visit.exam) {
            s.say(Event::WentOn {
                hold: hold.id,
                because: format!("reason {n}: the team, the family and the person agreed to it"),
                by: Role::Slp,
                says: hold.says,
                ground: None,
            });
        }
    }
    s.water(&[(Sign::Cough, 1_000)]).spo2(85).breaths(30);
    let text = s.text();
    assert!(first_line(&s).contains("the doctor now"), "{text}");
    assert!(found(&s).contains("30 a minute"), "{text}");
    assert!(found(&s).contains("85 %"), "{text}");
}

// --- Consent -------------------------------------------------------------------------------------------------------

/// Taken back after a clear cup: nothing says "no sign seen" at its top any more, and what was seen
/// is told.
#[test]
fn consent_taken_back_tells_what_was_seen_before() {
    let mut s = ready(Role::Screener);
    s.water(&[]).gate(&[("consent", "no")]);
    assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::GateClosed));
    assert!(s.text().contains("90 mL of water drunk"), "{}", s.text());
    assert!(
        holds(TaskId::Water90, &s.visit.exam)
            .iter()
            .any(|h| !h.go_on.open_to(Role::Slp))
    );
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, 1_000)]).gate(&[("consent", "no")]);
    assert!(s.text().starts_with("STOP"), "{}", s.text());
    assert!(found(&s).contains("no agreement"), "{}", s.text());
}

// --- Times -----------------------------------------------------------------------------------------------------------

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

/// "STOP", and beside it "later than the 60 seconds that count", would contradict each other.
#[test]
fn what_stops_whenever_it_was_seen_is_not_called_too_late() {
    for sign in [Sign::Choke, Sign::BreathingChange, Sign::NoSwallow] {
        let mut s = own_trials(Role::Slp);
        s.given(TaskId::Own, 100_000, &[(sign, 61_500)])
            .choose("own-level", "d0");
        assert_eq!(s.verdict(), Verdict::Stop);
        assert!(!s.text().contains("that count"), "{}", s.text());
    }
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::Cough, 61_500)])
        .choose("own-level", "d0");
    assert!(
        s.text()
            .contains("LATER: 0 Thin (given once): coughed 62 seconds"),
        "{}",
        s.text()
    );
}

// --- Tallies that are attached ----------------------------------------------------------------------------------

/// A choke at the table, help and its end noted there: they come along, in their place in time.
#[test]
fn an_attached_tally_brings_help_and_end_of_its_choking() {
    let tally = |s: &mut Script, since: i64| {
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
    let told = "choking: help called after 4 s, back to baseline after 1 min 0 s";
    assert!(s.text().contains(told), "{}", s.text());
    // One of the visit that was later stays the last, and a slip takes back that one.
    let mut s = ready(Role::Screener);
    s.say(Event::Choking(at(400_000)));
    tally(&mut s, 50_000);
    let told = "choked 2 times, the last time: help call not recorded, NOT back to baseline yet";
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
    let told = "choked 2 times, the last time: help call not recorded, back to baseline after 30 s \
                (before that: back to baseline not recorded)";
    assert!(s.text().contains(told), "{}", s.text());
}

/// Words to the ward under "no sign seen", and then a cough that is told and not counted.
#[test]
fn a_remark_made_before_a_late_cough_does_not_stand_after_it() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let decision = s.visit.decision().unwrap();
    s.say(Event::Plan(Plan {
        remark: "May have his tea now".to_owned(),
        ..action::standing(&decision, &s.visit.plan)
    }));
    assert!(s.text().contains("tea now"), "{}", s.text());
    s.mark(180_000, MarkKind::Sign(Sign::Cough));
    assert_eq!(s.verdict(), Verdict::Pass);
    let text = s.text();
    assert!(
        text.contains("coughed 72 seconds") && !text.contains("tea now"),
        "{text}"
    );
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
    timed(&mut s, 2_000_000, &[(Sign::Cough, 64_000)], "clear");
    s.number(saturation::LOWEST, 95);
    assert!(s.text().contains("coughed 64 seconds"), "{}", s.text());
}

/// What is typed ends as it may.
#[test]
fn a_reason_that_was_typed_with_a_full_stop_is_told_with_one() {
    let mut s = adult(Role::Slp);
    s.gate(&[("awake", "drowsy")])
        .breaths(16)
        .dry(&[2_000, 9_000]);
    for hold in holds(TaskId::Water90, &s.visit.exam) {
        s.say(Event::WentOn {
            hold: hold.id,
            because: " The team agreed. ".to_owned(),
            by: Role::Slp,
            says: hold.says,
            ground: None,
        });
    }
    s.water(&[]);
    let text = s.text();
    assert!(text.contains("the team agreed"), "{text}");
    assert!(
        !text.contains("..") && !text.contains(".;") && !text.contains(". ;"),
        "{text}"
    );
}

/// Thirty seconds at the first line: a cough that does not count was one all the same.
#[test]
fn the_headline_does_not_read_over_a_sign_that_decides_nothing() {
    for (sign, after, noted) in [
        (
            Sign::Cough,
            64_000,
            "NO SIGN within the 60 seconds; LATER: ",
        ),
        (Sign::ThroatClear, 5_000, "NO SIGN THAT REFERS; NOTED: "),
    ] {
        let mut s = ready(Role::Screener);
        s.water(&[(sign, after)]);
        assert_eq!(s.verdict(), Verdict::Pass);
        assert!(first_line(&s).starts_with(noted), "{}", s.text());
        assert!(found(&s).contains(sign.past()), "{}", s.text());
    }
    let mut s = own_trials(Role::Slp);
    s.given(TaskId::Own, 100_000, &[(Sign::ThroatClear, 1_000)])
        .choose("own-level", "d0");
    let noted = "NO SIGN THAT REFERS in what was given, listed below, and of nothing else; NOTED: ";
    assert!(first_line(&s).starts_with(noted), "{}", s.text());
    let mut s = ready(Role::Screener);
    s.water(&[]);
    assert!(
        first_line(&s).starts_with("NO SIGN SEEN on this screen. This"),
        "{}",
        s.text()
    );
}
