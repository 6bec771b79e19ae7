//! How old an answer may be: a screen that was left and taken up again, or that simply lasts.
//! What was asked before is as old as it is.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::Group;
use penlight::clinical::findings::gate::HOLDS;
use penlight::clinical::findings::gate::ITEMS;
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::findings::trial::Answer;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breathing;
use penlight::measure::time::Millis;
use penlight::measure::time::PageLife;
use penlight::measure::time::Stamp;
use penlight::record::event::Event;

const WATER: TaskId = TaskId::Water90;

fn old(held: &[Hold]) -> Vec<&str> {
    let old = held.iter().filter(|h| h.id.starts_with("old."));
    old.map(|h| h.says.as_str()).collect()
}

fn held(s: &Scene) -> Vec<Hold> {
    holds(WATER, &s.visit.exam)
}

/// Gate, breaths and dry swallows at 14:00, broken off at 14:01, taken up so long after it.
fn taken_up(role: Role, after: i64) -> Scene {
    let mut s = ready(role);
    s.say_at(at(MINUTE), Event::EndedEarly(EndedEarly::BrokenOff));
    s.say_at(at(MINUTE + after), Event::TakenUpAgain);
    s
}

/// Everything before the start is asked again.
fn ready_again(s: &mut Scene, when: Stamp) {
    let answers = ITEMS
        .iter()
        .map(|item| (item.id.to_owned(), HOLDS.to_owned()));
    s.say_at(when, Event::Gate(answers.collect()));
}

fn breaths_again(s: &mut Scene, when: Stamp) {
    let trial = s.visit.next_trial();
    let opened = Event::TrialOpened {
        trial,
        task: TaskId::Breathing,
        length: None,
    };
    s.say_at(when, opened);
    // Begun to be counted, then entered: what is no trial by mouth is begun on any answers.
    s.say_at(
        when,
        Event::Mark {
            trial,
            at: when,
            kind: MarkKind::Start,
        },
    );
    let answer = Event::Answer {
        trial,
        question: breathing::TYPED.to_owned(),
        answer: Some(Answer::Tenths(180)),
    };
    s.say_at(when, answer);
}

/// The cup of 90 mL from this moment on, without a sign.
fn cup(s: &mut Scene, from: i64) {
    let trial = s.open(WATER);
    s.choose("voice-before", "clear");
    for (ms, kind) in [
        (0, MarkKind::Start),
        (8_400, MarkKind::End),
        (68_430, MarkKind::WatchOver),
    ] {
        let at = at(from + ms);
        s.say_at(at, Event::Mark { trial, at, kind });
    }
    s.choose("cup", "one-go").choose("voice-after", "clear");
}

#[test]
fn after_a_short_break_nothing_is_asked_again() {
    let mut s = taken_up(Role::Screener, 30 * MINUTE);
    assert!(held(&s).is_empty(), "{:?}", held(&s));
    cup(&mut s, 32 * MINUTE);
    assert_eq!(s.verdict(), Verdict::Pass);
    let text = s.text();
    let words = "broken off by the clinician at 14:01, taken up again at 14:31";
    assert!(text.contains(words), "{text}");
    assert!(!text.contains("asked at"), "{text}");
}

#[test]
fn readiness_is_a_state_of_the_moment() {
    let says = [
        "\"The person\" was asked more than 8 hours ago",
        "\"Orders and limits\" was asked more than 8 hours ago",
        "\"Airway and chest\" was asked more than 60 minutes ago",
        "\"Ready now\" was asked more than 60 minutes ago",
        "Breaths were counted more than 60 minutes ago",
    ];
    for (after, says) in [(90 * MINUTE, &says[2..]), (20 * HOUR, &says[..])] {
        let s = taken_up(Role::Screener, after);
        let held = held(&s);
        assert_eq!(old(&held), says);
        let (breaths, asked) = held.split_last().unwrap();
        assert!(asked.iter().all(|hold| hold.go_on == GoOn::Never));
        assert_eq!(breaths.go_on, GoOn::SlpWithReason);
        // Nothing by mouth, nothing in the way.
        assert!(holds(TaskId::DrySwallow, &s.visit.exam).is_empty());
        for task in [TaskId::Sips, TaskId::Own, TaskId::TimedWater] {
            assert_eq!(old(&holds(task, &s.visit.exam)), says);
        }
    }
}

