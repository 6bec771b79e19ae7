//! The tally of a meal: its summary, its signs, its file and its picture.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::counted::Counted;
use penlight::clinical::findings::counted::note_id;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::Answer;
use penlight::clinical::findings::trial::Mark;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Age;
use penlight::clinical::knowledge::person::Label;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::meal;
use penlight::clinical::tasks::six_signs;
use penlight::handover::nursing;
use penlight::handover::nursing::Clock;
use penlight::handover::tally;
use penlight::measure::time::Millis;
use penlight::measure::time::PageLife;
use penlight::record::envelope::Envelope;
use penlight::record::envelope::SCHEMA;
use penlight::record::envelope::body;
use penlight::record::event::Details;
use penlight::record::event::Event;
use penlight::record::event::Versions;
use penlight::record::id::VisitId;
use penlight::record::visit::Visit;
use penlight::wording;
use proptest::prelude::*;

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

#[test]
fn nursing_reads_them_in_plain_words_on_one_phone_screen() {
    let details = Details {
        label: Label::parse("Visit 3, 14:10").unwrap(),
        age: Some(Age::Adult),
        sex: None,
        setting: None,
        language: None,
    };
    let mut visit = folded(&[Event::Opened {
        details,
        screen: Some(ScreenId::Swallow),
        versions: Versions {
            app: "0".to_owned(),
            rules: "1".to_owned(),
        },
        policy: Default::default(),
        role: Role::Slp,
        initials: None,
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
        wall: Millis::ZERO,
        local: |wall| ("25 Nov 2026".to_owned(), wall.0.to_string()),
    };
    let text = nursing::write(&visit, &clock).unwrap().text;
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
