//! Input that is wrong, clocks that jump, pages that are hidden or killed: each has a stated
//! result in plain words, nothing is lost, nothing panics, and none of it reads "no sign seen"
//! by accident.
//!
//! Checked against the design ("how good": time, never lose; timing rules) and the worked
//! examples of the timed water test (a time of zero or less and more left than offered are
//! refused).

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::{Flag, Level};
use penlight::clinical::findings::trial::{MarkKind, Trial};
use penlight::clinical::knowledge::person::{Age, AgeError, AgeUnit, Label, LabelError};
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::by_mouth::reading::Reading;
use penlight::clinical::tasks::spec::{NumberError, Phase, Takes, parse_tenths};
use penlight::clinical::tasks::{breathing, dry_swallow, water as water90};
use penlight::measure::time::{Doubt, Millis, NoTime, Stamp, elapsed};
use penlight::measure::units::{Millilitres, Seconds, UnitError};
use penlight::wording::number;

// What is typed.

/// A sentence: something to read, with a full stop, not a code.
#[track_caller]
fn is_a_sentence(text: &str) {
    assert!(
        text.len() > 10 && text.ends_with('.') && text.contains(' '),
        "{text:?}"
    );
}

#[test]
fn labels() {
    for empty in ["", " ", "\t\n ", "\u{a0}\u{2003}"] {
        let error = Label::parse(empty).unwrap_err();
        assert_eq!(error, LabelError::Empty, "{empty:?}");
        is_a_sentence(&error.to_string());
    }
    for long in ["x".repeat(200), "ä".repeat(61), "👁".repeat(200)] {
        let error = Label::parse(&long).unwrap_err();
        assert_eq!(error, LabelError::TooLong(long.chars().count()));
        is_a_sentence(&error.to_string());
    }
    // Sixty characters, whatever their size in bytes.
    assert_eq!(
        Label::parse(&"ä".repeat(60)).unwrap().as_str(),
        "ä".repeat(60)
    );
}

#[test]
fn ages() {
    for (typed, unit, wanted) in [
        ("0", AgeUnit::Years, AgeError::GiveMonths),
        ("121", AgeUnit::Years, AgeError::Over120),
        ("36", AgeUnit::Months, AgeError::GiveYears),
        ("abc", AgeUnit::Years, AgeError::NotANumber),
        ("-1", AgeUnit::Years, AgeError::NotANumber),
        ("-1", AgeUnit::Months, AgeError::NotANumber),
        ("7.5", AgeUnit::Years, AgeError::NotANumber),
        ("7,5", AgeUnit::Years, AgeError::NotANumber),
        ("", AgeUnit::Years, AgeError::NotANumber),
        ("7 2", AgeUnit::Years, AgeError::NotANumber),
        ("1e2", AgeUnit::Years, AgeError::NotANumber),
    ] {
        let error = Age::parse(typed, unit).unwrap_err();
        assert_eq!(error, wanted, "{typed:?}");
        is_a_sentence(&error.to_string());
    }
    assert_eq!(Age::parse(" 120 ", AgeUnit::Years), Ok(Age::Years(120)));
    assert_eq!(Age::parse("0", AgeUnit::Months), Ok(Age::Months(0)));
}

/// A whole number is a number, however large: the words fit what was typed.
#[test]
fn an_age_too_large_is_not_called_no_number() {
    assert_eq!(Age::parse("70000", AgeUnit::Years), Err(AgeError::Over120));
    assert_eq!(
        Age::parse("70000", AgeUnit::Months),
        Err(AgeError::GiveYears)
    );
}