#[test]
fn asked_again_the_water_is_free_and_old_findings_carry_their_time() {
    let mut s = taken_up(Role::Screener, 90 * MINUTE);
    let now = at(92 * MINUTE);
    ready_again(&mut s, now);
    assert_eq!(old(&held(&s)).len(), 1);
    breaths_again(&mut s, now);
    assert!(held(&s).is_empty(), "{:?}", held(&s));
    cup(&mut s, 94 * MINUTE);
    assert_eq!(s.verdict(), Verdict::Pass);
    let text = s.text();
    for words in [
        "broken off by the clinician at 14:01, taken up again at 15:31",
        "breathing 16 a minute (counted elsewhere) at 14:00, then breathing 18 a minute (counted elsewhere)",
        "dry swallows counted at 14:00",
    ] {
        assert!(text.contains(words), "{words}\n{text}");
    }
    assert!(!text.contains("asked at"), "{text}");
}

#[test]
fn another_day_is_named() {
    let mut s = taken_up(Role::Screener, 20 * HOUR);
    ready_again(&mut s, at(20 * HOUR + 2 * MINUTE));
    breaths_again(&mut s, at(20 * HOUR + 2 * MINUTE));
    cup(&mut s, 20 * HOUR + 4 * MINUTE);
    let text = s.text();
    let words = "broken off by the clinician at 14:01, taken up again at 10:01 on 26 Nov 2026";
    assert!(text.contains(words), "{text}");
}

#[test]
fn given_on_old_answers_all_the_same_it_clears_nothing() {
    let mut s = taken_up(Role::Screener, 20 * HOUR);
    cup(&mut s, 20 * HOUR + 4 * MINUTE);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    let text = s.text();
    for words in [
        "given on answers that were missing or too old: \"The person\", \"Orders and limits\", \"Airway and \
         chest\", \"Ready now\", breaths",
        "breathing 16 a minute (counted elsewhere) at 14:00",
    ] {
        assert!(text.contains(words), "{words}\n{text}");
    }
    // What is asked only now does not mend it.
    ready_again(&mut s, at(21 * HOUR));
    breaths_again(&mut s, at(21 * HOUR));
    assert_eq!(s.verdict(), Verdict::Incomplete);
}

#[test]
fn without_a_break_time_passes_as_well() {
    let s = ready(Role::Slp);
    let now = |ms| s.visit.exam.now.next(at(ms));
    assert!(old(&holds_at(WATER, &s.visit.exam, now(60 * MINUTE))).is_empty());
    assert_eq!(
        old(&holds_at(WATER, &s.visit.exam, now(61 * MINUTE))).len(),
        3
    );
}

#[test]
fn a_reason_for_old_breaths_speaks_for_these_alone() {
    let mut s = taken_up(Role::Slp, 2 * HOUR);
    ready_again(&mut s, at(2 * HOUR + MINUTE));
    s.pass(WATER, "old.breath", Role::Slp);
    assert!(held(&s).is_empty());
    breaths_again(&mut s, at(2 * HOUR + MINUTE));
    let later = s.visit.exam.now.next(at(4 * HOUR));
    assert_eq!(old(&holds_at(WATER, &s.visit.exam, later)).len(), 3);
}

#[test]
fn an_old_saturation_is_read_again_or_somebody_says_why_not() {
    let mut s = adult(Role::Screener);
    s.gate(&[]).spo2(97).dry(&[2_000, 9_000, 17_000]);
    let now = at(2 * HOUR);
    ready_again(&mut s, now);
    breaths_again(&mut s, now);
    assert_eq!(old(&held(&s)), ["SpO2 was read more than 60 minutes ago"]);
    s.pass(WATER, "old.breath-spo2", Role::Screener);
    assert!(held(&s).is_empty());
}

/// After a restart only the wall clock tells, and it may have been set back.
#[test]
fn a_clock_that_jumps_back_makes_nothing_fresh() {
    let life = |life, wall| Stamp {
        life: PageLife(life),
        mono: Millis(5),
        wall: Millis(at(0).wall.0 + wall),
    };
    // Back before the answers, or back between them and the newest event.
    for wall in [-HOUR, 40 * MINUTE] {
        let mut s = ready(Role::Screener);
        s.say_at(at(50 * MINUTE), Event::EndedEarly(EndedEarly::BrokenOff));
        s.say_at(life(8, wall), Event::TakenUpAgain);
        let held = held(&s);
        assert_eq!(
            old(&held)[3],
            "\"Ready now\" was asked at a time that is not known"
        );
        // The four of the gate, and the breaths.
        assert_eq!(old(&held).len(), 5);
        ready_again(&mut s, life(8, wall + MINUTE));
        breaths_again(&mut s, life(8, wall + MINUTE));
        assert!(old(&self::held(&s)).is_empty());
    }
    // Set back while it was open: what the stopwatch saw counts, and a sleep may hide in it.
    let mut s = ready(Role::Screener);
    let back = Stamp {
        wall: Millis(at(0).wall.0 - HOUR),
        ..at(2 * MINUTE)
    };
    s.say_at(back, Event::TakenUpAgain);
    assert_eq!(old(&held(&s)).len(), 5);
    // Two restarts, two hours in all, the clock set back by one of them in between.
    let mut s = ready(Role::Screener);
    s.say_at(life(8, 70 * MINUTE), Event::Role(Role::Screener));
    s.say_at(life(9, 10 * MINUTE), Event::Role(Role::Screener));
    assert_eq!(old(&held(&s)).len(), 5);
}

