//! The timed cracker: figures by ASE24; KOT21 and HAG21 report only.
//!
//! The keys are those of `clinical/sources.csv`, where the citations stand.

use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::go_on::GoOn;
use penlight::clinical::findings::go_on::WentOn;
use penlight::clinical::findings::trial::MarkKind;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::source;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::cracker;
use penlight::clinical::tasks::spec::WATCH_CUT;
use penlight::wording;

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
        initials: None,
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