/// Worked examples, timed water, last row: more left than offered is refused.
#[test]
fn volumes() {
    let left = water90::SPEC
        .questions
        .iter()
        .find(|q| q.id == water90::REMAINING)
        .unwrap();
    let Takes::Number { least, most, .. } = left.takes else {
        unreachable!("the question takes a number");
    };
    assert_eq!((least, most), (1, water90::OFFERED));
    let out = NumberError::OutOfRange { least: 1, most: 90 };
    for (typed, wanted) in [
        ("0", out.clone()),
        ("-1", out.clone()),
        ("-0.1", out.clone()),
        ("91", out.clone()),
        ("90.1", out.clone()),
        ("1e9", NumberError::NotANumber),
        ("1000000000000", out.clone()),
        ("abc", NumberError::NotANumber),
        ("", NumberError::NotANumber),
        ("NaN", NumberError::NotANumber),
        ("inf", NumberError::NotANumber),
        ("-inf", NumberError::NotANumber),
        ("15 mL", NumberError::NotANumber),
        ("1.5.5", NumberError::NotANumber),
        ("15.25", NumberError::TooFine),
        ("15,25", NumberError::TooFine),
    ] {
        let error = parse_tenths(typed, least, most).unwrap_err();
        assert_eq!(error, wanted, "{typed:?}");
        is_a_sentence(&number::problem(&error, "mL"));
    }
    assert_eq!(parse_tenths("90", least, most), Ok(900));
    assert_eq!(parse_tenths("-0", least, most), Err(out));
    assert_eq!(parse_tenths("89,9", least, most), Ok(899));

    let offered = Millilitres::new(90.0).unwrap();
    let more = Millilitres::new(120.0).unwrap();
    assert_eq!(offered.less(more), Err(UnitError::MoreLeftThanOffered));
}

// A time of nothing.

/// Worked examples, timed water, row 7: a time of zero is refused.
#[test]
fn a_time_of_zero() {
    let time = elapsed(at(5_000), at(5_000), false).timed();
    assert_eq!(time, Err(NoTime::Nothing));
    let no_time = Seconds::try_from(Millis::ZERO).unwrap();
    assert!(Millilitres::new(90.0).unwrap().over(no_time).is_err());
}

/// The water trial whose first contact and last swallow are these.
fn drunk(start: Stamp, end: Stamp) -> Trial {
    let mut trial = water();
    trial.marks.clear();
    mark(&mut trial, MarkKind::Start, start);
    mark(&mut trial, MarkKind::End, end);
    mark(&mut trial, MarkKind::WatchOver, end.later(water90::WATCH));
    trial
}

#[track_caller]
fn is_incomplete(exam: &penlight::clinical::findings::exam::Exam) -> Vec<Flag> {
    let decision = decision(exam);
    assert_eq!(
        decision.verdict,
        Verdict::Incomplete,
        "{}",
        words(&all(&decision))
    );
    assert!(!decision.missing.is_empty() && !words(&decision.missing).is_empty());
    decision.missing
}

/// Nobody drinks 90 mL in no time: first contact and last swallow were one press.
#[test]
fn a_cup_drunk_in_no_time() {
    let trial = drunk(at(1_000), at(1_000));
    let drinking = Reading::of(&trial).drinking.unwrap();
    assert_eq!(drinking.length, Some(Millis::ZERO));
    assert_eq!(trial.marks.len(), 3);
    is_incomplete(&exam_with_water(trial));
}

/// Nor before it was begun.
#[test]
fn a_cup_that_ended_before_it_began() {
    let trial = drunk(at(9_000), at(1_000));
    assert_eq!(trial.marks.len(), 3);
    is_incomplete(&exam_with_water(trial));
}

/// A watch whose recorded end lies before 60 s are over is not a whole watch.
#[test]
fn a_watch_that_ended_too_soon() {
    for after in [-5_000, 0, 2_000, 59_000] {
        let mut trial = water();
        trial.marks.retain(|m| m.kind != MarkKind::WatchOver);
        mark(&mut trial, MarkKind::WatchOver, at(LAST_SWALLOW + after));
        is_incomplete(&exam_with_water(trial));
    }
}

// Windows and clocks. Dry swallows: 30.0 s from the start.

/// The count with these taps whose window is said to have ended at `over`.
fn counted(start: Stamp, taps: &[Stamp], over: Stamp) -> Trial {
    let mut trial = Trial::new(TaskId::DrySwallow, 0, None);
    mark(&mut trial, MarkKind::Start, start);
    for tap in taps {
        mark(&mut trial, MarkKind::Tap, *tap);
    }
    mark(&mut trial, MarkKind::WindowOver, over);
    trial
}

