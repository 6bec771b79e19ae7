//! Sequences found by a fourth reading: what a text says of another day, answers that outlive the
//! moment they were given for, and words a nurse could take two ways.
//! What must hold is local policy unless a source is named.

#![allow(clippy::unwrap_used)]

use crate::support::bedside;
use crate::support::script;

use crate::support::in_the_way::holds;
use bedside::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate;
use penlight::clinical::findings::gate::{Group, HOLDS};
use penlight::clinical::findings::trial::{Answer, MarkKind};
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::breathing;
use penlight::clinical::tasks::by_mouth::lag;
use penlight::handover::nursing::{Clock, write};
use penlight::handover::{action, full_note, outdated};
use penlight::record::event::{Action, Event, Plan, Route, Text};
use script::*;

const MINUTE: i64 = 60_000;
const HOUR: i64 = 60 * MINUTE;
/// Nine o'clock on the next day, in minutes since the visit began.
const NEXT_DAY: i64 = 19 * 60;

fn text_at(s: &Script, now: &Clock) -> String {
    write(&s.visit, now).unwrap()
}

/// The nursing text leaves so many minutes after the visit began.
fn leaves(s: &mut Script, minutes: i64) -> String {
    let now = clock_after(minutes);
    let text = text_at(s, &now);
    let issued = Event::Issued {
        route: Route::Copied,
        text: text.clone(),
        clock: now.time,
        which: Text::Nursing,
    };
    s.say_at(at(minutes * MINUTE), issued);
    text
}

fn told_the_nurse(s: &mut Script, minutes: i64) {
    let told = Event::Told {
        whom: "the nurse in charge".to_owned(),
        read_back: true,
    };
    s.say_at(at(minutes * MINUTE), told);
}

/// A press of a trial, recorded when it was made.
fn mark_at(s: &mut Script, ms: i64, kind: MarkKind) {
    let (trial, at) = (s.trial, at(ms));
    s.say_at(at, Event::Mark { trial, at, kind });
}

// --- Another time, another day ------------------------------------------------------------------

/// The text of 14:31 lies on the ward; the visit is opened the next morning and nothing is pressed.
/// A correction that corrects nothing makes the next one unread.
#[test]
fn a_text_that_says_the_same_is_no_correction_on_the_next_day() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    leaves(&mut s, 31);
    told_the_nurse(&mut s, 32);
    let next = clock_after(NEXT_DAY);
    assert_eq!(outdated::outdated(&s.visit, &next), None);
    let text = text_at(&s, &next);
    assert!(!text.contains("CORRECTED"), "{text}");
}

/// "CORRECTED 09:00, replaces 14:31" reads as if the older text was the newer one.
#[test]
fn a_correction_of_a_text_of_another_day_names_that_day() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    leaves(&mut s, 31);
    told_the_nurse(&mut s, 32);
    s.mark(120_000, MarkKind::Sign(Sign::Cough));
    let text = text_at(&s, &clock_after(NEXT_DAY));
    let first = "CORRECTED 09:00 on 26 Nov 2026, replaces 14:31 on 25 Nov 2026.\nREFER";
    assert!(text.starts_with(first), "{text}");
    let who = "The nurse in charge (text of 14:31 on 25 Nov 2026): what was told no longer stands. \
               Tell again.";
    assert_eq!(
        outdated::outdated(&s.visit, &clock_after(NEXT_DAY)).as_deref(),
        Some(who)
    );
    // The same minute of another day is another text.
    leaves(&mut s, 31 + 24 * 60);
    let told = outdated::outdated(&s.visit, &clock_after(32 + 24 * 60));
    assert_eq!(told.as_deref(), Some(who));
}

/// Drunk at 14:01, handed over the next morning: nothing in the text said that it was not today.
#[test]
fn a_text_that_is_written_later_says_when_swallowing_was_tested() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    assert!(!s.text().contains("tested"), "{}", s.text());
    let text = text_at(&s, &clock_after(NEXT_DAY));
    for words in [
        "swallowing was tested at 14:01 on 25 Nov 2026",
        "can cough (asked at 14:00 on 25 Nov 2026)",
        "at 14:00 on 25 Nov 2026",
    ] {
        assert!(text.contains(words), "{words}\n{text}");
    }
    let note = full_note::write(&s.visit, &clock_after(NEXT_DAY)).unwrap();
    let words = "wallowing was tested at 14:01 on 25 Nov 2026";
    assert!(note.contains(words), "{note}");
}

