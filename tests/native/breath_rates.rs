//! Rates of breathing: by taps, over 30 and 60 seconds, of infants and children, and the second scale.
//!
//! Keys such as NEWS2 are those of `clinical/sources.csv`, where the citations stand.

use crate::support::*;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::policy::Policy;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::breath_taps;
use penlight::clinical::tasks::breathing;
use penlight::wording;

fn taps(ms: &[i64]) -> Trial {
    let mut marks = vec![(MarkKind::Start, ms[0])];
    marks.extend(ms.iter().map(|t| (MarkKind::Tap, *t)));
    marks.push((MarkKind::End, ms[ms.len() - 1] + 500));
    let mut trial = trial(TaskId::BreathTaps, &marks);
    trial.number = 50;
    trial
}

fn breathing_exam(trials: Vec<Trial>, age: Age) -> Exam {
    Exam {
        age: Some(age),
        screen: Some(ScreenId::Stepped),
        ..exam(trials)
    }
}

/// Worked examples of breathing by taps (KAR14).
#[test]
fn breathing_by_taps_rows() {
    for (ms, words) in [
        (
            &[0, 3_100, 6_000, 9_200, 12_100][..],
            "breathing 20 a minute by taps",
        ),
        (
            &[0, 3_000, 6_100, 12_200, 15_100, 18_100][..],
            "breathing 20 a minute by taps, one uneven interval left out",
        ),
        (
            &[0, 2_400, 4_800, 7_300, 9_600, 12_100][..],
            "breathing 25 a minute by taps",
        ),
        (
            &[0, 5_000, 6_000, 11_500][..],
            "too few even ones yet; go on tapping, or count for 60",
        ),
    ] {
        let exam = breathing_exam(vec![taps(ms)], Age::Adult);
        let flags = breath_taps::flags(TaskId::BreathTaps, &exam);
        let flag = reason(&flags, words);
        rests_on(flag, &source::KAR14);
        // Taps alone never clear an adult (RIM19).
        assert_eq!(flag.level(), Level::Incomplete);
        assert!(
            breathing::blocks(&exam)
                .iter()
                .any(|b| b.flag.rule().id == "breathing.not-counted")
        );
    }
}

#[test]
fn the_rate_grows_with_its_consistency() {
    let policy = Policy::default();
    let so_far = |ms: &[i64]| {
        let running = breath_taps::running(&taps(ms), &policy)?;
        Some(wording::breathing::running(running))
    };
    assert_eq!(so_far(&[0]), None);
    assert_eq!(
        so_far(&[0, 3_100]).unwrap(),
        "about 19 a minute, 1 of 1 within 15 %: 3 more"
    );
    assert_eq!(
        so_far(&[0, 3_100, 6_000, 9_200, 12_100]).unwrap(),
        "about 20 a minute, 4 of 4 within 15 %: even enough"
    );
    let uneven = so_far(&[0, 5_000, 6_000, 11_500, 13_000, 20_000, 21_000, 29_000]).unwrap();
    assert!(uneven.ends_with("uneven: count for 60 seconds"), "{uneven}");
}

/// Worked examples: 9 in 30 s is 18; 17 in 60 s is 17 (RIM19).
#[test]
fn counts_of_30_and_60_seconds() {
    let mut marks = vec![(MarkKind::Start, 0)];
    marks.extend((1..=9).map(|n| (MarkKind::Tap, n * 3_000)));
    marks.push((MarkKind::WindowOver, 30_000));
    let thirty = trial(TaskId::Breaths30, &marks);
    let exam = breathing_exam(vec![thirty.clone()], Age::Adult);
    let flags = breath_taps::flags(TaskId::Breaths30, &exam);
    let flag = reason(
        &flags,
        "breathing 18 a minute (counted for 30 seconds, doubled)",
    );
    assert_eq!(flag.level(), Level::Incomplete);
    rests_on(flag, &source::RIM19);
    let counted = breathing_exam(vec![thirty, breaths(17)], Age::Adult);
    assert_eq!(breathing::counted(&counted)[0].0, 17);
    let flags = breath_taps::flags(TaskId::Breaths30, &counted);
    assert_eq!(worst(&flags), Some(Level::Note));
}