#[track_caller]
fn judged(trial: &Trial) -> Flag {
    let finding = dry_swallow::read(trial).unwrap();
    let flags = dry_swallow::judge(&finding, &Policy::default());
    assert_eq!(flags.len(), 1);
    flags[0].clone()
}

/// A low count that can't be trusted: incomplete, said why, every tap still there.
#[track_caller]
fn count_again(trial: &Trial, taps: usize, because: &str) {
    assert_eq!(trial.taps(), taps, "a tap was lost");
    let flag = judged(trial);
    assert_eq!(flag.level(), Level::Incomplete, "{flag:?}");
    assert!(flag.reason().contains(because), "{flag:?}");
    is_incomplete(&exam_with_dry(trial.clone()));
}

/// A window that is said to have ended before it began, or too soon: nothing follows from it.
#[test]
fn a_window_that_ended_before_it_began() {
    for over in [at(-10_000), at(0), at(20_000)] {
        let trial = counted(at(0), &[at(5_000)], over);
        count_again(&trial, 1, "Dry swallows");
    }
}

/// The same with breaths: a count of less than 60 s is no rate.
#[test]
fn a_minute_that_ended_too_soon() {
    for over in [-10_000, 0, 45_000] {
        let mut trial = breaths(16);
        trial.marks.retain(|m| m.kind != MarkKind::WindowOver);
        mark(&mut trial, MarkKind::WindowOver, at(over));
        assert!(breathing::read(&trial).rates.is_empty(), "over at {over}");
    }
}

#[test]
fn the_wall_clock_set_back_within_the_window() {
    // An hour back after ten seconds; the stopwatch went on.
    let hour = 3_600_000;
    let back = |ms: i64| stamp(1, ms, ms - hour);
    let low = counted(at(0), &[at(4_000), back(15_000)], back(30_000));
    count_again(&low, 2, "clock was changed");
    let enough = counted(
        at(0),
        &[at(4_000), back(15_000), back(22_000)],
        back(30_000),
    );
    assert_eq!(judged(&enough).level(), Level::Pass);
    assert_eq!(dry_swallow::read(&enough).unwrap().count.count(), 3);
}

#[test]
fn the_wall_clock_set_forward_within_the_window() {
    let ahead = |ms: i64| stamp(1, ms, ms + 3_600_000);
    let low = counted(at(0), &[at(4_000), ahead(15_000)], ahead(30_000));
    count_again(&low, 2, "clock was changed");
}

/// Killed after 10 s and opened again after 14: the window went on by the phone's clock.
#[test]
fn killed_and_reopened_within_the_window() {
    let again = |ms: i64| stamp(2, ms - 14_000, ms);
    let low = counted(at(0), &[at(4_000), again(20_000)], again(30_000));
    count_again(&low, 2, "restarted");

    // While it is still running, it runs on.
    let mut running = low.clone();
    running.marks.truncate(2);
    let spec = &dry_swallow::SPEC;
    assert!(matches!(
        spec.phase(&running, again(20_000)),
        Phase::Running(_)
    ));
    assert_eq!(spec.due(&running, again(29_999)), None);
    assert_eq!(
        spec.due(&running, again(30_000)),
        Some(MarkKind::WindowOver)
    );
}

/// Opened again when the window was long over: it ends at once, and the count is not taken.
#[test]
fn reopened_after_the_window() {
    let now = stamp(2, 100, 900_000);
    let mut trial = Trial::new(TaskId::DrySwallow, 0, None);
    mark(&mut trial, MarkKind::Start, at(0));
    mark(&mut trial, MarkKind::Tap, at(4_000));
    assert_eq!(
        dry_swallow::SPEC.due(&trial, now),
        Some(MarkKind::WindowOver)
    );
    mark(&mut trial, MarkKind::WindowOver, now);
    count_again(&trial, 1, "restarted");
}

