//! The timed cup of water: its figures, and what is made of them.
//!
//! Keys such as HUG96 are those of `clinical/sources.csv`, where the citations stand.

use crate::support::*;
use penlight::clinical::decision::assess::flags;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::Mark;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::screen::ScreenId;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks;
use penlight::clinical::tasks::timed_water;
use penlight::wording;

/// Worked examples of the timed cup (indices: HUG96; slow: NAT92, WU04).
#[test]
fn timed_water_rows() {
    for (offered, left, ms, swallows, ml_s, each, slow) in [
        (100, 0, 12_500, 8, "8.0", "12.5 mL and 1.6", true),
        (150, 0, 11_800, 7, "12.7", "21.4 mL and 1.7", false),
        (150, 40, 20_000, 9, "5.5", "12.2 mL and 2.2", true),
        (100, 0, 10_000, 6, "10.0", "16.7 mL and 1.7", false),
        (90, 0, 9_500, 5, "9.5", "18.0 mL and 1.9", true),
    ] {
        let trial = timed(offered, left, ms, swallows);
        let lines = penlight::wording::task::lines(&trial).unwrap().join("; ");
        assert!(lines.contains(&format!(": {ml_s} mL a second")), "{lines}");
        assert!(
            lines.contains(&format!("{swallows} swallows: {each} seconds")),
            "{lines}"
        );
        let flags = timed_water::flags(&exam_with_cup(trial));
        let note = flags.iter().find(|f| f.rule().id == "timed-water.slow");
        assert_eq!(note.is_some(), slow, "{flags:?}");
        if let Some(note) = note {
            assert_eq!(note.level(), Level::Note);
            rests_on(note, &source::NAT92);
        }
        let unfinished = flags.iter().any(|f| f.level() == Level::Incomplete);
        assert_eq!(unfinished, left > 0, "{flags:?}");
    }
}

#[test]
fn a_cup_without_a_count_asks_for_it() {
    let mut trial = timed(100, 0, 9_000, 0);
    let words = |t: &Trial| penlight::wording::task::lines(t).unwrap().join("; ");
    assert!(
        words(&trial).contains("11.1 mL a second"),
        "{}",
        words(&trial)
    );
    assert!(words(&trial).contains("How many swallows were there?"));
    let exam = exam_with_cup(trial.clone());
    assert!(tasks::spec(TaskId::TimedWater).asks(timed_water::SWALLOWS, &exam));
    number(&mut trial, timed_water::SWALLOWS, 60);
    assert!(words(&trial).contains("6 swallows: 16.7 mL"));
}

#[test]
fn impossible_cups_are_refused_with_a_sentence() {
    for (trial, part) in [
        (timed(100, 0, 0, 5), "time must be more than zero"),
        (timed(100, 120, 9_000, 5), "More is left than was offered"),
    ] {
        let flags = timed_water::flags(&exam_with_cup(trial));
        assert_eq!(reason(&flags, part).level(), Level::Incomplete);
    }
}

#[test]
fn the_timed_cup_waits_for_clear_sips() {
    assert!(holds(TaskId::TimedWater, &exam_with_sips(clear_sips(6), None)).is_empty());
    let held = holds(TaskId::TimedWater, &exam_with_sips(Vec::new(), None));
    assert_eq!(held.len(), 1, "{held:?}");
    assert!(held[0].says.contains("no small sips were given before"));
    assert!(held[0].go_on.open_to(Role::Screener));
}

#[test]
fn a_cough_in_the_timed_cup_refers_the_visit() {
    let mut cup = timed(150, 0, 11_800, 7);
    cup.marks.push(Mark {
        at: at(15_000),
        kind: MarkKind::Sign(Sign::Cough),
    });
    let mut exam = exam_with_cup(cup);
    exam.trials.push(water());
    assert_eq!(decided(&exam).verdict, Verdict::Refer);
}

#[test]
fn a_ward_reads_no_rate() {
    let exam = exam_with_cup(timed(100, 0, 12_500, 8));
    let words = wording::timed_water::summary(&exam).unwrap();
    assert_eq!(
        words,
        "timed cup of water: 100 of 100 mL drunk, slowly (by itself no sign of aspiration)"
    );
}

/// What was added to a screen is judged once, and so is what was attached to one without a gate.
#[test]
fn nothing_is_judged_twice() {
    let mut cup = timed(150, 0, 11_800, 7);
    cup.marks.push(Mark {
        at: at(15_000),
        kind: MarkKind::Sign(Sign::Cough),
    });
    for screen in ScreenId::ALL {
        let exam = exam_with_cup(cup.clone());
        let flags = flags(screen.screen(), &exam);
        let coughs = flags
            .iter()
            .filter(|f| f.level() == Level::Refer && f.reason().contains("cough"));
        assert_eq!(coughs.count(), 1, "{screen:?}: {flags:?}");
    }
}