/// The first cup in the evening, the second in the morning: both read as of one moment.
#[test]
fn trials_of_two_days_are_told_with_both_times() {
    let mut s = ready(Role::Slp);
    s.water(&[(Sign::Cough, 1_000)]);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    let later = 19 * HOUR;
    mark_at(&mut s, later, MarkKind::Start);
    mark_at(&mut s, later + 8_000, MarkKind::End);
    mark_at(&mut s, later + 68_030, MarkKind::WatchOver);
    s.choose("cup", "one-go").choose("voice-after", "clear");
    let text = text_at(&s, &clock_after(NEXT_DAY + 5));
    let words = "swallowing was tested between 14:01 on 25 Nov 2026 and 09:00";
    assert!(text.contains(words), "{text}");
}

/// Where nothing was given, what was looked at is as old as it is.
#[test]
fn what_was_looked_at_long_before_the_text_says_so() {
    let mut s = adult(Role::Screener);
    s.gate(&[("airway-tube", "tracheostomy")]);
    let text = text_at(&s, &clock_after(NEXT_DAY));
    let words = "nothing was looked at since 14:00 on 25 Nov 2026";
    assert!(text.contains(words), "{text}");
    assert!(!s.text().contains("looked at"), "{}", s.text());
}

/// "NOT back to baseline yet" of yesterday is not of now.
#[test]
fn a_choking_of_long_ago_is_told_with_its_time() {
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Choke, -2_000)]);
    s.say(Event::Choking(at(106_400)));
    s.plan(Action::NothingByMouth, "");
    assert!(s.text().contains("choking: help"), "{}", s.text());
    let text = text_at(&s, &clock_after(NEXT_DAY));
    let words = "choking at 14:01 on 25 Nov 2026: help call not recorded";
    assert!(text.contains(words), "{text}");
}

// --- The full note ------------------------------------------------------------------------------

/// A cough, then the person wanted to stop; a break of half an hour: only the ward was told.
#[test]
fn the_full_note_tells_ends_and_breaks_as_the_nursing_text_does() {
    let mut s = ready(Role::Slp);
    s.say_at(at(MINUTE), Event::EndedEarly(EndedEarly::BrokenOff));
    s.say_at(at(31 * MINUTE), Event::TakenUpAgain);
    s.water(&[(Sign::Cough, 1_000)]);
    s.say(Event::EndedEarly(EndedEarly::Withdrew));
    let note = full_note::write(&s.visit, &clock("14:40")).unwrap();
    for words in [
        "he person wanted to stop",
        "roken off by the clinician at 14:01, taken up again at 14:31",
    ] {
        assert!(s.text().contains(words), "{words}\n{}", s.text());
        assert!(note.contains(words), "{words}\n{note}");
    }
}

// --- Answers that outlive their moment ----------------------------------------------------------

fn asked_again(s: &mut Script, groups: &[Group], ms: i64) {
    for group in groups {
        let items = group.items();
        let answers = items.map(|item| (item.id.to_owned(), HOLDS.to_owned()));
        s.say_at(at(ms), Event::Gate(answers.collect()));
    }
}

fn answer_at(s: &mut Script, ms: i64, question: &str, answer: Answer) {
    let (trial, question) = (s.trial, question.to_owned());
    let answer = Some(answer);
    let event = Event::Answer {
        trial,
        question,
        answer,
    };
    s.say_at(at(ms), event);
}

fn counted_at(s: &mut Script, ms: i64) {
    s.open(TaskId::Breathing);
    answer_at(s, ms, breathing::TYPED, Answer::Tenths(160));
}

fn old(s: &Script, task: TaskId) -> Vec<String> {
    let held = holds(task, &s.visit.exam).into_iter();
    let old = held.filter(|h| h.id.starts_with("old."));
    old.map(|h| h.says).collect()
}

/// In the night the person got a mask, and the surgeon an order of nothing by mouth. In the morning
/// only "Ready now" and the breaths were asked before the water.
#[test]
fn orders_and_airway_of_yesterday_are_asked_again_before_the_water() {
    let mut s = ready(Role::Screener);
    let morning = 19 * HOUR;
    asked_again(&mut s, &[Group::Ready], morning);
    counted_at(&mut s, morning);
    assert_eq!(
        old(&s, TaskId::Water90),
        [
            "\"The person\" was asked more than 8 hours ago",
            "\"Orders and limits\" was asked more than 8 hours ago",
            "\"Airway and chest\" was asked more than 60 minutes ago",
        ]
    );
    asked_again(&mut s, &Group::ALL[..3], morning);
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Whoever gave it all the same clears nobody.
#[test]
fn water_on_orders_of_yesterday_is_not_clear() {
    let mut s = ready(Role::Screener);
    let morning = 19 * HOUR;
    asked_again(&mut s, &[Group::Ready], morning);
    counted_at(&mut s, morning);
    s.open(TaskId::Water90);
    answer_at(&mut s, morning, "voice-before", clear());
    mark_at(&mut s, morning, MarkKind::Start);
    mark_at(&mut s, morning + 8_000, MarkKind::End);
    mark_at(&mut s, morning + 68_030, MarkKind::WatchOver);
    s.choose("cup", "one-go").choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Incomplete);
    let text = text_at(&s, &clock_after(NEXT_DAY + 5));
    let words = "given on answers that were missing or too old: \"The person\", \"Orders and limits\", \
                 \"Airway and chest\"";
    assert!(text.contains(words), "{text}");
}

