//! Drink thickness, the timed cracker and the tally at the table, each through real trials and the
//! whole screen.
//!
//! Keys such as ASE24 are those of `clinical/sources.csv`, where the citations stand.

#![allow(clippy::unwrap_used, clippy::panic)]

use crate::support;

use crate::support::in_the_way::holds;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::counted::{Counted, note_id};
use penlight::clinical::findings::flag::{Flag, Level};
use penlight::clinical::findings::go_on::{GoOn, WentOn};
use penlight::clinical::findings::trial::{Answer, Mark, MarkKind, Trial};
use penlight::clinical::knowledge::person::{Age, Role};
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::spec::{Phase, WATCH_CUT};
use penlight::clinical::tasks::{self, cracker, flow, meal, six_signs};
use penlight::handover::nursing::{self, Clock};
use penlight::handover::tally;
use penlight::measure::time::{Millis, PageLife};
use penlight::record::envelope::{Envelope, SCHEMA, body};
use penlight::record::event::{Details, Event, Versions};
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;
use penlight::wording;
use proptest::prelude::*;
use support::*;

fn says(flags: &[Flag]) -> Vec<(&'static str, Level)> {
    flags.iter().map(|f| (f.rule().id, f.level())).collect()
}

// Drink thickness. Bands: IDDSI-B, IDDSI-S.

fn poured(tenths: i32) -> Trial {
    let mut trial = trial(
        TaskId::Flow,
        &[(MarkKind::Start, 0), (MarkKind::WindowOver, 10_000)],
    );
    number(&mut trial, flow::LEFT, tenths);
    trial
}

/// Worked examples, flow test: 0.0 to 10.0, and what can't be.
#[test]
fn what_is_left_gives_the_level_of_the_drink() {
    for (tenths, rule, words) in [
        (0, "flow.level", "0 Thin"),
        (9, "flow.level", "0 Thin"),
        (10, "flow.level", "1 Slightly thick"),
        (39, "flow.level", "1 Slightly thick"),
        (40, "flow.border", "repeat the test"),
        (41, "flow.level", "2 Mildly thick"),
        (79, "flow.level", "2 Mildly thick"),
        (80, "flow.border", "repeat the test"),
        (81, "flow.level", "3 Moderately thick"),
        (99, "flow.level", "3 Moderately thick"),
        (100, "flow.none", "confirm with fork drip and spoon tilt"),
    ] {
        let flags = tasks::flags(TaskId::Flow, &exam(vec![poured(tenths)]));
        assert_eq!(flags[0].rule().id, rule, "{tenths}");
        assert!(
            flags[0].reason().contains(words),
            "{tenths}: {}",
            flags[0].reason()
        );
        assert!(flags.iter().all(|f| f.level() == Level::Note));
        assert!(flags[0].rule().sources().contains(&&source::IDDSI_S));
    }
    for wrong in [101, -1] {
        assert!(tasks::flags(TaskId::Flow, &exam(vec![poured(wrong)])).is_empty());
    }
}

#[test]
fn a_drink_decides_nothing_and_is_told_without_advice() {
    let mut exam = exam_with_water(water());
    exam.trials.push(poured(42));
    let decision = decision(&exam);
    assert_eq!(decision.verdict, Verdict::Pass);
    let told = words(&decision.also);
    assert!(told.contains("this drink flows like level 2 Mildly thick: 4.2 mL of 10 left"));
    assert!(told.contains("which level a person is given is the clinician's to say"));
}

#[test]
fn two_drinks_are_told_apart() {
    let mut tea = poured(5);
    tea.answers
        .insert(flow::DRINK.to_owned(), Answer::Words("tea".to_owned()));
    let flags = tasks::flags(TaskId::Flow, &exam(vec![tea, poured(40)]));
    let told = words(&flags);
    assert!(
        told.starts_with("tea: this drink flows like level 0 Thin"),
        "{told}"
    );
    assert!(told.contains("4.0 mL of 10 left"), "{told}");
}

