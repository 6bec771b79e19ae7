//! Own trials: their table, what is taken over, and what of them is told.

use crate::support::any::any_sign;
use crate::support::*;
use penlight::clinical::decision::verdict::Verdict;
use penlight::clinical::findings::exam::Exam;
use penlight::clinical::findings::fact::Amount;
use penlight::clinical::findings::fact::OwnGiven;
use penlight::clinical::findings::flag::Level;
use penlight::clinical::findings::trial::Answer;
use penlight::clinical::findings::trial::Trial;
use penlight::clinical::knowledge::person::Role;
use penlight::clinical::knowledge::sign::Sign;
use penlight::clinical::knowledge::task::TaskId;
use penlight::clinical::tasks::own;
use penlight::clinical::tasks::own::Came;
use penlight::clinical::tasks::own::InTrial;
use penlight::measure::time::Millis;
use penlight::wording;
use proptest::prelude::*;

fn spoon(s: &mut Scene, n: i64, level: &str, signs: &[(Sign, i64)]) {
    s.given(TaskId::Own, n * 100_000, signs)
        .choose("own-level", level)
        .choose("own-amount", "5")
        .choose("own-by", "spoon");
}

/// A nurse reads how often the same was given, not a list of each spoon.
#[test]
fn tries_of_the_same_add_up_in_the_text() {
    let mut s = own_trials(Role::Slp);
    for n in 1..=5 {
        spoon(&mut s, n, "d2", &[]);
    }
    spoon(&mut s, 6, "f4", &[(Sign::Cough, 4_000)]);
    let text = s.text();
    let told = "2 Mildly thick, 5 mL, spoon: given 5 times, no sign";
    assert!(text.contains(told), "{text}");
    assert_eq!(text.matches("Mildly thick").count(), 1, "{text}");
    assert!(text.contains("4 Pureed, 5 mL, spoon"), "{text}");
}

#[test]
fn own_trials_are_a_table() {
    let exam = exam_with_own(vec![
        own_trial(1, "d2", &[]),
        own_trial(2, "d2", &[(Sign::Cough, 4_000)]),
        own_trial(3, "f4", &[]),
    ]);
    let table = own::table(&exam);
    assert_eq!(table.len(), 2);
    let given = OwnGiven {
        level: Some("d2".to_owned()),
        amount: Some(Amount::Tenths(50)),
        by: Some("spoon".to_owned()),
        ..OwnGiven::default()
    };
    assert_eq!(table[0].given, given);
    let coughed = Came::Seen(vec![(InTrial::Sign(Sign::Cough), 1)]);
    assert_eq!((table[0].times, &table[0].came), (2, &coughed));
    assert_eq!((table[1].times, &table[1].came), (1, &Came::NoSign));
    let decision = decided(&exam);
    assert_eq!(decision.verdict, Verdict::Refer);
    reason(
        &decision.reasons,
        "2 Mildly thick, 5 mL, spoon (given twice): coughed 4 seconds",
    );
    assert_eq!(
        wording::own::told(&exam),
        [
            "2 Mildly thick, 5 mL, spoon: given twice, coughed in 1 of 2",
            "4 Pureed, 5 mL, spoon: given once, no sign"
        ]
    );
}

#[test]
fn own_trials_without_a_sign() {
    let exam = exam_with_own(vec![own_trial(1, "d0", &[]), own_trial(2, "d0", &[])]);
    assert_eq!(decided(&exam).verdict, Verdict::Pass);
    let none = exam_with_own(Vec::new());
    assert_eq!(decided(&none).verdict, Verdict::Incomplete);
    let mut open = own_trial(1, "d0", &[]);
    open.marks.pop();
    assert_eq!(
        decided(&exam_with_own(vec![open])).verdict,
        Verdict::Incomplete
    );
}

#[test]
fn settings_are_taken_over_and_a_new_level_replaces_old_words() {
    let mut first = own_trial(1, "d2", &[]);
    let words = Answer::Words("orange juice".to_owned());
    first.answers.insert(own::WHAT.to_owned(), words.clone());
    let mut exam = exam_with_own(vec![first]);
    let taken = |exam: &Exam| -> Vec<&str> {
        own::taken_over(exam)
            .into_iter()
            .map(|(id, _)| id)
            .collect()
    };
    assert_eq!(taken(&exam), [own::LEVEL, own::WHAT, own::AMOUNT, own::BY]);
    let mut second = Trial::new(TaskId::Own, 2, None);
    choose(&mut second, own::LEVEL, "d0");
    exam.trials.push(second);
    assert_eq!(taken(&exam), [own::LEVEL, own::AMOUNT, own::BY]);
}

#[test]
fn a_sign_within_two_minutes_names_both() {
    let mut second = own_trial(2, "f4", &[(Sign::Cough, 1_000)]);
    // Given 10 s after the first was swallowed.
    let shift = 200_000 - 113_000;
    for mark in second.marks.iter_mut() {
        mark.at = mark.at.later(Millis(-shift));
    }
    let exam = exam_with_own(vec![own_trial(1, "d2", &[]), second]);
    let note = own::flags(&exam);
    let note = reason(&note, "either may be meant");
    assert_eq!(note.level(), Level::Note);
    assert!(note.reason().starts_with("coughed with 4 Pureed"));
}

proptest! {
    /// The order in which own trials were given changes no verdict.
    #[test]
    fn own_trials_in_any_order(mut levels in prop::collection::vec(
        (prop::sample::select(vec!["d0", "d2", "f4"]), prop::option::of(any_sign())), 1..6,
    )) {
        let build = |levels: &[(&str, Option<Sign>)]| {
            exam_with_own(
                levels
                    .iter()
                    .zip(1..)
                    .map(|((level, sign), n)| {
                        let signs: Vec<_> = sign.iter().map(|s| (*s, 5_000)).collect();
                        own_trial(n, level, &signs)
                    })
                    .collect(),
            )
        };
        let one = decided(&build(&levels)).verdict;
        levels.reverse();
        prop_assert_eq!(one, decided(&build(&levels)).verdict);
    }
}