fn clear() -> Answer {
    Answer::Choice("clear".to_owned())
}

/// The voice before the water was heard, then the clinician was called away; "clear before" in the
/// text was of two hours ago, and a voice that had turned wet meanwhile was no change.
#[test]
fn a_voice_that_was_heard_before_a_break_is_heard_again() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    answer_at(&mut s, 2 * MINUTE, "voice-before", clear());
    let water = s.trial;
    let later = 2 * HOUR;
    asked_again(&mut s, &Group::ALL, later);
    counted_at(&mut s, later);
    assert_eq!(
        old(&s, TaskId::Water90),
        ["The voice was heard more than 60 minutes ago"]
    );
    let held = holds(TaskId::Water90, &s.visit.exam);
    assert!(held[0].id.starts_with(&format!("old.voice.{water}.")));
    s.trial = water;
    answer_at(&mut s, later, "voice-before", clear());
    assert!(holds(TaskId::Water90, &s.visit.exam).is_empty());
}

/// Small sips in the evening: in the morning their voices were taken over as heard before the next
/// sip and before the cup.
#[test]
fn no_voice_of_yesterday_is_taken_over() {
    let voice = |s: &Script, task| {
        let taken = tasks::taken_over(task, &s.visit.exam);
        taken.into_iter().any(|(id, _)| id == "voice-before")
    };
    let mut s = stepped(Role::Slp, 97);
    sips_given(&mut s, &mut |_, _| {});
    for task in [TaskId::Sips, TaskId::Water90, TaskId::TimedWater] {
        assert!(voice(&s, task), "{task:?}");
    }
    asked_again(&mut s, &Group::ALL, 19 * HOUR);
    for task in [TaskId::Sips, TaskId::Water90, TaskId::TimedWater] {
        assert!(!voice(&s, task), "{task:?}");
    }
    // Heard once, it stands for the sips of this morning.
    s.open(TaskId::Sips);
    answer_at(&mut s, 19 * HOUR, "voice-before", clear());
    mark_at(&mut s, 19 * HOUR + MINUTE, MarkKind::Start);
    mark_at(&mut s, 19 * HOUR + MINUTE + 2_000, MarkKind::End);
    assert!(voice(&s, TaskId::Sips));
}

// --- Words of signs -----------------------------------------------------------------------------

/// A change of breathing 61 seconds after the swallow stops whatever its time; the page said
/// "told, not counted" of it.
#[test]
fn what_stops_whenever_it_comes_is_not_called_uncounted() {
    for task in [TaskId::Water90, TaskId::Own] {
        for sign in [Sign::BreathingChange, Sign::NoSwallow, Sign::Choke] {
            let mut s = ready(Role::Screener);
            s.given(task, 100_000, &[(sign, 61_000)]);
            assert_eq!(s.verdict(), Verdict::Stop, "{sign:?}");
            let near = s.visit.exam.trials.iter().flat_map(lag::near);
            assert_eq!(near.count(), 0, "{sign:?}");
        }
    }
    let mut s = ready(Role::Screener);
    s.water(&[(Sign::Cough, 61_000)]);
    let near = s.visit.exam.trials.iter().flat_map(lag::near);
    assert_eq!(near.count(), 1);
}

// --- The nurse at night -------------------------------------------------------------------------