/// Killed, the clock set back, opened again: how long it was can't be known.
#[test]
fn killed_and_reopened_with_the_clock_set_back() {
    let now = stamp(2, 100, -90_000);
    let mut trial = Trial::new(TaskId::DrySwallow, 0, None);
    mark(&mut trial, MarkKind::Start, at(0));
    mark(&mut trial, MarkKind::Tap, at(4_000));
    // Waiting on would gain nothing: the window ends, and says so.
    assert_eq!(
        dry_swallow::SPEC.due(&trial, now),
        Some(MarkKind::WindowOver)
    );
    mark(&mut trial, MarkKind::WindowOver, now);
    mark(&mut trial, MarkKind::Tap, now.later(Millis(2_000)));
    count_again(&trial, 2, "not known");
    assert_eq!(
        dry_swallow::read(&trial).unwrap().doubt,
        Some(Doubt::Unknown)
    );
}

/// Taps that fall into the window by a clock that was set back meanwhile clear nobody.
#[test]
fn taps_after_a_restart_do_not_make_up_the_three() {
    // Twenty minutes later by the world, ten seconds later by the phone.
    let again = |ms: i64| stamp(2, ms, 10_000 + ms);
    let trial = counted(
        at(0),
        &[at(4_000), again(1_000), again(2_000), again(3_000)],
        again(20_000),
    );
    assert_eq!(trial.taps(), 4);
    assert_ne!(judged(&trial).level(), Level::Pass, "{:?}", judged(&trial));
}

// A page out of sight.

fn hide(mut trial: Trial, from: i64, to: i64) -> Trial {
    trial.hidden.push((at(from), at(to)));
    trial
}

#[test]
fn hidden_within_the_window_with_a_low_count() {
    for taps in [&[][..], &[4_000], &[4_000, 26_000]] {
        count_again(&hide(dry(taps), 10_000, 20_000), taps.len(), "out of sight");
        // Also where only the edge of the window was missed.
        count_again(&hide(dry(taps), 29_000, 50_000), taps.len(), "out of sight");
    }
}

#[test]
fn hidden_within_the_window_with_three_counted() {
    let trial = hide(dry(&[4_000, 8_000, 26_000]), 10_000, 20_000);
    assert_eq!(judged(&trial).level(), Level::Pass);
    assert_eq!(verdict(&exam_with_dry(trial)), Verdict::Pass);
}

/// Hidden before or after the window is no doubt about it.
#[test]
fn hidden_outside_the_window() {
    for (from, to) in [(-20_000, -1), (30_000, 50_000), (31_000, 90_000)] {
        let trial = hide(dry(&[4_000]), from, to);
        assert_eq!(judged(&trial).level(), Level::Refer, "{from} to {to}");
    }
}

/// Slept within the window: the monotonic clock stood still, the wall clock did not.
#[test]
fn slept_within_the_window() {
    let late = |ms: i64| stamp(1, ms - 15_000, ms);
    let mut trial = counted(at(0), &[at(4_000)], late(30_000));
    trial.hidden.push((at(10_000), late(25_500)));
    count_again(&trial, 1, "out of sight");
}

#[test]
fn breaths_counted_on_a_hidden_page_are_no_rate() {
    let trial = hide(breaths(16), 20_000, 40_000);
    let finding = breathing::read(&trial);
    assert!(finding.rates.is_empty());
    assert_eq!(trial.taps(), 16);
    let exam = exam(vec![trial, dry(&[1_000, 2_000, 3_000]), water()]);
    let missing = is_incomplete(&exam);
    assert!(words(&missing).contains("count again"), "{missing:?}");
}

// The watch after the water: 60 s from the last swallow.

/// The whole cup in the first life, its watch ended at `over`.
fn watched_until(over: Stamp) -> Trial {
    let mut trial = water();
    trial.marks.retain(|m| m.kind != MarkKind::WatchOver);
    mark(&mut trial, MarkKind::WatchOver, over);
    trial
}