#[test]
fn ten_seconds_end_by_themselves() {
    let trial = trial(TaskId::Flow, &[(MarkKind::Start, 0)]);
    assert_eq!(flow::SPEC.due(&trial, at(9_999)), None);
    assert_eq!(
        flow::SPEC.due(&trial, at(10_000)),
        Some(MarkKind::WindowOver)
    );
    assert!(matches!(
        flow::SPEC.phase(&trial, at(-2_000)),
        Phase::Countdown(_)
    ));
}

// The timed cracker. Figures: ASE24. Report only: KOT21, HAG21.

/// Worked example, other flags: 4 bites, 60 chews, 3 swallows, 48 s -> 12.0, 15.0, 0.75, 16.0.
#[test]
fn the_figures_of_a_cracker() {
    assert_eq!(
        wording::cracker::lines(&eaten(4, 60, 3, 48_000)),
        [
            "60 chews, 4 bites, 3 swallows in 48.0 s",
            "12.0 s a bite",
            "15.0 chews a bite",
            "0.75 swallows a bite",
            "16.0 s a swallow",
        ]
    );
    let mut exam = exam_with_water(water());
    exam.trials.push(eaten(4, 60, 3, 48_000));
    let decision = decision(&exam);
    assert_eq!(
        decision.verdict,
        Verdict::Pass,
        "it is reported, not judged"
    );
    let report = decision
        .also
        .iter()
        .find(|f| f.rule().id == "cracker.report")
        .unwrap();
    assert!(report.rule().sources().contains(&&source::ASE24));
    assert_eq!(
        report.reason(),
        "one cracker: 4 bites, 60 chews, 3 swallows, 48.0 seconds; reported, not judged"
    );
}

#[test]
fn a_cracker_of_no_time_or_without_swallows_says_so() {
    let nothing = eaten(1, 0, 0, 0);
    assert!(wording::cracker::lines(&nothing)[1].contains("more than zero"));
    assert_eq!(worst(&cracker::judge(&nothing)), Some(Level::Incomplete));
    let dry = wording::cracker::lines(&eaten(2, 10, 0, 20_000));
    assert_eq!(dry.last().unwrap(), "5.0 chews a bite");
}

#[test]
fn its_signs_go_by_the_table_and_its_watch_must_be_whole() {
    let mut coughed = eaten(2, 20, 2, 30_000);
    mark(&mut coughed, MarkKind::Sign(Sign::Cough), at(50_000));
    let flags = cracker::judge(&coughed);
    assert_eq!(flags[0].level(), Level::Refer);
    assert_eq!(
        flags[0].reason(),
        "with the cracker: coughed 20 seconds after the swallow"
    );
    let mut late = eaten(2, 20, 2, 30_000);
    mark(&mut late, MarkKind::Sign(Sign::Cough), at(90_400));
    assert_eq!(worst(&cracker::judge(&late)), Some(Level::Note));
    let mut cut = eaten(2, 20, 2, 30_000);
    choose(&mut cut, WATCH_CUT, "called-away");
    let mut exam = exam_with_water(water());
    exam.trials.push(cut);
    assert_eq!(verdict(&exam), Verdict::Incomplete);
    // A repeat does not wipe out the sign of an earlier one, but does its missing watch.
    exam.trials.push(eaten(2, 20, 2, 30_000));
    assert_eq!(verdict(&exam), Verdict::Pass);
    exam.trials.insert(3, coughed);
    assert_eq!(verdict(&exam), Verdict::Refer);
}

/// Bad input: a trial that was left.
#[test]
fn a_cracker_that_was_left_keeps_what_was_counted_and_is_incomplete() {
    let mut left = eaten(2, 7, 1, 30_000);
    left.marks
        .retain(|m| !matches!(m.kind, MarkKind::End | MarkKind::WatchOver));
    assert_eq!(
        wording::cracker::lines(&left),
        ["7 chews, 2 bites, 1 swallow"]
    );
    assert_eq!(
        says(&cracker::judge(&left)),
        [("eaten.unfinished", Level::Incomplete)]
    );
    // Only asked, never begun: nothing to say.
    left.marks.clear();
    assert!(cracker::judge(&left).is_empty());
}