/// Fasting for an operation; the screen was given all the same, or not. "Until assessed" and "no
/// sign seen" both read as if food may be given afterwards.
#[test]
fn an_order_of_nothing_by_mouth_for_another_reason_stands_above_everything() {
    let stands = "Nothing by mouth for another reason: that order stands.";
    let mut s = much_to_tell(Role::Slp);
    let order = ("nothing-by-mouth".to_owned(), "other-reason".to_owned());
    s.say(Event::Gate(vec![order]));
    let above = |s: &Script| s.text().split("\n\n").next().unwrap().to_owned();
    for action in [Action::NothingByMouth, Action::KeepPlan] {
        s.plan(action, "the doctor decided so");
        assert!(above(&s).contains(stands), "{}", s.text());
    }
    pass(&mut s, TaskId::Water90, "gate.nothing", Role::Slp);
    s.spo2(97).dry(&[2_000, 9_000, 17_000]).water(&[]);
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(above(&s).contains(stands), "{}", s.text());
    let note = full_note::write(&s.visit, &clock("14:31")).unwrap();
    assert!(note.contains(stands), "{note}");
    assert!(!ready(Role::Slp).text().contains(stands));
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

/// Tablets are held in an emergency too; a dose against fits is not to be forgotten in it.
#[test]
fn an_emergency_does_not_forget_medicines_that_cannot_wait() {
    let mut s = ready(Role::Screener);
    let new = ("new-weakness".to_owned(), "new".to_owned());
    s.say(Event::Gate(vec![new]));
    let text = s.text();
    let medicines = "Time-critical medicines: ask the prescriber now for another route.";
    assert!(text.contains(medicines), "{text}");
}

/// Forty of 150 mL with a cough, then a second cup: the text knew of the second alone.
#[test]
fn each_timed_cup_is_told() {
    let mut s = ready(Role::Slp);
    timed(&mut s, 100_000, &[(Sign::Cough, 1_000)], "clear");
    s.choose("cup-left", "some-left").number("cup-left-ml", 60);
    timed(&mut s, 400_000, &[], "clear");
    let words = "timed cup of water: 40 of 100 mL drunk, slowly (by itself no sign of aspiration), then \
                 100 of 100 mL drunk";
    assert!(s.text().contains(words), "{}", s.text());
}

/// The age was put right to one year after the cup: "is not given under 2 years" beside a cup that
/// was drunk read as if it had not been.
#[test]
fn water_that_was_given_to_a_child_it_is_not_meant_for_is_said_to_be_given() {
    let mut s = ready(Role::Screener);
    s.water(&[]);
    let mut details = s.visit.details.clone().unwrap();
    details.age = Some(Age::Years(1));
    s.say(Event::Details(details));
    let text = s.text();
    let words = "90 mL of water was given, though it is not meant for anybody under 2 years";
    assert!(text.contains(words), "{text}");
}

/// "... fit the local chart for this age?."
#[test]
fn a_question_ends_as_one() {
    let mut s = Script::new(Age::Years(8), Role::Screener);
    s.gate(&[]).breaths(16).water(&[]);
    assert!(s.text().contains("for this age?"), "{}", s.text());
    assert!(!s.text().contains("?."), "{}", s.text());
}

// --- What is taken back -------------------------------------------------------------------------

fn undone_at(s: &mut Script, ms: i64) {
    let trial = s.trial;
    s.say_at(at(ms), Event::Undo { trial });
}

/// A cough at 14:01; twenty minutes later, after a reload, a thumb on "Undo: cough". The visit read
/// "no sign seen" and nothing told of it.
#[test]
fn a_sign_that_is_taken_back_long_after_its_press_is_told() {
    let cough_in = |task| {
        let mut s = ready(Role::Slp);
        match task {
            TaskId::Water90 => s.water(&[(Sign::Cough, 1_000)]),
            _ => s
                .given(task, 100_000, &[(Sign::Cough, 1_000)])
                .choose("own-level", "d0"),
        };
        s
    };
    for task in [TaskId::Water90, TaskId::Own] {
        let mut s = cough_in(task);
        undone_at(&mut s, 22 * MINUTE);
        if task == TaskId::Own {
            s.water(&[]);
        }
        assert_eq!(s.verdict(), Verdict::Pass);
        let text = s.text();
        let words = "coughed: pressed, and taken back 20 minutes later";
        assert!(text.starts_with("NO SIGN THAT REFERS"), "{text}");
        assert!(text.contains(words), "{text}");
        let of = if task == TaskId::Water90 {
            "90 mL of water drunk in one go in 8 seconds, no sign"
        } else {
            "0 Thin: given once, no sign"
        };
        assert!(!text.contains(of), "{text}");
        // At once it was a slip.
        let mut s = cough_in(task);
        undone_at(&mut s, 2 * MINUTE);
        assert!(!s.text().contains("taken back"), "{}", s.text());
    }
}

/// The cup was given, and only then somebody looked at the questions before it.
#[test]
fn water_given_before_it_was_asked_clears_nobody() {
    let mut s = adult(Role::Screener);
    s.breaths(16).dry(&[2_000, 9_000, 17_000]).water(&[]);
    s.gate(&[]);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    let words = "given on answers that were missing or too old: \"The person\", \
                 \"Orders and limits\", \"Airway and chest\", \"Ready now\"";
    assert!(s.text().contains(words), "{}", s.text());
}

/// Swallow taps are welcome and not needed: without them the ward read "no swallow".
#[test]
fn swallows_that_nobody_tapped_are_not_called_none() {
    let mut s = ready(Role::Screener);
    s.open(TaskId::Water90);
    s.choose("voice-before", "clear");
    s.mark(100_000, MarkKind::Start)
        .mark(108_400, MarkKind::End);
    assert!(!s.text().contains("no swallow"), "{}", s.text());
    assert!(s.text().contains("swallows not counted"), "{}", s.text());
}

/// Fasting for an operation, the clinician's levels from an earlier plan beside it: a nurse reads
/// what may be drunk.
#[test]
fn no_level_stands_beside_an_order_to_fast() {
    let mut s = adult(Role::Slp);
    let order = ("nothing-by-mouth", "other-reason");
    s.gate(&[order]);
    let levels = |s: &Script| {
        let basis = action::standing(&s.visit.decision().unwrap(), &Plan::default());
        Event::Plan(Plan {
            action: Some(Action::KeepPlan),
            because: "the doctor decided so".to_owned(),
            drink: Some(2),
            food: Some(5),
            ..basis
        })
    };
    let plan = levels(&s);
    s.say(plan);
    assert!(!s.text().contains("level"), "{}", s.text());
    assert!(!s.text().contains("what that plan allows"), "{}", s.text());
    pass(&mut s, TaskId::Water90, "gate.nothing", Role::Slp);
    s.breaths(16).dry(&[2_000, 9_000, 17_000]).water(&[]);
    let plan = levels(&s);
    s.say(plan);
    assert_eq!(s.verdict(), Verdict::Pass);
    assert!(!s.text().contains("level"), "{}", s.text());
    assert!(!s.text().contains("food and drink"), "{}", s.text());
}

/// Gone on although drowsy, at two; drowsy still at five: that is another decision.
#[test]
fn a_reason_for_a_state_of_the_moment_does_not_speak_hours_later() {
    let states = [
        (Group::Ready, "awake", "drowsy"),
        (Group::Airway, "distress", "distress"),
    ];
    for (group, item, state) in states {
        let mut s = adult(Role::Slp);
        s.gate(&[(item, state)]);
        pass(&mut s, TaskId::Own, "gate.", Role::Slp);
        s.breaths(16).dry(&[2_000, 9_000, 17_000]);
        let held = |s: &Script| {
            let held = holds(TaskId::Own, &s.visit.exam);
            held.iter().any(|h| h.id.starts_with("gate."))
        };
        let still = |ms, s: &mut Script| {
            let answer = |i: &gate::Item| if i.id == item { state } else { HOLDS };
            let answers = group
                .items()
                .map(|i| (i.id.to_owned(), answer(i).to_owned()));
            s.say_at(at(ms), Event::Gate(answers.collect()));
        };
        still(20 * MINUTE, &mut s);
        assert!(!held(&s), "{item}");
        still(3 * HOUR, &mut s);
        assert!(held(&s), "{item}");
        pass(&mut s, TaskId::Own, "gate.", Role::Slp);
        assert!(!held(&s), "{item}");
    }
    // A tube in the airway is what it was.
    let mut s = adult(Role::Slp);
    s.gate(&[("airway-tube", "tracheostomy")]);
    pass(&mut s, TaskId::Own, "gate.", Role::Slp);
    let tube = ("airway-tube".to_owned(), "tracheostomy".to_owned());
    s.say_at(at(3 * HOUR), Event::Gate(vec![tube]));
    assert!(s.visit.exam.went_on.iter().all(|on| !on.lapsed));
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

/// "Upright" of somebody who cannot be raised: a nurse at night raises him all the same, or stops
/// reading.
#[test]
fn nobody_is_told_to_sit_somebody_up_who_cannot_be_raised() {
    for (state, gone_past) in [("flat", false), ("flat", true), ("part", false)] {
        let mut s = adult(Role::Slp);
        s.gate(&[("upright", state)]);
        if gone_past {
            pass(&mut s, TaskId::Water90, "gate.", Role::Slp);
        }
        s.breaths(16).dry(&[2_000, 9_000, 17_000]);
        if gone_past || state == "part" {
            s.water(&[]);
        }
        let text = s.text();
        let advice = text.split("Recommendation:").nth(1).unwrap();
        assert!(advice.contains("as upright as tolerated"), "{text}");
    }
}
