//! A screen that is ended while something runs: what was swallowed is watched where somebody stays
//! to see it, and nothing is counted on behind an ended screen.
//!
//! The watch of 60 seconds after the last swallow is the published rule's (SL08); that a trial cut
//! short clears nobody is local policy.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::EndedEarly;
use penlight::clinical::findings::gate::HOLDS;
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::oral::flags::WEAKNESS;
use penlight::clinical::tasks::spec::Phase;
use penlight::clinical::tasks::{self, breathing, cracker, timed_water};
use penlight::measure::time::Millis;
use penlight::record::event::Event;

const WATER: TaskId = TaskId::Water90;

/// Ends the screen as the page does.
fn end(s: &mut Scene, why: EndedEarly, ms: i64) {
    for event in s.visit.ending(why, at(ms)) {
        s.say_at(at(ms), event);
    }
}

fn phase(s: &Scene, task: TaskId, ms: i64) -> Phase {
    tasks::spec(task).phase(newest(s, task), at(ms))
}

fn newest(s: &Scene, task: TaskId) -> &Trial {
    s.visit.exam.latest(task).unwrap()
}

/// What has come due by a moment is recorded, as the page does.
fn settle(s: &mut Scene, task: TaskId, ms: i64) {
    let trial = newest(s, task);
    let (number, due) = (trial.number, tasks::spec(task).due(trial, at(ms)));
    if let Some(kind) = due {
        let at = at(ms);
        s.say_at(
            at,
            Event::Mark {
                trial: number,
                at,
                kind,
            },
        );
    }
}

fn drinking() -> Scene {
    let mut s = ready(Role::Screener);
    s.open(WATER);
    s.choose("voice-before", "clear")
        .mark(100_000, MarkKind::Start)
        .mark(102_000, MarkKind::Tap);
    s
}

fn missing(s: &Scene) -> Vec<String> {
    let decision = s.visit.decision().unwrap();
    let reasons = decision.missing.iter();
    reasons.map(|f| f.reason().to_owned()).collect()
}

#[test]
fn who_wants_to_stop_with_water_swallowed_is_watched_for_the_minute() {
    let mut s = drinking();
    end(&mut s, EndedEarly::Withdrew, 105_000);
    assert!(matches!(
        phase(&s, WATER, 140_000),
        Phase::Watching(so_far) if so_far.length == Some(Millis(35_000))
    ));
    // A cough 40 seconds after it is a sign, whoever ended the screen.
    s.mark(145_000, MarkKind::Sign(Sign::Cough));
    settle(&mut s, WATER, 165_010);
    assert_eq!(phase(&s, WATER, 165_020), Phase::Over);
    assert_eq!(s.verdict(), Verdict::Refer);
    let told = "coughed 40 seconds after the 90 mL were stopped";
    assert!(s.text().contains(told), "{}", s.text());
}

#[test]
fn without_a_sign_it_is_not_done_and_clears_nothing() {
    let mut s = drinking();
    end(&mut s, EndedEarly::Withdrew, 105_000);
    settle(&mut s, WATER, 165_010);
    s.choose("cup", "one-go").choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::NotDone(EndedEarly::Withdrew));
    // Taken up again, the cup still lacks its end: nobody marked the last swallow.
    s.say(Event::TakenUpAgain);
    assert_eq!(s.verdict(), Verdict::Incomplete);
    assert!(missing(&s).contains(&"the last swallow was not marked".to_owned()));
    // No time is told that nobody took.
    assert!(!s.text().contains(" in 5 seconds"), "{}", s.text());
}

#[test]
fn undo_takes_the_stop_back_and_the_cup_goes_on() {
    let mut s = drinking();
    end(&mut s, EndedEarly::Withdrew, 105_000);
    let trial = s.trial;
    s.say(Event::Undo { trial });
    assert!(matches!(phase(&s, WATER, 106_000), Phase::Running(_)));
    s.say(Event::TakenUpAgain);
    s.mark(108_400, MarkKind::End)
        .mark(168_430, MarkKind::WatchOver);
    s.choose("cup", "one-go").choose("voice-after", "clear");
    assert_eq!(s.verdict(), Verdict::Pass);
}

#[test]
fn a_clinician_who_is_called_away_watches_nothing() {
    for running in [true, false] {
        let mut s = drinking();
        if !running {
            s.mark(104_000, MarkKind::End);
        }
        end(&mut s, EndedEarly::BrokenOff, 105_000);
        // Nothing runs out behind the ended screen.
        assert_eq!(phase(&s, WATER, 110_000), Phase::Over);
        assert!(!s.visit.running());
        settle(&mut s, WATER, 200_000);
        s.say_at(at(201_000), Event::TakenUpAgain);
        s.choose("cup", "one-go").choose("voice-after", "clear");
        assert_eq!(s.verdict(), Verdict::Incomplete);
        let missing = missing(&s);
        let cut = "the watch of 60 seconds was ended early: called away".to_owned();
        assert!(missing.contains(&cut), "{missing:?}");
    }
}

#[test]
fn a_watch_goes_on_where_the_person_wants_to_stop_during_it() {
    let mut s = drinking();
    s.mark(108_400, MarkKind::End);
    end(&mut s, EndedEarly::Withdrew, 120_000);
    assert!(matches!(
        phase(&s, WATER, 130_000),
        Phase::Watching(so_far) if so_far.length == Some(Millis(21_600))
    ));
    assert_eq!(newest(&s, WATER).end(), Some(at(108_400)));
}