#[test]
fn before_a_cracker_come_allergy_teeth_and_order() {
    let asked = |answers: &[(&str, &str)]| {
        let mut before = Trial::new(TaskId::Cracker, 9, None);
        for (question, answer) in answers {
            choose(&mut before, question, answer);
        }
        let mut exam = exam_with_water(water());
        exam.trials.push(before);
        exam
    };
    let fine = [
        (cracker::ALLERGY, cracker::FINE),
        (cracker::TEETH, cracker::FINE),
        (cracker::ORDER, cracker::FINE),
    ];
    assert!(cracker::asked(&asked(&fine)));
    assert!(holds(TaskId::Cracker, &asked(&fine)).is_empty());
    assert!(
        !cracker::asked(&asked(&fine[..2])),
        "the pad waits for every answer"
    );
    for (i, go_on) in [GoOn::Never, GoOn::SlpWithReason, GoOn::SlpWithReason]
        .into_iter()
        .enumerate()
    {
        let mut answers = fine;
        answers[i].1 = cracker::AGAINST;
        let held = holds(TaskId::Cracker, &asked(&answers));
        assert_eq!(held.len(), 1);
        assert_eq!(held[0].go_on, go_on, "{}", held[0].says);
    }
    // No drink was tried: whoever knows better says why.
    let mut none = asked(&fine);
    none.trials.retain(|t| t.task != TaskId::Water90);
    let held = holds(TaskId::Cracker, &none);
    assert_eq!(held[0].go_on, GoOn::WithReason);
    let mut wrong = asked(&fine);
    mark(&mut wrong.trials[2], MarkKind::Sign(Sign::Cough), at(3_000));
    let held = holds(TaskId::Cracker, &wrong);
    assert_eq!((held.len(), held[0].go_on), (1, GoOn::SlpWithReason));
    // Gone past, and told as what it was.
    wrong.went_on.push(WentOn {
        hold: held[0].id.clone(),
        because: "Needed for the assessment".to_owned(),
        by: Role::Slp,
        says: String::new(),
        ground: None,
        lapsed: false,
        led_to: Vec::new(),
    });
    assert!(holds(TaskId::Cracker, &wrong).is_empty());
    let mut next = eaten(2, 20, 2, 30_000);
    next.number = 90;
    wrong.went_on[0].led_to.push(next.number);
    wrong.trials.push(next);
    let told = words(&decision(&wrong).also);
    assert!(told.contains("A cracker was given despite this"), "{told}");
}

// At the table.

const BREATH: MarkKind = MarkKind::Count(Counted::Breath);
const NOTE: MarkKind = MarkKind::Count(Counted::Note);
const COUGH: MarkKind = MarkKind::Sign(Sign::Cough);

#[test]
fn a_tally_says_the_whole_and_every_five_minutes() {
    let trial = tallied(
        &[
            (MarkKind::Tap, 5_000),
            (BREATH, 6_000),
            (COUGH, 299_999),
            (MarkKind::Tap, 300_000),
            (NOTE, 700_000),
        ],
        725_000,
    );
    assert_eq!(
        wording::meal::lines(&trial),
        [
            "12 min 5 s: 2 swallows, 1 breath, 1 cough, 1 note",
            "0 to 5 min: 1 swallow, 1 breath, 1 cough",
            "5 to 10 min: 1 swallow",
            "10 to 15 min: 1 note",
        ]
    );
}

#[test]
fn its_signs_go_by_the_column_of_the_meal() {
    let refer = tallied(
        &[(MarkKind::Tap, 1_000), (COUGH, 2_000), (COUGH, 9_000)],
        60_000,
    );
    let flags = meal::judge(&refer);
    assert_eq!(
        says(&flags),
        [("trial.cough", Level::Refer), ("meal.tally", Level::Note)]
    );
    assert_eq!(flags[0].reason(), "at the table: coughed 2 times");
    let mut exam = exam_with_water(water());
    exam.trials.push(refer);
    assert_eq!(verdict(&exam), Verdict::Refer);
    let throat = tallied(&[(MarkKind::Sign(Sign::ThroatClear), 2_000)], 60_000);
    assert_eq!(worst(&meal::judge(&throat)), Some(Level::Note));
    let choked = tallied(&[(MarkKind::Sign(Sign::Choke), 2_000)], 60_000);
    exam.trials.push(choked);
    assert_eq!(verdict(&exam), Verdict::Stop);
    exam.choked = true;
    assert!(
        holds(TaskId::Meal, &exam)
            .iter()
            .any(|h| h.id.starts_with("choked."))
    );
}