/// Nothing in what is handed over may say "no sign for 60 seconds" without the doubt beside it.
#[track_caller]
fn says(trial: Trial, because: &str) {
    let decision = decision(&exam_with_water(trial));
    let told = words(&all(&decision));
    assert!(told.contains(because), "{:?}: {told}", decision.verdict);
}

/// Killed in the watch and opened again with the clock set back: how long anybody watched can't
/// be known, so the watch was not whole.
#[test]
fn killed_in_the_watch_and_the_clock_set_back() {
    let now = stamp(2, 100, -90_000);
    let mut trial = water();
    trial.marks.retain(|m| m.kind != MarkKind::WatchOver);
    assert_eq!(water90::SPEC.due(&trial, now), Some(MarkKind::WatchOver));
    mark(&mut trial, MarkKind::WatchOver, now);
    assert_eq!(Reading::of(&trial).watch_doubt, Some(Doubt::Unknown));
    is_incomplete(&exam_with_water(trial));
}

/// Killed in the watch and opened again: it runs on, ends by the phone's clock, and that is said.
#[test]
fn killed_in_the_watch_and_reopened() {
    let again = |ms: i64| stamp(2, ms - 30_000, ms);
    let mut trial = water();
    trial.marks.retain(|m| m.kind != MarkKind::WatchOver);
    let spec = &water90::SPEC;
    assert!(matches!(
        spec.phase(&trial, again(40_000)),
        Phase::Watching(_)
    ));
    assert_eq!(spec.due(&trial, again(LAST_SWALLOW + 59_999)), None);
    assert_eq!(
        spec.due(&trial, again(LAST_SWALLOW + 60_000)),
        Some(MarkKind::WatchOver)
    );
    says(watched_until(again(LAST_SWALLOW + 60_000)), "restarted");
}

/// Out of sight in the watch: presses may be missing, and that is said.
#[test]
fn hidden_in_the_watch() {
    let trial = hide(water(), LAST_SWALLOW + 5_000, LAST_SWALLOW + 55_000);
    says(trial, "out of sight");
}

/// The clock changed in the watch: the stopwatch went on, the 60 s are whole.
#[test]
fn the_clock_set_back_in_the_watch() {
    let over = LAST_SWALLOW + 60_000;
    let trial = watched_until(stamp(1, over, over - 3_600_000));
    says(trial, "clock was changed");
}

/// A sign still counts where the clock was set forward while the app was closed: a cough that
/// can't be placed is not "later than 60 seconds".
#[test]
fn a_cough_after_a_restart_is_not_put_off_as_late() {
    let mut trial = watched_until(stamp(2, 40_000, 3_640_000));
    mark(
        &mut trial,
        MarkKind::Sign(Sign::Cough),
        stamp(2, 5_000, 3_605_000),
    );
    assert_eq!(trial.signs().count(), 1);
    assert_eq!(verdict(&exam_with_water(trial)), Verdict::Refer);
}

/// A cough with the clock set back while the app was closed still counts.
#[test]
fn a_cough_that_cannot_be_placed_counts() {
    let mut trial = watched_until(stamp(2, 40_000, -50_000));
    mark(
        &mut trial,
        MarkKind::Sign(Sign::Cough),
        stamp(2, 5_000, -85_000),
    );
    let flags = water90::judge(&Reading::of(&trial), false, &Policy::default());
    assert_eq!(worst(&flags), Some(Level::Refer));
    assert_eq!(verdict(&exam_with_water(trial)), Verdict::Refer);
}

/// Killed before the last swallow: no watch has begun, whatever the clock says.
#[test]
fn killed_while_drinking() {
    let mut trial = water();
    trial.marks.truncate(1);
    let again = stamp(2, 100, 600_000);
    assert_eq!(water90::SPEC.due(&trial, again), None);
    assert!(matches!(
        water90::SPEC.phase(&trial, again),
        Phase::Running(_)
    ));
    let missing = is_incomplete(&exam_with_water(trial));
    assert!(
        words(&missing).contains("last swallow was not marked"),
        "{missing:?}"
    );
}