/// A group is as old as its oldest answer, whichever was asked again.
#[test]
fn one_line_asked_again_does_not_make_its_page_fresh() {
    for group in Group::ALL {
        for item in group.items() {
            let mut s = ready(Role::Screener);
            let again = Event::Gate(vec![(item.id.to_owned(), HOLDS.to_owned())]);
            s.say_at(at(8 * HOUR), again);
            s.say_at(at(8 * HOUR + MINUTE), Event::Role(Role::Screener));
            assert_eq!(old(&held(&s)).len(), 5, "{}", item.id);
        }
    }
}

/// A clock that was put right by up to a minute hides no sleep; by more it may.
#[test]
fn a_clock_that_is_put_right_by_a_minute_hides_nothing() {
    for (by, asked) in [(60_000, 0), (60_001, 5)] {
        let mut s = ready(Role::Screener);
        let back = Stamp {
            wall: Millis(at(2 * MINUTE).wall.0 - by),
            ..at(2 * MINUTE)
        };
        s.say_at(back, Event::TakenUpAgain);
        assert_eq!(old(&held(&s)).len(), asked, "{by}");
    }
}

/// A stamp that was taken before the one written first makes nothing younger.
#[test]
fn events_out_of_order_make_nothing_fresh() {
    let mut s = ready(Role::Screener);
    for minute in [30, 29, 61] {
        s.say_at(at(minute * MINUTE), Event::Role(Role::Screener));
    }
    assert_eq!(old(&held(&s)).len(), 3);
}

/// Counted elsewhere, breaths are as old as their own start, not as the press that attached them.
#[test]
fn breaths_that_were_attached_are_as_old_as_they_are() {
    let breaths = |start: Option<Stamp>| {
        let mut s = adult(Role::Screener);
        let answers = ITEMS.iter().map(|i| (i.id.to_owned(), HOLDS.to_owned()));
        s.say_at(at(3 * HOUR), Event::Gate(answers.collect()));
        let attached = Event::Attached {
            from: s.visit.id.clone(),
            trial: s.visit.next_trial(),
            task: TaskId::Breathing,
            length: None,
            marks: start.map(|at| (at, MarkKind::Start)).into_iter().collect(),
            hidden: Vec::new(),
            answers: vec![(breathing::TYPED.to_owned(), Answer::Tenths(160))],
            chokings: Vec::new(),
        };
        s.say_at(at(3 * HOUR), attached);
        s
    };
    let ago = |length| Some(at(3 * HOUR - length));
    for (start, says) in [
        (ago(10 * MINUTE), None),
        (ago(60 * MINUTE), None),
        (
            ago(60 * MINUTE + 1),
            Some("Breaths were counted more than 60 minutes ago"),
        ),
        // By a clock that says later than now, or by none, nobody knows.
        (
            ago(-MINUTE),
            Some("Breaths were counted at a time that is not known"),
        ),
        (
            None,
            Some("Breaths were counted at a time that is not known"),
        ),
    ] {
        assert_eq!(old(&held(&breaths(start))), Vec::from_iter(says));
    }
    // They go on ageing from there.
    let mut s = breaths(ago(10 * MINUTE));
    s.say_at(at(3 * HOUR + 50 * MINUTE), Event::Role(Role::Screener));
    assert!(old(&held(&s)).is_empty());
    s.say_at(at(3 * HOUR + 50 * MINUTE + 1), Event::Role(Role::Screener));
    assert_eq!(
        old(&held(&s)),
        ["Breaths were counted more than 60 minutes ago"]
    );
}

#[test]
fn the_policy_says_how_long() {
    let policy = Policy {
        ready_minutes: 15,
        ..Policy::default()
    };
    let mut s = Scene::under(policy, Age::Years(72), Role::Screener);
    s.gate(&[]).breaths(16).dry(&[2_000, 9_000, 17_000]);
    s.say_at(at(16 * MINUTE), Event::Role(Role::Screener));
    let held = held(&s);
    assert_eq!(
        old(&held)[1],
        "\"Ready now\" was asked more than 15 minutes ago"
    );
}