/// Twenty-five seconds that nobody counted are no finding.
#[test]
fn no_window_runs_out_behind_an_ended_screen() {
    for why in [
        EndedEarly::Refused,
        EndedEarly::Withdrew,
        EndedEarly::BrokenOff,
    ] {
        let mut s = adult(Role::Screener);
        s.gate(&[]).breaths(16).open(TaskId::DrySwallow);
        s.mark(0, MarkKind::Start);
        end(&mut s, why, 5_000);
        settle(&mut s, TaskId::DrySwallow, 31_000);
        assert_eq!(phase(&s, TaskId::DrySwallow, 31_000), Phase::Over);
        assert_eq!(s.verdict(), Verdict::NotDone(why));
        s.say(Event::TakenUpAgain);
        assert_eq!(s.verdict(), Verdict::Incomplete);
        let unfinished = "Dry swallows: the 30 seconds were not finished".to_owned();
        assert!(missing(&s).contains(&unfinished), "{:?}", missing(&s));

        let mut s = adult(Role::Screener);
        s.gate(&[]).open(TaskId::Breathing);
        s.mark(0, MarkKind::Start).mark(2_000, MarkKind::Tap);
        end(&mut s, why, 5_000);
        settle(&mut s, TaskId::Breathing, 61_000);
        let rates = breathing::reading(&s.visit.exam).map_or(Vec::new(), |r| r.rates);
        assert!(rates.is_empty(), "{rates:?}");
    }
}

/// "Ready, set" is no start.
#[test]
fn a_countdown_ends_with_the_screen() {
    let mut s = Scene::new(Age::Years(72), Role::Slp);
    s.on(ScreenId::OralMotor).open(TaskId::LongestAh);
    s.mark(3_000, MarkKind::Start);
    assert!(s.visit.running());
    end(&mut s, EndedEarly::Withdrew, 1_000);
    assert_eq!(phase(&s, TaskId::LongestAh, 10_000), Phase::Over);
    assert!(!s.visit.running());
}

#[test]
fn what_is_timed_has_no_end_that_nobody_pressed() {
    let mut s = Scene::new(Age::Years(72), Role::Slp);
    s.on(ScreenId::OralMotor).open(TaskId::LongestAh);
    s.mark(0, MarkKind::Start);
    end(&mut s, EndedEarly::Withdrew, 4_000);
    let trial = newest(&s, TaskId::LongestAh);
    assert_eq!(trial.end_pressed(), None);
    let told = penlight::wording::task::summary(TaskId::LongestAh, &s.visit.exam).unwrap();
    assert!(told.contains("the screen was ended meanwhile"), "{told}");
    assert!(!told.contains("4.0"), "{told}");

    let mut s = ready(Role::Slp);
    s.open(TaskId::Cracker);
    s.mark(0, MarkKind::Start).mark(1_000, MarkKind::Tap);
    end(&mut s, EndedEarly::Withdrew, 9_000);
    assert_eq!(cracker::read(newest(&s, TaskId::Cracker)), None);

    let mut s = ready(Role::Slp);
    s.open(TaskId::TimedWater);
    s.choose(timed_water::OFFERED, "100")
        .mark(100_000, MarkKind::Start);
    end(&mut s, EndedEarly::Withdrew, 109_000);
    s.choose(timed_water::CUP, timed_water::EMPTY);
    assert!(timed_water::cup(newest(&s, TaskId::TimedWater)).is_none());
    let unmarked = "timed cup of water: its end was not marked".to_owned();
    assert!(missing(&s).contains(&unmarked), "{:?}", missing(&s));
}

/// Face, mouth and speech alone are no swallow screen that was not done; an emergency is one.
#[test]
fn an_oral_motor_screen_that_ends_early_is_no_swallow_screen() {
    for (weak, verdict) in [
        (HOLDS, Verdict::NoDecision),
        ("new", Verdict::NotDone(EndedEarly::Emergency)),
    ] {
        let mut s = adult(Role::Screener);
        s.on(ScreenId::OralMotor);
        s.say(Event::Gate(vec![(WEAKNESS.to_owned(), weak.to_owned())]));
        end(&mut s, EndedEarly::Refused, 1_000);
        assert_eq!(s.verdict(), verdict, "{weak}");
    }
}

/// Consent was taken back: nothing more is given before somebody asks again. What gives nothing stays
/// free, and a meal is watched, not given.
#[test]
fn nothing_is_given_in_a_screen_that_was_ended() {
    for why in [
        EndedEarly::Refused,
        EndedEarly::Withdrew,
        EndedEarly::BrokenOff,
    ] {
        let mut s = ready(Role::Slp);
        end(&mut s, why, 40_000);
        for task in [WATER, TaskId::Sips, TaskId::TimedWater, TaskId::Own] {
            let held = holds(task, &s.visit.exam);
            let hold = held.iter().find(|h| h.id == "ended").unwrap();
            assert_eq!(
                hold.says,
                format!(
                    "The screen was ended: {}",
                    penlight::wording::verdict::ended(why)
                )
            );
            assert_eq!(hold.go_on, GoOn::Never);
        }
        for task in [TaskId::DrySwallow, TaskId::Breathing, TaskId::Meal] {
            assert!(holds(task, &s.visit.exam).is_empty(), "{task:?}");
        }
        s.say(Event::TakenUpAgain);
        assert!(holds(WATER, &s.visit.exam).is_empty());
    }
}