#[test]
fn a_tally_without_a_sign_clears_nobody() {
    let exam = exam(vec![tallied(&[(MarkKind::Tap, 1_000)], 60_000)]);
    let flags = tasks::flags(TaskId::Meal, &exam);
    assert_eq!(says(&flags), [("meal.tally", Level::Note)]);
    assert_eq!(verdict(&exam), Verdict::Incomplete);
}

#[test]
fn the_file_of_a_tally_has_every_press_and_its_notes_are_no_formulas() {
    let mut trial = tallied(
        &[(MarkKind::Tap, 1_500), (NOTE, 4_000), (COUGH, 400_000)],
        500_000,
    );
    trial.answers.insert(
        note_id(at(4_000)),
        Answer::Words("=SUM(A1), said \"ah\"".to_owned()),
    );
    let csv = tally::csv(&trial);
    let lines: Vec<&str> = csv.split("\r\n").collect();
    assert_eq!(
        &lines[..6],
        [
            "seconds,what,note",
            "0.0,start,",
            "1.5,swallow,",
            "4.0,note,\"'=SUM(A1), said \"\"ah\"\"\"",
            "400.0,cough,",
            "500.0,end,",
        ]
    );
    assert!(lines[7].starts_with("minutes,swallows,breaths,coughs,"));
    assert!(lines[8].starts_with("0 to 5 min,1,0,0,"));
    assert!(
        lines
            .iter()
            .any(|l| l.starts_with("all,1,0,1,") && l.ends_with(",1"))
    );
    let picture = tally::picture(&trial);
    assert_eq!(picture.matches("<path").count(), 3);
    assert!(picture.contains("<p>1 cough</p>") && picture.contains("\"M800 0v20\""));
    assert!(!picture.contains("SUM"), "nothing anybody typed is in it");
}

#[test]
fn a_mark_whose_time_is_not_known_is_kept_apart() {
    let mut trial = tallied(&[(MarkKind::Tap, 1_000)], 60_000);
    // After a restart with the clock set back.
    trial.marks.insert(
        2,
        Mark {
            at: stamp(2, 0, -50_000),
            kind: MarkKind::Tap,
        },
    );
    let parts = meal::summary(&trial);
    assert_eq!(parts.last().unwrap().part, None);
    assert_eq!(parts.iter().map(|p| p.counts[0]).sum::<usize>(), 2);
}

fn any_kind() -> impl Strategy<Value = MarkKind> {
    prop::sample::select(meal::kinds())
}