/// RUS94: awake at 6 months, 5th to 95th percentile 29.9 to 56.3.
#[test]
fn an_infant_is_read_by_the_published_equation() {
    let mut tapped = taps(&[0, 1_500, 3_000, 4_500, 6_000]);
    choose(&mut tapped, breath_taps::STATE, "awake");
    let exam = breathing_exam(vec![tapped], Age::Months(6));
    assert!(breath_taps::asks_state(&exam));
    let flags = breath_taps::flags(TaskId::BreathTaps, &exam);
    let note = reason(
        &flags,
        "among the middle 90 of 100 children of 6 months (29.9 to 56.3)",
    );
    rests_on(note, &source::RUS94);
    assert_eq!(worst(&flags), Some(Level::Note));
    // The local chart is asked for all the same, and taps are enough to ask.
    let blocks = breathing::blocks(&exam);
    assert_eq!(blocks.len(), 1);
    assert!(blocks[0].flag.reason().contains("breathing 40 a minute"));
    assert_eq!(blocks[0].flag.rule().id, "breathing.child");
}

#[test]
fn an_infant_outside_is_a_note_and_nobody_said_awake_is_said() {
    let mut fast = taps(&[0, 900, 1_800, 2_700, 3_600]);
    let exam = |t: &Trial| breathing_exam(vec![t.clone()], Age::Months(6));
    let flags = breath_taps::flags(TaskId::BreathTaps, &exam(&fast));
    reason(&flags, "go by awake or asleep");
    choose(&mut fast, breath_taps::STATE, "awake");
    let flags = breath_taps::flags(TaskId::BreathTaps, &exam(&fast));
    reason(
        &flags,
        "breathing 67 a minute awake: above the middle 90 of 100",
    );
    assert_eq!(worst(&flags), Some(Level::Note));
}

/// FLE-APP: a taught range of 18 to 30 a minute at 6 to 12 years.
#[test]
fn a_child_is_read_by_a_taught_range() {
    let exam = breathing_exam(vec![breaths(36)], Age::Years(8));
    let flags = breathing::flags(&exam);
    let note = reason(&flags, "above one taught range for 8 years");
    rests_on(note, &source::FLE_APP);
    assert_eq!(note.level(), Level::Note);
}

/// NEWS2: the second scale, and only with a confirmed target of 88 to 92 %.
#[test]
fn the_second_scale_needs_a_confirmed_target() {
    let read = |percent: i32, oxygen: &str, confirmed: bool| {
        let mut trial = breaths(16);
        number(&mut trial, breathing::SATURATION, percent * 10);
        choose(&mut trial, breathing::OXYGEN, oxygen);
        number(&mut trial, breathing::TARGET, 880);
        if confirmed {
            choose(&mut trial, breathing::CONFIRMED, "yes");
        }
        let exam = breathing_exam(vec![trial], Age::Adult);
        let blocked = breathing::blocks(&exam).len() == 1;
        let by_the_second_scale = breathing::flags(&exam)
            .iter()
            .any(|f| f.rule().id == "breathing.second-scale");
        (blocked, by_the_second_scale)
    };
    assert_eq!(read(87, "air", true), (true, false));
    assert_eq!(read(88, "oxygen", true), (false, false));
    assert_eq!(read(93, "air", true), (false, false));
    assert_eq!(read(93, "oxygen", true), (false, true));
    assert_eq!(read(96, "oxygen", true), (false, true));
    assert_eq!(read(97, "oxygen", true), (true, true));
    // Without it an own target blocks below it and says nothing above.
    assert_eq!(read(97, "oxygen", false), (false, false));
    assert_eq!(read(87, "oxygen", false), (true, false));
}