proptest! {
    /// Every mark of a tally is in exactly one part of its summary.
    #[test]
    fn a_summary_adds_up_to_its_marks(
        marks in prop::collection::vec((any_kind(), -10_000_i64..8_000_000, 1_u32..3), 0..200),
    ) {
        let mut trial = trial(TaskId::Meal, &[(MarkKind::Start, 0)]);
        for (kind, ms, life) in &marks {
            mark(&mut trial, *kind, stamp(*life, *ms, *ms));
        }
        let totals = meal::totals(&trial);
        let parts = meal::summary(&trial);
        for (i, total) in totals.iter().enumerate() {
            let sum: usize = parts.iter().map(|part| part.counts[i]).sum();
            prop_assert_eq!(sum, *total);
        }
        prop_assert_eq!(totals.iter().sum::<usize>(), marks.len());
        // And the file has a line for each.
        prop_assert_eq!(
            tally::csv(&trial).split("\r\n\r\n").next().unwrap().lines().count(),
            marks.len() + 2
        );
    }

    /// Undo takes the newest press of any kind, and nothing else.
    #[test]
    fn undo_takes_the_newest_of_any_kind(
        kinds in prop::collection::vec(any_kind(), 1..40),
        task in prop::sample::select(vec![TaskId::Meal, TaskId::Cracker]),
        undo in 1_usize..40,
    ) {
        let mut events = vec![
            Event::TrialOpened { trial: 0, task, length: None },
            Event::Mark { trial: 0, at: at(0), kind: MarkKind::Start },
        ];
        events.extend(kinds.iter().zip(1..).map(|(kind, i)| Event::Mark {
            trial: 0,
            // Pads pressed in the same millisecond are two presses.
            at: at(1 + i / 2),
            kind: *kind,
        }));
        let undo = undo.min(kinds.len());
        events.extend((0..undo).map(|_| Event::Undo { trial: 0 }));
        let visit = folded(&events);
        let left: Vec<MarkKind> = visit.trial(0).unwrap().marks[1..].iter().map(|m| m.kind).collect();
        prop_assert_eq!(&left[..], &kinds[..kinds.len() - undo]);
    }
}

fn folded(events: &[Event]) -> Visit {
    let id = VisitId::new("visit-0000000001").unwrap();
    let stored = (0_u32..)
        .zip(events)
        .map(|(seq, event)| Envelope {
            device: "device-1".to_owned(),
            visit: id.clone(),
            seq,
            schema: SCHEMA,
            key: String::new(),
            at: at(i64::from(seq)),
            body: body(event).unwrap(),
        })
        .collect();
    Visit::replay(id, stored)
}

// The nursing text.

#[test]
fn nursing_reads_them_in_plain_words_on_one_phone_screen() {
    let details = Details {
        label: penlight::clinical::knowledge::person::Label::parse("Visit 3, 14:10").unwrap(),
        age: Some(Age::Adult),
        sex: None,
        setting: None,
        language: None,
    };
    let mut visit = folded(&[Event::Opened {
        details,
        screen: Some(penlight::clinical::knowledge::screen::ScreenId::Swallow),
        versions: Versions {
            app: "0".to_owned(),
            rules: "1".to_owned(),
        },
        policy: Default::default(),
        role: Role::Slp,
    }]);
    visit.exam = exam_with_water(water());
    let mut counted = Trial::new(TaskId::SixSigns, 8, None);
    choose(&mut counted, "speech", six_signs::FOUND);
    choose(&mut counted, "voice", six_signs::FOUND);
    visit.exam.trials.push(counted);
    visit.exam.trials.push(poured(42));
    visit.exam.trials.push(eaten(4, 60, 3, 48_000));
    visit
        .exam
        .trials
        .push(tallied(&[(MarkKind::Tap, 1_000), (COUGH, 2_000)], 725_000));
    let clock = Clock {
        date: "25 Nov 2026".to_owned(),
        time: "14:40".to_owned(),
        wall: penlight::measure::time::Millis::ZERO,
        local: |wall| ("25 Nov 2026".to_owned(), wall.0.to_string()),
    };
    let text = nursing::write(&visit, &clock).unwrap();
    assert!(text.chars().count() < nursing::MOST, "{text}");
    for part in [
        "at the table: coughed",
        "two or more signs seen: changed voice, slurred speech",
    ] {
        assert!(text.contains(part), "{part} is not in\n{text}");
    }
    assert!(!text.contains("mL/s"), "{text}");
}

#[test]
fn no_clock_is_too_odd_for_a_tally() {
    let mut trial = tallied(&[], 1_000);
    mark(
        &mut trial,
        MarkKind::Tap,
        stamp(1, i64::MAX / 2, i64::MAX / 2 - WALL),
    );
    assert!(meal::summary(&trial).len() < 300);
    let mut other = trial.clone();
    other.marks[0].at.life = PageLife(3);
    let _ = (
        wording::meal::lines(&other),
        tally::csv(&other),
        tally::picture(&other),
    );
    assert_eq!(wording::meal::minutes(Millis(59_999)), "59 s");
}
